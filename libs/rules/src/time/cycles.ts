import { airac, airacEffectiveMinute } from '../facts/airac.js';
import { TimeError } from './errors.js';
import type { CivilDate, Instant } from './instant.js';
import { civilDateOf, dayNumber, dayNumberOf, minutesOf, minutesPerDay, partsOf } from './instant.js';

export interface DatabaseCycle {
  /** YYNN: year of the effective date and its number within that year. */
  readonly id: string;
  readonly effective: CivilDate;
  /** Effective date of the next cycle. */
  readonly next: CivilDate;
}

const anchorDay = dayNumber(airac.anchorDate);
const firstDay = dayNumberOf(1990, 1, 1);
const lastDay = dayNumberOf(2060, 12, 31);

/**
 * The 28-day cycle whose effective date is the latest on or before the date (1990 to 2060; else `TimeError`).
 * On an effective date itself the old cycle is in force until 0901Z: where the minute matters ask `databaseCycleAt`.
 * Source: ICAO Annex 15 section 6.2; computed from the anchor 2 January 2020 = 2001.
 */
export function databaseCycle(date: CivilDate): DatabaseCycle {
  const day = dayNumber(date);
  refuseOutside(day, date);
  return cycleOfDay(day);
}

/** The cycle in force at an instant: a new one takes over at 0901Z of its effective date. Same range and errors. */
export function databaseCycleAt(instant: Instant): DatabaseCycle {
  const minutes = minutesOf(instant);
  refuseOutside(Math.floor(minutes / minutesPerDay), instant);
  return cycleOfDay(Math.floor((minutes - airacEffectiveMinute.value) / minutesPerDay));
}

function cycleOfDay(day: number): DatabaseCycle {
  const start = anchorDay + Math.floor((day - anchorDay) / airac.lengthDays) * airac.lengthDays;
  const effective = civilDateOf(start);
  const { year } = partsOf(effective);
  const number = Math.floor((start - dayNumberOf(year, 1, 1)) / airac.lengthDays) + 1;
  const id = String(year % 100).padStart(2, '0') + String(number).padStart(2, '0');
  return { id, effective, next: civilDateOf(start + airac.lengthDays) };
}

function refuseOutside(day: number, shown: string): void {
  if (day < firstDay || day > lastDay) {
    throw new TimeError(
      'out-of-range',
      `${shown} lies outside 1990 to 2060, for which cycles are computed. Check the year.`,
    );
  }
}
