import type { IntervalPart, NextPart, Recurrence } from '../calculations/recurrence.js';
import { nextDue } from '../calculations/recurrence.js';
import type { RecordHead } from '../dossier/status.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import type { CivilDate } from '../time/instant.js';
import { startOfDay, startOfDayAfter } from '../time/zones.js';
import { allOf, anyOf, unknown, within } from '../verdict/build.js';
import type { Clause, Quantity } from '../verdict/clause.js';
import type { Due } from '../verdict/result.js';
import type { Counted } from './accomplished.js';
import { entryOutcome } from './entry-outcome.js';
import type { Series } from './series.js';
import { lastOfSeries } from './series.js';

export interface Recurring {
  readonly clause: Clause;
  /** The entry that keeps it current: the newest that counts, else the newest that may count. */
  readonly governing: RecordHead | null;
  readonly lastGood: CivilDate | null;
  /** Where the meter stands when it falls due, hundredths of an hour. */
  readonly at: number | null;
  readonly due: readonly Due[];
}

/** Calendar months to the end of the month, counted from when it was done: the plainest recurrence of part 91. */
export function calendarMonthsFromDone(count: number): Recurrence {
  return { parts: [{ kind: 'calendar-months', count }], combine: 'first', countFrom: 'done', toleranceFor: 'none' };
}

/**
 * Any entry that counts and is still within its interval keeps the item current. A tolerance is never part of the region:
 * what may be overflown for one purpose only makes nothing ready. `none`: what it means that nothing is recorded.
 */
export function recurring(
  facts: Facts,
  counted: readonly Counted[],
  recurrence: Recurrence,
  asked: {
    readonly what: string;
    readonly label: string;
    /** A function where the text behind the count depends on how the entry came about. */
    readonly source: SourceRef | ((record: RecordHead) => SourceRef);
    readonly none: Clause;
  },
): Recurring {
  const clauses = counted.map((each, index) => {
    const last = lastOfSeries(recurrence, counted, index);
    return allOf(
      'done-and-current',
      [each.clause, current(facts, each.record, recurrence, last, asked)],
      'cannot-tell',
    );
  });
  const governing = governingOf(counted);
  const at = counted.findIndex(({ record }) => record === governing);
  const parts = at < 0 ? [] : nextDue(recurrence, lastOfSeries(recurrence, counted, at).last).parts;
  const day = parts.find((each) => each.kind === 'date');
  const hours = parts.find((each) => each.kind === 'meter');
  return {
    clause: clauses.length > 0 ? anyOf('an-entry-that-counts', clauses, 'cannot-tell') : asked.none,
    governing,
    lastGood: day?.lastGoodDay ?? null,
    at: hours?.at ?? null,
    due:
      day || hours
        ? [
            {
              what: asked.what,
              ...(day ? { lastGoodDay: day.lastGoodDay, lapses: startOfDayAfter(day.lastGoodDay, facts.zone) } : {}),
              ...(hours ? { meter: hours.meter, at: hours.at } : {}),
              combine: recurrence.combine,
            },
          ]
        : [],
  };
}

export function governingOf(counted: readonly Counted[]): RecordHead | null {
  const found =
    counted.find((each) => entryOutcome(each) === 'met') ??
    counted.find((each) => entryOutcome(each) === 'cannot-tell') ??
    null;
  return found?.record ?? null;
}

function current(
  facts: Facts,
  record: RecordHead,
  recurrence: Recurrence,
  { last, dueKnown }: Series,
  asked: { readonly label: string; readonly source: SourceRef | ((record: RecordHead) => SourceRef) },
): Clause {
  const { label } = asked;
  const source = typeof asked.source === 'function' ? asked.source(record) : asked.source;
  const evidence = [record.id];
  // Before its day there was no such entry: what is asked of a day that is past does not know it.
  const from = startOfDay(record.done.date, facts.zone);
  if (!dueKnown) return unknown('due-point-recorded', [`status.records.${record.id}.dueAt`], { source, evidence });
  const regions = nextDue(recurrence, last).parts.map((part: NextPart, index): Clause => {
    const interval = recurrence.parts[index];
    const extra = { source, evidence, ...(interval ? { limit: quantity(interval) } : {}) };
    if (part.kind === 'unknown') return unknown('hours-recorded', [`status.records.${record.id}.meters`], extra);
    return part.kind === 'date'
      ? within(label, { from, before: startOfDayAfter(part.lastGoodDay, facts.zone) }, extra)
      : within(label, { from, atMost: { [part.meter]: part.at } }, extra);
  });
  if (regions.length === 1 && regions[0]) return regions[0];
  return recurrence.combine === 'first' ? allOf(label, regions, 'cannot-tell') : anyOf(label, regions, 'cannot-tell');
}

function quantity(part: IntervalPart): Quantity {
  if (part.kind === 'hours') return { amount: part.count / 100, unit: 'h' };
  return { amount: part.count, unit: part.kind.replace('-', ' ') };
}
