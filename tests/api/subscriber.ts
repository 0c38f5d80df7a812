import { createClient } from 'graphql-ws';
import type { Client as SocketClient } from 'graphql-ws';
import WebSocket from 'ws';

export const HOUSE_CHANGED = 'subscription { houseChanged { counter } }';

/** A board that is open somewhere: what it was told, and how its connection ended. */
export class Subscriber {
  readonly counters: number[] = [];
  /** When each was heard, by the clock of this process. */
  readonly heardAt: number[] = [];
  readonly problems: unknown[] = [];
  readonly closings: { readonly code: number; readonly reason: string }[] = [];
  private readonly client: SocketClient;

  constructor(
    url: string,
    headers: Readonly<Record<string, string>>,
    query: string = HOUSE_CHANGED,
    private readonly retry = false,
  ) {
    const Socket = class extends WebSocket {
      constructor(address: string, protocols: string) {
        super(address, protocols, { headers });
      }
    };
    this.client = createClient({
      url: `${url.replace(/^http/, 'ws')}/graphql`,
      webSocketImpl: Socket,
      retryAttempts: this.retry ? 1000 : 0,
      shouldRetry: () => this.retry,
      on: {
        closed: (event) => {
          const { code, reason } = event as { code: number; reason: string };
          this.closings.push({ code, reason: String(reason) });
        },
      },
    });
    this.client.subscribe(
      { query },
      {
        next: ({ data, errors }) => {
          if (errors) this.problems.push(...errors);
          const counter = (data?.['houseChanged'] as { counter: number } | undefined)?.counter;
          if (counter === undefined) return;
          this.counters.push(counter);
          this.heardAt.push(performance.now());
        },
        error: (problem) => this.problems.push(...(Array.isArray(problem) ? (problem as unknown[]) : [problem])),
        complete: () => undefined,
      },
    );
  }

  get latest(): number {
    return this.counters.at(-1) ?? -1;
  }

  async leave(): Promise<void> {
    // It may be on its way back to a process that is gone.
    await Promise.resolve(this.client.dispose()).catch(() => undefined);
  }
}
