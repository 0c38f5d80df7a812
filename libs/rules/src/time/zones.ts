import { TimeError } from './errors.js';
import type { CivilDate, Instant } from './instant.js';
import { civilDateOf, dayNumber, instantOf, localTimeOf, minutesOf, minutesPerDay } from './instant.js';
import { zoneDataVersion } from './zone-data.js';
import type { Row, Zone } from './zone-table.js';
import { rowOf, zoneIn } from './zone-table.js';

export { zoneDataVersion };

const read = new WeakMap<Row, Zone>();

/** Every zone the library knows, sorted: the IANA names, present and older forms. */
export const zoneNames: readonly string[] = [...rowOf.keys()].sort();

export function isZone(name: unknown): name is string {
  return typeof name === 'string' && rowOf.has(name);
}

/**
 * Minutes east of UTC that hold in the zone at a minute since 1970. The table runs from 1990 to 2061;
 * before and after it the first and the last offset hold. Throws `TimeError` for a zone it does not know.
 */
export function offsetAt(zone: string, minutes: number): number {
  const { changes, offsets } = zoneOf(zone);
  return offsets[countUpTo(changes, minutes)] ?? 0;
}

/**
 * First instant at which a calendar in the zone shows the date. Midnight need not exist on a day of change, and a day
 * that a zone left out starts where the next one does.
 */
export function startOfDay(date: CivilDate, zone: string): Instant {
  return startOfDayNumber(dayNumber(date), zone);
}

/** First instant of the day after the date: the end, exclusive, of everything that is good through the date. */
export function startOfDayAfter(date: CivilDate, zone: string): Instant {
  return startOfDayNumber(dayNumber(date) + 1, zone);
}

/** The date that a calendar in the zone shows at an instant. */
export function civilDateAt(instant: Instant, zone: string): CivilDate {
  const minutes = minutesOf(instant);
  return civilDateOf(Math.floor((minutes + offsetAt(zone, minutes)) / minutesPerDay));
}

/** What calendar and clock in the zone show at an instant: `YYYY-MM-DDTHH:MM`. */
export function localTimeAt(instant: Instant, zone: string): string {
  const minutes = minutesOf(instant);
  return localTimeOf(minutes + offsetAt(zone, minutes));
}

function startOfDayNumber(day: number, zone: string): Instant {
  const { changes, offsets } = zoneOf(zone);
  const local = day * minutesPerDay;
  // No zone is further than 15 hours from UTC: look from there through the stretches of constant offset.
  let stretch = countUpTo(changes, local - 900);
  for (;;) {
    const opens = changes[stretch - 1] ?? -Infinity;
    const closes = changes[stretch] ?? Infinity;
    const reached = Math.max(opens, local - (offsets[stretch] ?? 0));
    if (reached < closes) return instantOf(reached);
    stretch += 1;
  }
}

/** How many changes lie at or before the minute. */
function countUpTo(changes: readonly number[], minutes: number): number {
  let low = 0;
  let high = changes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((changes[middle] ?? Infinity) <= minutes) low = middle + 1;
    else high = middle;
  }
  return low;
}

function zoneOf(name: string): Zone {
  const row = rowOf.get(name);
  if (row === undefined) {
    throw new TimeError(
      'not-a-zone',
      `"${String(name)}" is no zone this library knows. Use a name such as America/Denver or UTC.`,
    );
  }
  const zone = read.get(row) ?? zoneIn(row);
  read.set(row, zone);
  return zone;
}
