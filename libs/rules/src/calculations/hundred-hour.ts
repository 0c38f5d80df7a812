import { hundredHour } from '../facts/intervals.js';
import { toCentihours, toDecimalHours } from '../time/hours.js';

const everyCentihours = toCentihours(hundredHour.everyHours.value);
const allowanceCentihours = toCentihours(hundredHour.enRouteHours.value);

export interface NextHundredHour {
  /** Hours at which the next inspection falls due. */
  readonly next: number;
  /** Hours flown beyond the due point; 0 if done early or on it. */
  readonly overflown: number;
  /** Whether 91.409(b) allows what was flown: at most 10 hours beyond, on the way to the place of inspection only. */
  readonly allowed: boolean;
}

/**
 * The next 100-hour point from when the last inspection was due and when it was done, decimal hours of time in service.
 * Done early it counts from when it was done; done late under the allowance, from when it was due (91.409(b)).
 * Done late without the allowance the rule prints no count: counting from the due point is the stricter reading.
 * Throws `TimeError` for hours that are negative, not finite or finer than hundredths.
 */
export function nextHundredHour(input: {
  readonly due: number;
  readonly done: number;
  readonly enRoute: boolean;
}): NextHundredHour {
  const due = toCentihours(input.due);
  const done = toCentihours(input.done);
  const overflown = Math.max(0, done - due);
  return {
    next: toDecimalHours(Math.min(due, done) + everyCentihours),
    overflown: toDecimalHours(overflown),
    allowed: overflown === 0 || (input.enRoute && overflown <= allowanceCentihours),
  };
}
