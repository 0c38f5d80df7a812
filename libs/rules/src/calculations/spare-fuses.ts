import { spareFuseShare } from '../facts/old-part-23.js';
import { CalculationError, numberWithin } from './errors.js';

/**
 * Spare fuses of one rating that so many fuses in use ask for by 23.1357(e): half of them and at least one.
 * Throws `CalculationError` for anything but a whole number of fuses.
 */
export function sparesFor(inUse: number): number {
  if (!Number.isInteger(numberWithin('inUse', inUse, 1, 1000)))
    throw new CalculationError('inUse', `inUse is ${inUse}. Give a whole number of fuses.`);
  const { share, least } = spareFuseShare.value;
  return Math.max(least, Math.ceil(inUse * share));
}
