import type { JudgedReadings } from '../calculations/judged.js';
import { newestFirst, orderOf } from '../changes/records.js';
import type { Readings, RecordHead, RecordKind } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { inCalibration } from './test-set.js';
import type { Task } from './who-may.js';

/** Of which test something is asked. */
export interface AskedTest {
  readonly kinds: readonly RecordKind[];
  /** Kinds of entry that tell only where they carry such readings: without them they say nothing of this test. */
  readonly readOnly?: readonly RecordKind[];
  readonly subjects: readonly string[];
  /** Who may do the test: an entry by anybody else does not take the place of an older one that is out of its limits. */
  readonly by: Task;
}

export type Judge = (readings: Readings, record: RecordHead) => JudgedReadings | null;

/** What the entry that counts says of the test; `none`: nothing to judge, its own statement stands. */
export type Telling =
  | { readonly says: 'none'; readonly label: string; readonly record: RecordHead | null }
  | { readonly says: 'failed'; readonly record: RecordHead }
  | { readonly says: 'read'; readonly record: RecordHead; readonly found: JudgedReadings }
  | {
      readonly says: 'doubt';
      readonly label: string;
      readonly record: RecordHead;
      readonly missing: readonly string[];
    };

/**
 * An entry marked failed, or with readings out of their limits, speaks whoever signed it, until a newer one that counts takes its
 * place. What is in its limits, or stands by its own statement, counts only from a person who may test, with a set in calibration.
 */
export function tellingEntry(facts: Facts, asked: AskedTest, judge: Judge): Telling {
  const all = [...asked.kinds, ...(asked.readOnly ?? [])].flatMap((kind) =>
    asked.subjects.flatMap((subject) => facts.records(kind, subject)),
  );
  const told = [...new Set(all)]
    .filter((each) => each.evidence === 'entry-seen')
    .sort(newestFirst)
    .flatMap((record) => weigh(record, asked, record.readings === null ? null : judge(record.readings, record)));
  return newestOf(told);
}

interface Told {
  readonly record: RecordHead;
  readonly found: JudgedReadings | null;
  /** `stands`: marked passed, with nothing to judge. */
  readonly verdict: JudgedReadings['outcome'] | 'stands';
  /** What is not recorded and decides whether the entry counts at all. */
  readonly unsure: readonly string[];
}

/** Nothing where the entry says nothing of this test, or does not count. */
function weigh(record: RecordHead, { by, readOnly = [] }: AskedTest, found: JudgedReadings | null): readonly Told[] {
  if (isFailed(record) || found?.outcome === 'not-met') return [{ record, found, verdict: 'not-met', unsure: [] }];
  if (found === null && readOnly.includes(record.kind)) return [];
  const may = record.agency === null ? null : by.may(record.agency);
  const testSet = inCalibration(record);
  if (may === false || testSet?.inside === 'not-met') return [];
  const path = `status.records.${record.id}.agency`;
  const unsure = [
    ...(may === null ? [record.agency === null ? path : `${path}.ratings`] : []),
    ...(testSet?.missing ?? []),
  ];
  return [{ record, found, verdict: record.outcome === null ? 'cannot-tell' : (found?.outcome ?? 'stands'), unsure }];
}

const isFailed = ({ outcome }: RecordHead) => outcome === 'failed' || outcome === 'disapproved';

function newestOf(told: readonly Told[]): Telling {
  // Those that none is surely later than: more than one where a day has entries without times.
  const group = told.filter((each) => !told.some((other) => orderOf(other.record.done, each.record.done) === 'later'));
  const [first] = group;
  if (first === undefined) return { says: 'none', label: 'no-readings-recorded', record: null };
  const { record } = first;
  const verdicts = new Set(group.flatMap((each) => (each.verdict === 'stands' ? [] : [each.verdict])));
  // Tests of one day without times have no order: if they differ, the later cannot be told.
  if (verdicts.size > 1) {
    const missing = group.map((each) => `status.records.${each.record.id}.done.at`);
    return { says: 'doubt', label: 'order-of-tests-known', record, missing };
  }
  const bad = group.find((each) => each.verdict === 'not-met');
  if (bad)
    return bad.found?.outcome === 'not-met' ? { ...bad, says: 'read', found: bad.found } : { ...bad, says: 'failed' };
  const rest = told.filter((each) => !group.includes(each));
  if (rest.length > 0 && group.every((each) => each.unsure.length > 0)) {
    // It may not count: then what stood before it still stands.
    const before = newestOf(rest);
    if (before.says === 'none') return before;
    if (before.says !== 'read' || before.found.outcome !== 'met')
      return { says: 'doubt', label: 'newer-entry-counts', record, missing: group.flatMap((each) => each.unsure) };
  }
  return ofGood(group);
}

/** None of them failed. A second test of that day whose readings nobody recorded may be the later one: then nothing is judged. */
function ofGood(group: readonly Told[]): Telling {
  const read = group.find((each) => each.verdict !== 'stands');
  const silent = group.find((each) => each.verdict === 'stands');
  if (read === undefined) return { says: 'none', label: 'no-readings-recorded', record: null };
  const { record, found } = read;
  if (found === null || (record.outcome === null && found.outcome === 'met'))
    return { says: 'doubt', label: 'outcome-recorded', record, missing: [`status.records.${record.id}.outcome`] };
  if (silent && read.verdict === 'met') return { says: 'none', label: 'a-test-of-that-day-has-no-readings', record };
  return { says: 'read', record, found };
}
