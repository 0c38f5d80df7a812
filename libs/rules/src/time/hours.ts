import { TimeError } from './errors.js';

/** Hours in whole hundredths, so that 128.3 less 28.3 is exactly 100 hours. */
export type Centihours = number;

const mostHours = 10_000_000;

/**
 * Decimal hours as whole hundredths. The noise of a sum (28.300000000000004) is taken away; a third decimal is refused.
 * Throws `TimeError` for anything that is not a finite number from 0 to 10,000,000 with at most two decimals.
 */
export function toCentihours(decimal: number): Centihours {
  if (!Number.isFinite(decimal)) {
    throw new TimeError(
      'not-hours',
      `${String(decimal)} is not a number of hours. Give decimal hours, for example 1250.3.`,
    );
  }
  if (decimal < 0 || decimal > mostHours) {
    throw new TimeError('not-hours', `${decimal} hours is out of range. Give hours from 0 to ${mostHours}.`);
  }
  const hundredths = Math.round(decimal * 100);
  if (Math.abs(decimal * 100 - hundredths) > 1e-6) {
    throw new TimeError('not-hours', `${decimal} hours has more than two decimals. Round it to hundredths of an hour.`);
  }
  return hundredths + 0;
}

/** Whole hundredths as decimal hours: the number that prints with at most two decimals. */
export function toDecimalHours(centihours: Centihours): number {
  if (!Number.isSafeInteger(centihours)) {
    throw new TimeError('not-hours', `${String(centihours)} is not a whole number of hundredths of an hour.`);
  }
  return centihours / 100;
}
