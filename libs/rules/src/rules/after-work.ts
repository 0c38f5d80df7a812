import type { Performed } from '../dossier/common.js';
import type { RecordHead, RecordKind } from '../dossier/status.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import { allOf, anyOf, met, notMet, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import type { Requirement } from './accomplished.js';
import { accomplished } from './accomplished.js';
import { neverRecorded } from './periodic.js';

/** Work that calls for a test or entry later than itself. */
export interface Work {
  readonly since: Performed;
  /** Path of its time, for the find-out list. */
  readonly path: string;
}

/**
 * An entry that counts, done after the work. Refitting a bench-tested unit opens again what the test had closed, so the day alone
 * is not enough: on the day of the work, without both times, the order cannot be told. No entry at all is not-met, unless
 * the caller says otherwise: the work is known.
 */
export function doneAfter(
  facts: Facts,
  kinds: readonly RecordKind[],
  subject: string,
  work: Work,
  requirement: Requirement,
  source: SourceRef,
  none: Clause = neverRecorded(source),
): Clause {
  const later = accomplished(facts, kinds, subject, requirement).filter(
    ({ record }) => record.done.date >= work.since.date,
  );
  if (later.length === 0) return none;
  return anyOf(
    'an-entry-that-counts',
    later.map(({ record, clause }) =>
      allOf('done-after-the-work', [clause, order(record, work, source)], 'cannot-tell'),
    ),
    'cannot-tell',
  );
}

function order(record: RecordHead, { since, path }: Work, source: SourceRef): Clause {
  const extra = { source, evidence: [record.id] };
  if (record.done.date > since.date) return met('later-than-the-work', extra);
  const { at } = record.done;
  if (at === null || since.at === null || at === since.at) {
    const missing = [
      ...(at === null ? [`status.records.${record.id}.done.at`] : []),
      ...(since.at === null ? [path] : []),
    ];
    return unknown('later-than-the-work', missing, extra);
  }
  return at > since.at ? met('later-than-the-work', extra) : notMet('later-than-the-work', extra);
}
