import type { NextPart, Recurrence } from '../calculations/recurrence.js';
import { nextDue } from '../calculations/recurrence.js';
import type { RecordHead } from '../dossier/status.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import type { CivilDate } from '../time/instant.js';
import { startOfDay } from '../time/zones.js';
import { allOf, anyOf, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import type { Due } from '../verdict/result.js';
import type { Counted } from './accomplished.js';
import { entryOutcome } from './entry-outcome.js';
import { dueOf, inInterval } from './in-interval.js';
import type { Series } from './series.js';
import { lastOfSeries } from './series.js';

export interface Recurring {
  readonly clause: Clause;
  /** The entry that keeps it current: the newest that counts, else the newest that may count. */
  readonly governing: RecordHead | null;
  readonly lastGood: CivilDate | null;
  /** Where the meter stands when it falls due, hundredths of an hour. */
  readonly at: number | null;
  readonly next: readonly NextPart[];
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
  const entries = counted.map((each, index) => ({
    ...each,
    series: lastOfSeries(recurrence, each.record, counted.slice(index + 1)),
  }));
  const clauses = entries.map(({ record, clause, series }) =>
    allOf('done-and-current', [clause, current(facts, record, recurrence, series, asked)], 'cannot-tell'),
  );
  const governing = governingOf(counted);
  const of = entries.find(({ record }) => record === governing);
  // Counted from a due point that nobody recorded it may fall due any earlier: no point rather than one too late.
  const parts = of?.series.dueKnown ? nextDue(recurrence, of.series.last).parts : [];
  const day = parts.find((each) => each.kind === 'date');
  const hours = parts.find((each) => each.kind === 'meter');
  return {
    clause: clauses.length > 0 ? anyOf('an-entry-that-counts', clauses, 'cannot-tell') : asked.none,
    governing,
    lastGood: day?.lastGoodDay ?? null,
    at: hours?.at ?? null,
    next: parts,
    due: dueOf(facts, asked.what, parts, recurrence.combine),
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
  if (!dueKnown) return unknown('due-point-recorded', [`status.records.${record.id}.dueAt`], { source, evidence });
  // Before its day there was no such entry: what is asked of a day that is past does not know it.
  const from = startOfDay(record.done.date, facts.zone);
  return inInterval(facts, recurrence, last, {
    label,
    from,
    missing: () => `status.records.${record.id}.meters`,
    extra: { source, evidence },
  });
}
