import type { SourceRef } from '../facts/source.js';
import type { CivilDate, Instant } from '../time/instant.js';
import { startOfDayAfter } from '../time/zones.js';
import type { Facts } from '../graph/facts.js';
import type { Clause } from '../verdict/clause.js';
import { notMet } from '../verdict/build.js';
import type { Due } from '../verdict/result.js';
import type { Counted } from './accomplished.js';
import { calendarMonthsFromDone, recurring } from './recurring.js';

/** First instant after a day, where the aircraft lives. No rule names a zone: our reading is the base's. */
export function endOfDay(facts: Facts, date: CivilDate): Instant {
  return startOfDayAfter(date, facts.zone);
}

/** `recurring` for plain calendar months. Nothing recorded is not-met only where `none` says that absence is certain; the caller decides. */
export function withinMonths(
  facts: Facts,
  counted: readonly Counted[],
  months: number,
  source: SourceRef,
  none: Clause,
): { readonly clause: Clause; readonly lastGood: CivilDate | null; readonly done: CivilDate | null } {
  const label = 'within-calendar-months';
  const found = recurring(facts, counted, calendarMonthsFromDone(months), { what: label, label, source, none });
  return { clause: found.clause, lastGood: found.lastGood, done: found.governing?.done.date ?? null };
}

export function dueOn(facts: Facts, what: string, lastGood: CivilDate | null): readonly Due[] {
  return lastGood === null
    ? []
    : [{ what, lastGoodDay: lastGood, lapses: endOfDay(facts, lastGood), combine: 'first' }];
}

/** Nothing recorded of a thing that must be done: it does not count as done. */
export function neverRecorded(source: SourceRef): Clause {
  return notMet('no-entry-recorded', { source });
}
