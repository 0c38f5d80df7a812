/** Boards that hear of one change do not all ask in the same moment. */
const SPREAD_MS = 300;
const LONGEST_WAIT_MS = 30_000;

export interface KeepUp {
  /** The house has come so far. Asked or not: what is shown follows, one refresh at a time. */
  heard(counter: number): void;
  stop(): void;
}

/**
 * Refreshes what is shown whenever the house has come further than that. A refresh that fails is tried again, later each time.
 * @param from how far the house had come before anything on the screen was asked for
 */
export function keepUp(
  from: number,
  refresh: () => Promise<void>,
  wait: (ms: number) => Promise<void> = (ms) => new Promise((done) => setTimeout(done, ms)),
  random: () => number = Math.random,
): KeepUp {
  let shown = from;
  let newest = from;
  let busy = false;
  let stopped = false;

  async function follow(): Promise<void> {
    busy = true;
    let failures = 0;
    // Not only forwards: a house that was set back to an earlier day counts from there.
    while (shown !== newest && !stopped) {
      await wait(random() * SPREAD_MS + (failures === 0 ? 0 : Math.min(LONGEST_WAIT_MS, 1000 * 2 ** failures)));
      const asked = newest;
      try {
        await refresh();
        shown = asked;
        failures = 0;
      } catch {
        failures += 1; // The strip says that the board is not live; what is on it stays.
      }
    }
    busy = false;
  }

  return {
    heard(counter) {
      newest = counter;
      if (!busy) void follow();
    },
    stop() {
      stopped = true;
    },
  };
}
