/** Input that no calculation can use. The message names the value and the way out. */
export class CalculationError extends Error {
  override readonly name = 'CalculationError';

  constructor(
    readonly field: string,
    message: string,
  ) {
    super(message);
  }
}

/** Returns the number if it is finite and within the bounds (inclusive), else throws `CalculationError` naming `field`. */
export function numberWithin(field: string, value: number, least: number, most: number): number {
  if (typeof value !== 'number' || !Number.isFinite(value) || value < least || value > most) {
    throw new CalculationError(field, `${field} is ${String(value)}. Give a number from ${least} to ${most}.`);
  }
  return value;
}

/** Returns the number if it is finite, above zero and at most `most`, else throws `CalculationError` naming `field`. */
export function positive(field: string, value: number, most: number): number {
  if (typeof value !== 'number' || !Number.isFinite(value) || value <= 0 || value > most) {
    throw new CalculationError(field, `${field} is ${String(value)}. Give a number above 0 and at most ${most}.`);
  }
  return value;
}
