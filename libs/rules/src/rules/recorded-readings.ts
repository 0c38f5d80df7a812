import type { JudgedPoint, JudgedReadings } from '../calculations/judged.js';
import { newestFirst } from '../changes/records.js';
import type { Readings, RecordHead, RecordKind } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { allOf, notApplicable, unknown } from '../verdict/build.js';
import type { Clause, Leaf, Quantity } from '../verdict/clause.js';
import type { Values } from '../verdict/result.js';

/** What the newest entry that was seen has read, judged; where it carries no readings nothing is judged: its own statement stands. */
export interface RecordedReadings {
  readonly clause: Clause;
  /** Day of the entry and the point that decides: the first outside its limit, else the first that cannot be told. */
  readonly data: Values;
}

export const readingMessages = {
  met: 'within',
  'not-met': 'outside',
  'cannot-tell': 'incomplete',
  'not-applicable': 'none',
} as const;

export function recordedReadings(
  facts: Facts,
  kinds: readonly RecordKind[],
  subjects: readonly string[],
  judge: (readings: Readings, record: RecordHead) => JudgedReadings | null,
): RecordedReadings {
  const seen = newestSeen(facts, kinds, subjects);
  const judged = seen.flatMap((record) => {
    const found = record.readings === null ? null : judge(record.readings, record);
    return found === null ? [] : [{ record, found }];
  });
  const [first] = judged;
  if (!first) return { clause: notApplicable('no-readings-recorded'), data: dataOf(null, null) };
  // Tests of one day without times have no order: if they differ, the later cannot be told.
  if (judged.some((each) => each.found.outcome !== first.found.outcome)) {
    const missing = judged.map((each) => `status.records.${each.record.id}.done.at`);
    const clause = unknown('order-of-tests-known', missing, { evidence: judged.map((each) => each.record.id) });
    return { clause, data: dataOf(first.record, null) };
  }
  // So does a second test of that day and kind whose readings nobody recorded: what is in tolerance may have been read before it.
  const unread = seen.some((each) => each.kind === first.record.kind && !judged.some(({ record }) => record === each));
  if (unread && first.found.outcome === 'met')
    return { clause: notApplicable('a-test-of-that-day-has-no-readings'), data: dataOf(first.record, null) };
  const { points } = first.found;
  const deciding =
    points.find((each) => each.outcome === 'not-met') ?? points.find((each) => each.outcome === 'cannot-tell') ?? null;
  return { clause: clauseOf(first.found, first.record), data: dataOf(first.record, deciding) };
}

/** The newest entry that was seen, and those of its day that no time sets apart from it. */
function newestSeen(facts: Facts, kinds: readonly RecordKind[], subjects: readonly string[]): readonly RecordHead[] {
  const all = kinds.flatMap((kind) => subjects.flatMap((subject) => facts.records(kind, subject)));
  const seen = [...new Set(all)].filter((each) => each.evidence === 'entry-seen').sort(newestFirst);
  const newest = seen[0];
  if (newest === undefined) return [];
  const { date, at } = newest.done;
  const apart = (other: RecordHead) => at !== null && other.done.at !== null && other.done.at !== at;
  return seen.filter((each) => each.done.date === date && (each === newest || !apart(each)));
}

/** One leaf for each kind of point: the worst of them. */
function clauseOf(found: JudgedReadings, record: RecordHead): Clause {
  const byKind = new Map<string, JudgedPoint>();
  for (const point of found.points) {
    const known = byKind.get(point.what);
    if (known === undefined || rank[point.outcome] < rank[known.outcome]) byKind.set(point.what, point);
  }
  return allOf(
    'readings-in-tolerance',
    [...byKind.values()].map((point) => leafOf(point, record)),
    'cannot-tell',
  );
}

const rank = { 'not-met': 0, 'cannot-tell': 1, met: 2 } as const;

function leafOf(point: JudgedPoint, record: RecordHead): Leaf {
  const limit = limitOf(point);
  return {
    is: 'leaf',
    label: point.what,
    inside: point.outcome,
    outside: point.outcome,
    evidence: [record.id],
    source: point.source,
    ...(point.outcome === 'cannot-tell' ? { missing: [`status.records.${record.id}.readings`] } : {}),
    ...(typeof point.value === 'number' ? { value: { amount: point.value, unit: point.unit ?? '' } } : {}),
    ...(limit === null ? {} : { limit }),
  };
}

/** The bound that the value is nearest to; a range shows the side that it missed, else its upper end. */
function limitOf({ limit, value, unit }: JudgedPoint): Quantity | null {
  const low = limit.least !== undefined && typeof value === 'number' && value < limit.least;
  const amount = low ? limit.least : (limit.most ?? limit.below ?? limit.least);
  return amount === undefined ? null : { amount, unit: unit ?? '' };
}

function dataOf(record: RecordHead | null, point: JudgedPoint | null): Values {
  const limit = point === null ? null : limitOf(point);
  return {
    done: record?.done.date ?? null,
    what: point?.what ?? null,
    at: point?.at ?? null,
    value: typeof point?.value === 'boolean' ? String(point.value) : (point?.value ?? null),
    limit: limit?.amount ?? null,
    unit: point?.unit ?? null,
  };
}
