import { TimeError } from './errors.js';
import type { CivilDate } from './instant.js';
import { civilDateOf, dayNumber, dayNumberOf, daysInMonth, partsOf } from './instant.js';

/**
 * Last day on which something done on `done` still counts as "within the preceding N calendar months":
 * the last day of the Nth month after the month of the event, whatever the day of the month.
 * Source: 14 CFR 91.409, 91.411, 91.413 wording; the end-of-month meaning is known from training texts (secondary).
 * Which zone ends that day is the caller's business. `calendarMonths` is a whole number, 0 to 1200.
 */
export function lastGoodDay(done: CivilDate, calendarMonths: number): CivilDate {
  const { year, month } = monthsLater(done, calendarMonths);
  return civilDateOf(dayNumberOf(year, month, daysInMonth(year, month)));
}

/** The same day of the month, `months` months later (0 to 1200); the last day of the month where that day does not exist. */
export function anniversary(done: CivilDate, months: number): CivilDate {
  const { year, month, day } = monthsLater(done, months);
  return civilDateOf(dayNumberOf(year, month, Math.min(day, daysInMonth(year, month))));
}

/** The date `days` whole days later (earlier if negative). 31 January + 30 days is 2 March (1 March in a leap year). */
export function addDays(date: CivilDate, days: number): CivilDate {
  if (!Number.isSafeInteger(days))
    throw new TimeError('out-of-range', `${days} is not a whole number of days. Give a whole number.`);
  return civilDateOf(dayNumber(date) + days);
}

/** Whole days from `from` to `to`; negative if `to` is earlier. */
export function daysBetween(from: CivilDate, to: CivilDate): number {
  return dayNumber(to) - dayNumber(from);
}

/** Negative if `a` is earlier, 0 if the same day, positive if later. Throws `TimeError` on a text that is no day. */
export function compareDates(a: CivilDate, b: CivilDate): number {
  return dayNumber(a) - dayNumber(b);
}

function monthsLater(done: CivilDate, months: number): { year: number; month: number; day: number } {
  if (!Number.isInteger(months) || months < 0 || months > 1200) {
    throw new TimeError(
      'out-of-range',
      `${months} is not a count of calendar months. Give a whole number from 0 to 1200.`,
    );
  }
  const { year, month, day } = partsOf(done);
  const index = year * 12 + (month - 1) + months;
  return { year: Math.floor(index / 12), month: (index % 12) + 1, day };
}
