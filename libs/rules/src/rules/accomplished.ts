import type { SourceRef } from '../facts/source.js';
import type { Agency } from '../dossier/common.js';
import { newestFirst, orderOf } from '../changes/records.js';
import type { RecordHead, RecordKind } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { allOf, fact, met, notMet, unknown } from '../verdict/build.js';
import type { Clause, Outcome } from '../verdict/clause.js';
import { cfr } from './cite.js';
import { signerNamed } from './entry-signer.js';
import { inCalibration } from './test-set.js';

/** What a signer leaves in an entry of work and in one of an inspection. */
const signerSource = cfr('43.9(a), 43.11(a)');

/** What an entry must show to count. Everything named is asked; nothing else is. */
export interface Requirement {
  /** Who may do or sign it: true, false, or null where the recorded ratings do not settle it. */
  readonly by?: { readonly may: (agency: Agency) => boolean | null; readonly source: SourceRef };
  /** Outcomes that count; an entry without one is cannot-tell. Default: passed or approved. */
  readonly outcomes?: readonly NonNullable<RecordHead['outcome']>[];
  /** Judges the readings by the edition in force on the day. Null: the entry carries none. */
  readonly readings?: (record: RecordHead) => { readonly outcome: Outcome; readonly source: SourceRef } | null;
  /** Further conditions of this kind of entry. */
  readonly also?: (record: RecordHead) => readonly Clause[];
}

/** One entry and whether it counts: a clause without time. */
export interface Counted {
  readonly record: RecordHead;
  readonly clause: Clause;
}

/**
 * The one place that decides whether an entry counts: right kind and subject, entry seen, its statement, right person with a
 * certificate number, test set in calibration on the day, readings complete and in tolerance. A typed date without an entry, a failing
 * reading, a wrong signer, a test set out of calibration do not count, and each says why.
 * Newest by date and time performed first. An entry that was seen and failed supersedes all older ones; one whose result is unknown
 * puts them in doubt, and so does one that failed on the same day where no time tells which came first.
 */
export function accomplished(
  facts: Facts,
  kinds: readonly RecordKind[],
  subject: string,
  requirement: Requirement,
): readonly Counted[] {
  const records = kinds.flatMap((kind) => facts.records(kind, subject)).sort(newestFirst);
  const seen = records.filter((each) => each.evidence === 'entry-seen');
  const failed = seen.filter((each) => resultOf(each, requirement) === 'not-met');
  const open = seen.filter((each) => resultOf(each, requirement) === 'cannot-tell');
  return records
    .filter((record) => !failed.some((each) => orderOf(each.done, record.done) === 'later'))
    .map((record) => {
      const clause = countsClause(record, requirement);
      const doubts = failed.includes(record)
        ? []
        : [
            ...orderDoubt(
              record,
              failed.filter((each) => orderOf(each.done, record.done) === 'unknown'),
            ),
            ...resultDoubt(open.filter((each) => each !== record && orderOf(each.done, record.done) !== 'earlier')),
          ];
      return {
        record,
        clause: doubts.length === 0 ? clause : allOf('entry-counts', [clause, ...doubts], 'cannot-tell'),
      };
    });
}

/** Of one day, and no time tells which came first. */
function orderDoubt(record: RecordHead, rivals: readonly RecordHead[]): readonly Clause[] {
  if (rivals.length === 0) return [];
  const both = [record, ...rivals];
  const missing = both.map((each) => `status.records.${each.id}.done.at`);
  return [unknown('order-of-entries-known', missing, { evidence: both.map((each) => each.id) })];
}

function resultDoubt(newer: readonly RecordHead[]): readonly Clause[] {
  return newer.map((each) =>
    unknown('newer-entry-may-have-failed', [`status.records.${each.id}`], { evidence: [each.id] }),
  );
}

/** What the entry says of the thing inspected, whoever signed it. */
function resultOf(record: RecordHead, requirement: Requirement): Outcome {
  if (record.outcome === 'failed' || record.outcome === 'disapproved') return 'not-met';
  const read = requirement.readings ? (requirement.readings(record)?.outcome ?? 'cannot-tell') : 'met';
  return record.outcome === null && read !== 'not-met' ? 'cannot-tell' : read;
}

function countsClause(record: RecordHead, requirement: Requirement): Clause {
  const evidence = { evidence: [record.id] };
  const path = `status.records.${record.id}`;
  const accepted = requirement.outcomes ?? ['passed', 'approved'];
  const parts: Clause[] = [
    record.evidence === 'entry-seen'
      ? met('entry-seen', evidence)
      : notMet(record.evidence === 'reported' ? 'work-reported-entry-not-seen' : 'assumed-entry-not-seen', evidence),
    record.outcome === null
      ? unknown('outcome-recorded', [`${path}.outcome`], evidence)
      : accepted.includes(record.outcome)
        ? met('outcome-counts', evidence)
        : notMet('outcome-does-not-count', evidence),
  ];
  if (requirement.by) {
    const { may, source } = requirement.by;
    parts.push(
      ...(record.agency === null
        ? [unknown('signer-allowed', [`${path}.agency`], { ...evidence, source })]
        : [
            fact(may(record.agency), 'signer-allowed', `${path}.agency.ratings`, { ...evidence, source }),
            signerNamed(record, signerSource),
          ]),
    );
  }
  const testSet = inCalibration(record);
  if (testSet !== null) parts.push(testSet);
  if (requirement.readings) {
    const judged = requirement.readings(record);
    parts.push(
      judged === null
        ? unknown('readings-recorded', [`${path}.readings`], evidence)
        : {
            is: 'leaf',
            label: 'readings-in-tolerance',
            inside: judged.outcome,
            outside: judged.outcome,
            ...evidence,
            source: judged.source,
          },
    );
  }
  return allOf('entry-counts', [...parts, ...(requirement.also?.(record) ?? [])], 'cannot-tell');
}

/** Holds any of the ratings; unrecorded ratings settle nothing. */
export function holdsAny(
  agency: Agency,
  ...ratings: readonly NonNullable<Agency['ratings']>[number][]
): boolean | null {
  return agency.ratings === null ? null : agency.ratings.some((each) => ratings.includes(each));
}
