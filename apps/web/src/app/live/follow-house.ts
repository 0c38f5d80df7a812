import type { ApolloClient } from '@apollo/client';
import { createClient } from 'graphql-ws';
import { keepUp } from './keep-up.js';
import { noteAnswer } from './last-answer.js';
import { refreshShown } from './refresh.js';

const PING_MS = 10_000;
const PONG_MS = 5_000;
const LONGEST_WAIT_MS = 8_000;
const AFTER_REFUSAL_MS = 30_000;
const SIGNED_OUT = 4401;

export interface Following {
  /** How far the house had come before anything on the screen was asked for. */
  readonly shown: number;
  readonly onLive: (live: boolean) => void;
  readonly onSignedOut: () => void;
}

/** Keeps everything shown up to date with the house until it is stopped. Comes back by itself after a break. */
export function followHouse(client: ApolloClient, { shown, onLive, onSignedOut }: Following): () => void {
  const keeper = keepUp(shown, () => refreshShown(client));
  let stopped = false;
  let pong: ReturnType<typeof setTimeout> | undefined;
  const socket = createClient({
    url: `${window.location.origin.replace(/^http/, 'ws')}/graphql`,
    keepAlive: PING_MS,
    retryAttempts: Number.POSITIVE_INFINITY,
    shouldRetry: () => true,
    retryWait: async (retries) => {
      await Promise.race([pause(Math.min(LONGEST_WAIT_MS, 250 * 2 ** retries) * (0.5 + Math.random() / 2)), online()]);
    },
    on: {
      connected: () => onLive(true),
      closed: () => {
        clearTimeout(pong);
        onLive(false);
      },
      message: noteAnswer,
      ping: (received) => {
        // A line that was cut somewhere on its way ends without anybody saying so.
        if (!received) pong = setTimeout(() => socket.terminate(), PONG_MS);
      },
      pong: (received) => {
        if (received) clearTimeout(pong);
      },
    },
  });

  function subscribe(): void {
    if (stopped) return;
    socket.subscribe<{ houseChanged: { counter: number } }>(
      { query: 'subscription HouseChanged { houseChanged { counter } }' },
      {
        next: ({ data }) => {
          if (data) keeper.heard(data.houseChanged.counter);
        },
        error: (problem) => {
          if ((problem as { code?: unknown } | null)?.code === SIGNED_OUT) onSignedOut();
          else setTimeout(subscribe, AFTER_REFUSAL_MS);
        },
        complete: subscribe,
      },
    );
  }

  const cut = () => socket.terminate();
  window.addEventListener('offline', cut);
  subscribe();
  return () => {
    stopped = true;
    window.removeEventListener('offline', cut);
    clearTimeout(pong);
    keeper.stop();
    void socket.dispose();
  };
}

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** Done when the device says that it has a network again. */
function online(): Promise<void> {
  return new Promise((done) => window.addEventListener('online', () => done(), { once: true }));
}
