import { TimeError } from './errors.js';
import type { CivilDate, Instant } from './instant.js';
import { civilDateOf, dayNumber, instantOf, localTimeOf, minutesOf, minutesPerDay } from './instant.js';
import { letters, oneLetter, patterns, steps, zoneDataVersion, zones } from './zone-data.js';

export { zoneDataVersion };

interface Zone {
  /** Minutes since 1970 at which the offset changes, ascending. */
  readonly changes: readonly number[];
  /** Minutes east of UTC: the first before the first change, then one after each change. */
  readonly offsets: readonly number[];
}

const rowOf = new Map<string, string>();
for (const row of zones) {
  const [data = '', names = ''] = row.split('|');
  for (const name of names.split(' ')) rowOf.set(name, data);
}
const read = new Map<string, Zone>();

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
  const known = read.get(name);
  if (known) return known;
  const row = rowOf.get(name);
  if (row === undefined) {
    throw new TimeError(
      'not-a-zone',
      `"${String(name)}" is no zone this library knows. Use a name such as America/Denver or UTC.`,
    );
  }
  const zone = readRow(row);
  read.set(name, zone);
  return zone;
}

/** The table's own notation, see scripts/generate-zone-data.mjs. */
function readRow(row: string): Zone {
  const [offsetText = '', firstText = '', patternText = ''] = row.split(' ');
  const values = offsetText.split(',').map(Number);
  const base = values[0] ?? 0;
  if (patternText === '-1') return { changes: [], offsets: [base] };
  const [stepText = '', order = ''] = (patterns[Number(patternText)] ?? '').split(' ');
  const changes = [Number(firstText)];
  for (let i = 0; i < stepText.length; i += 1) {
    let code = letters.indexOf(stepText[i] ?? '');
    if (code >= oneLetter) {
      i += 1;
      code = oneLetter + (code - oneLetter) * oneLetter + letters.indexOf(stepText[i] ?? '');
    }
    changes.push((changes[changes.length - 1] ?? 0) + (steps[code] ?? 0));
  }
  const offsets = [base];
  changes.forEach((_, i) => {
    const index = order === '' ? (i + 1) % 2 : parseInt(order[i] ?? '0', 36);
    offsets.push(values[index] ?? base);
  });
  return { changes, offsets };
}
