import type { JudgedPoint, JudgedReadings } from '../calculations/judged.js';
import type { RecordHead } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { allOf, notApplicable, notMet, unknown } from '../verdict/build.js';
import type { Clause, Leaf, Outcome, Quantity } from '../verdict/clause.js';
import type { Values } from '../verdict/result.js';
import type { AskedTest, Judge, Telling } from './telling-entry.js';
import { tellingEntry } from './telling-entry.js';

/** What the newest entry that counts has read, judged; where it carries no readings nothing is judged: its own statement stands. */
export interface RecordedReadings {
  readonly says: Telling['says'];
  readonly clause: Clause;
  /** Day of the entry and the point that decides: the first outside its limit, else the first that cannot be told. */
  readonly data: Values;
  /** The rule has the messages `within`, `outside`, `failed`, `incomplete` and `none`. */
  readonly messages: Readonly<Record<Outcome, string>>;
}

export function recordedReadings(facts: Facts, asked: AskedTest, judge: Judge): RecordedReadings {
  const telling = tellingEntry(facts, asked, judge);
  const { record } = telling;
  const evidence = record === null ? {} : { evidence: [record.id] };
  switch (telling.says) {
    case 'none':
      return { says: telling.says, clause: notApplicable(telling.label), data: dataOf(record, null), messages };
    case 'doubt':
      return {
        says: telling.says,
        clause: unknown(telling.label, telling.missing, evidence),
        data: dataOf(record, null),
        messages,
      };
    case 'failed': {
      const clause = notMet('entered-as-failed', { source: asked.by.source, ...evidence });
      return { says: telling.says, clause, data: dataOf(record, null), messages: { ...messages, 'not-met': 'failed' } };
    }
    case 'read': {
      const { points } = telling.found;
      const deciding =
        points.find((each) => each.outcome === 'not-met') ??
        points.find((each) => each.outcome === 'cannot-tell') ??
        null;
      return {
        says: telling.says,
        clause: clauseOf(telling.found, telling.record),
        data: dataOf(record, deciding),
        messages,
      };
    }
  }
}

const messages = {
  met: 'within',
  'not-met': 'outside',
  'cannot-tell': 'incomplete',
  'not-applicable': 'none',
} as const;

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
