import type { SourceRef } from '../facts/source.js';
import { lastGoodDay } from '../time/calendar.js';
import type { CivilDate, Instant } from '../time/instant.js';
import { startOfDayAfter } from '../time/zones.js';
import type { Facts } from '../graph/facts.js';
import type { Clause } from '../verdict/clause.js';
import { allOf, anyOf, notMet, within } from '../verdict/build.js';
import type { Due } from '../verdict/result.js';
import type { Counted } from './accomplished.js';

/** First instant after a day, where the aircraft lives. No rule names a zone: our reading is the base's. */
export function endOfDay(facts: Facts, date: CivilDate): Instant {
  return startOfDayAfter(date, facts.zone);
}

/**
 * Any entry that counts and is still within its calendar months keeps the item current.
 * Nothing recorded is not-met only where `noneMeans` says that absence is certain; the caller decides.
 */
export function withinMonths(
  facts: Facts,
  counted: readonly Counted[],
  months: number,
  source: SourceRef,
  none: Clause,
): { readonly clause: Clause; readonly lastGood: CivilDate | null; readonly done: CivilDate | null } {
  const clauses = counted.map(({ record, clause }) => {
    const good = lastGoodDay(record.done.date, months);
    return allOf(
      'done-and-current',
      [
        clause,
        within(
          'within-calendar-months',
          { before: endOfDay(facts, good) },
          { source, evidence: [record.id], limit: { amount: months, unit: 'calendar months' } },
        ),
      ],
      'cannot-tell',
    );
  });
  const newest = counted[0]?.record ?? null;
  return {
    clause: clauses.length > 0 ? anyOf('an-entry-that-counts', clauses, 'cannot-tell') : none,
    lastGood: newest === null ? null : lastGoodDay(newest.done.date, months),
    done: newest?.done.date ?? null,
  };
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
