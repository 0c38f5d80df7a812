/**
 * Counters for one subscriber, always the newest: one that is slow to take them gets the latest, never a heap of old ones, and
 * none that is not greater than the one before.
 */
export class CounterStream implements AsyncIterableIterator<number> {
  private latest = -1;
  private taken = -1;
  private waiting: ((result: IteratorResult<number, undefined>) => void) | null = null;
  private ended = false;

  constructor(private readonly onEnd: () => void) {}

  push(counter: number): void {
    if (this.ended || counter <= this.latest) return;
    this.latest = counter;
    if (this.waiting === null) return;
    const tell = this.waiting;
    this.waiting = null;
    this.taken = counter;
    tell({ done: false, value: counter });
  }

  next(): Promise<IteratorResult<number, undefined>> {
    if (this.ended) return Promise.resolve({ done: true, value: undefined });
    if (this.latest > this.taken) {
      this.taken = this.latest;
      return Promise.resolve({ done: false, value: this.latest });
    }
    return new Promise((tell) => {
      this.waiting = tell;
    });
  }

  return(): Promise<IteratorResult<number, undefined>> {
    if (!this.ended) {
      this.ended = true;
      this.onEnd();
      this.waiting?.({ done: true, value: undefined });
      this.waiting = null;
    }
    return Promise.resolve({ done: true, value: undefined });
  }

  [Symbol.asyncIterator](): this {
    return this;
  }
}
