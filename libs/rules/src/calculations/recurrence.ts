import { addDays, anniversary, lastGoodDay } from '../time/calendar.js';
import type { Centihours } from '../time/hours.js';
import type { CivilDate } from '../time/instant.js';
import { CalculationError } from './errors.js';

/** Meters by id: hours in whole hundredths, landings as they are. */
export type MeterValues = Readonly<Record<string, number>>;

/** One interval. Calendar months run to the end of the month; an anniversary keeps the day of the month. */
export type IntervalPart =
  | {
      readonly kind: 'calendar-months' | 'anniversary-months' | 'days';
      readonly count: number;
      readonly tolerance?: number;
    }
  | { readonly kind: 'hours'; readonly meter: string; readonly count: Centihours; readonly tolerance?: Centihours }
  | { readonly kind: 'landings'; readonly meter: string; readonly count: number; readonly tolerance?: number };

/** A row of data, the same for rules of any authority and for an owner's own items. */
export interface Recurrence {
  readonly parts: readonly IntervalPart[];
  /** Whichever comes first, or whichever comes last. */
  readonly combine: 'first' | 'last';
  /** `earlier`: what was flown beyond the due point is counted into the next interval. */
  readonly countFrom: 'done' | 'due' | 'earlier';
  /** What the tolerances of the parts (days, hundredths, landings) may be used for; `none` takes them away. */
  readonly toleranceFor: 'none' | 'en-route' | 'any';
}

export interface LastDone {
  /** Null: the day is not known. */
  readonly doneDate: CivilDate | null;
  readonly doneMeters: MeterValues;
  readonly dueDate?: CivilDate | null;
  readonly dueMeters?: MeterValues | null;
}

/** `toleratedTo` is null where the part has no tolerance. `unknown`: the meter, or for null the day, was not recorded when it was done. */
export type NextPart =
  | { readonly kind: 'date'; readonly lastGoodDay: CivilDate; readonly toleratedTo: CivilDate | null }
  | { readonly kind: 'meter'; readonly meter: string; readonly at: number; readonly toleratedTo: number | null }
  | { readonly kind: 'unknown'; readonly meter: string | null };

export interface NextDue {
  readonly parts: readonly NextPart[];
  readonly combine: Recurrence['combine'];
  readonly toleranceFor: Recurrence['toleranceFor'];
}

/**
 * When something recurs next. A date part is good through its last good day, a meter part through its figure.
 * Where the due point is not known, counting falls back on when it was done. Throws `CalculationError` for an interval
 * that is not a whole number above zero or for a recurrence without parts.
 */
export function nextDue(recurrence: Recurrence, last: LastDone): NextDue {
  if (recurrence.parts.length === 0) {
    throw new CalculationError(
      'parts',
      'The recurrence has no interval. Give at least one: months, days, hours or landings.',
    );
  }
  return {
    parts: recurrence.parts.map((part, i) => nextPart(part, i, recurrence, last)),
    combine: recurrence.combine,
    toleranceFor: recurrence.toleranceFor,
  };
}

function nextPart(part: IntervalPart, i: number, recurrence: Recurrence, last: LastDone): NextPart {
  wholeAbove(0, part.count, `parts[${i}].count`);
  const tolerance =
    recurrence.toleranceFor === 'none' ? 0 : wholeAbove(-1, part.tolerance ?? 0, `parts[${i}].tolerance`);
  if (part.kind === 'hours' || part.kind === 'landings') {
    const from = start(recurrence.countFrom, last.doneMeters[part.meter], last.dueMeters?.[part.meter]);
    if (from === undefined) return { kind: 'unknown', meter: part.meter };
    const at = from + part.count;
    return { kind: 'meter', meter: part.meter, at, toleratedTo: tolerance > 0 ? at + tolerance : null };
  }
  const from = start(recurrence.countFrom, last.doneDate ?? undefined, last.dueDate ?? undefined);
  if (from === undefined) return { kind: 'unknown', meter: null };
  const day = dateAfter(part.kind, from, part.count);
  return { kind: 'date', lastGoodDay: day, toleratedTo: tolerance > 0 ? addDays(day, tolerance) : null };
}

function dateAfter(kind: 'calendar-months' | 'anniversary-months' | 'days', from: CivilDate, count: number): CivilDate {
  if (kind === 'days') return addDays(from, count);
  return kind === 'calendar-months' ? lastGoodDay(from, count) : anniversary(from, count);
}

/** Dates compare as text, meters as numbers. Which of two is the earlier nobody knows while it is not known when it was done. */
function start<T extends string | number>(countFrom: Recurrence['countFrom'], done?: T, due?: T): T | undefined {
  if (countFrom === 'done' || due === undefined) return done;
  if (countFrom === 'due') return due;
  if (done === undefined) return undefined;
  return due < done ? due : done;
}

function wholeAbove(floor: number, value: number, field: string): number {
  if (!Number.isSafeInteger(value) || value <= floor) {
    throw new CalculationError(field, `${field} is ${String(value)}. Give a whole number above ${floor}.`);
  }
  return value;
}
