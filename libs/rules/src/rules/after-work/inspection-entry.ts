import type { RecordHead, RecordKind } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, fact, met, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { signerNamed } from '../entry-signer.js';
import { missingNames } from '../gaps.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';
import { entryOfInspection, totalTimeEntered } from '../total-time.js';

const source = entryOfInspection;
const discrepancies = cfr('43.11(b)');
const inspections: readonly RecordKind[] = [
  'annual-inspection',
  'hundred-hour-inspection',
  'progressive-complete',
  'condition-inspection',
];

/** What the newest entry of each kind must hold. Whether it counts as an inspection is the rule of that inspection. */
export const inspectionEntry = defineRule(
  {
    id: 'inspection-entry',
    topic: 'after-work',
    asks: 'The entry of an inspection gives type, date, total time in service, certificate number and kind of the signer, and approval or disapproval with its list of discrepancies.',
    binds:
      'The newest seen entry of each kind of inspection; a matter of record. Tests of 91.411 and 91.413 are entered by 43.9.',
    sources: [source, discrepancies],
    messages: {
      whole: '{what} of {done}: the entry is complete.',
      lacking: '{what} of {done}: the entry is not known to hold: {unrecorded}.',
    },
    establishes: [],
  },
  (facts) =>
    inspections.flatMap((kind) => {
      const seen = facts.records(kind, 'aircraft').find((each) => each.evidence === 'entry-seen');
      return seen ? [statement(facts, seen)] : [];
    }),
);

function statement(facts: Facts, record: RecordHead): Draft {
  const path = `status.records.${record.id}`;
  const extra = { source, evidence: [record.id] };
  const clause = allOf(
    'content-of-43-11',
    [
      met('type-and-date', extra),
      ...totalTimeEntered(facts, record),
      signerNamed(record, source),
      statementOf(record, path),
    ],
    'cannot-tell',
  );
  return {
    subject: record.id,
    clause,
    messages: { met: 'whole', 'not-met': 'lacking', 'cannot-tell': 'lacking', 'not-applicable': 'whole' },
    data: { what: record.kind, done: record.done.date, unrecorded: missingNames(clause) ?? 'nothing' },
    effects: [{ stops: 'nothing', kind: 'record' }],
    remedies: [findOut('record.correct', record.id, `${path}.meters`, `${path}.agency`, `${path}.outcome`)],
  };
}

/** Disapproved: with the signed and dated list that the owner gets. */
function statementOf({ id, outcome, note }: RecordHead, path: string): Clause {
  const evidence = [id];
  if (outcome === null) return unknown('approved-or-disapproved', [`${path}.outcome`], { source, evidence });
  return outcome === 'disapproved' || outcome === 'failed'
    ? fact(note === null ? null : true, 'list-of-discrepancies', `${path}.note`, { source: discrepancies, evidence })
    : met('approved', { source, evidence });
}
