/** Collects the values of a statement and hands out their places, so that no text ever enters the statement itself. */
export class Parameters {
  readonly values: unknown[] = [];

  add(value: unknown): string {
    this.values.push(value);
    return `$${this.values.length}`;
  }
}
