import type { RecordHead } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, anyOf, fact, met } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { signerNamed } from '../entry-signer.js';
import { missingNames } from '../gaps.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const source = cfr('43.9(a)');

/** What the entry must hold. Who may sign it is `authorised-person`; that one is owed at all is `tests-after-change`. */
export const releaseEntry = defineRule(
  {
    id: 'release-entry',
    topic: 'after-work',
    asks: 'The entry of release describes the work or names its data, and carries date, name, certificate number and kind of the approver.',
    binds: 'Entries of release that were seen; inspections have another text.',
    sources: [source],
    messages: {
      whole: 'Entry of release of {done}: complete.',
      lacking: 'Entry of release of {done}: it is not known to hold: {unrecorded}.',
    },
    establishes: [],
  },
  (facts) =>
    facts.dossier.status.records
      .filter((each) => each.kind === 'release-entry' && each.evidence === 'entry-seen')
      .map((each) => statement(facts, each)),
);

function statement(facts: Facts, record: RecordHead): Draft {
  const path = `status.records.${record.id}`;
  const extra = { source, evidence: [record.id] };
  const clause = allOf(
    'content-of-43-9',
    [
      anyOf(
        'description-or-data',
        [
          fact(record.note === null ? null : true, 'description', `${path}.note`, extra),
          fact(record.document === null ? null : true, 'data', `${path}.document`, extra),
        ],
        'cannot-tell',
      ),
      met('date', extra),
      signerNamed(record, source),
    ],
    'cannot-tell',
  );
  const answers = facts.dossier.status.obligations.some((each) => each.closedBy === record.id);
  return {
    subject: record.id,
    clause,
    messages: { met: 'whole', 'not-met': 'lacking', 'cannot-tell': 'lacking', 'not-applicable': 'whole' },
    data: { done: record.done.date, unrecorded: missingNames(clause) ?? 'nothing' },
    effects: answers ? [{ stops: 'release' }] : [{ stops: 'nothing', kind: 'record' }],
    remedies: [findOut('record.correct', record.id, `${path}.note`, `${path}.agency`)],
  };
}
