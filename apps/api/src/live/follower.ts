import { CounterStream } from './counter-stream.js';

/** Why a connection is closed, by the numbers of the protocol (graphql-transport-ws) and of RFC 6455. */
export type Ending =
  | { readonly code: 4401; readonly reason: 'Signed out' }
  | { readonly code: 4429; readonly reason: 'Too many connections of one session' }
  | { readonly code: 1013; readonly reason: 'Try again later' }
  | { readonly code: 1001; readonly reason: 'Going away' };

/** One open connection of a signed-in person, and the subscriptions on it. */
export class Follower {
  private readonly streams = new Set<CounterStream>();

  constructor(
    readonly sessionId: string,
    readonly organisationId: string,
    private readonly close: (ending: Ending) => void,
  ) {}

  /** What one subscription gets; it forgets itself when the subscription ends. */
  follow(): CounterStream {
    const stream = new CounterStream(() => this.streams.delete(stream));
    this.streams.add(stream);
    return stream;
  }

  push(counter: number): void {
    for (const stream of this.streams) stream.push(counter);
  }

  end(ending: Ending): void {
    for (const stream of [...this.streams]) void stream.return();
    this.close(ending);
  }
}
