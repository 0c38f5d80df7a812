import { newestFirst } from '../../changes/records.js';
import type { Defect, Deferral, RecordKind } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import { met, notMet } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { joined } from '../gaps.js';
import { defineRule } from '../rule.js';

const source = cfr('91.405(c)');

/** Inspections that the rules of maintenance ask for, of the aircraft as a whole. */
const required: readonly RecordKind[] = [
  'annual-inspection',
  'airworthiness-certificate-inspection',
  'hundred-hour-inspection',
  'progressive-complete',
  'program-inspection',
  'condition-inspection',
];

/** "Inspected" is enough: the item need not be repaired, but looked at again and entered. An inspection only reported calls for it too. */
export const deferralDue = defineRule(
  {
    id: 'deferral-due',
    topic: 'defects',
    asks: 'An item deferred by 91.213(d) was repaired, replaced, removed or looked at again at each required inspection since.',
    binds: 'Items deferred by 91.213(d); a minimum equipment list has limits of its own.',
    sources: [source],
    messages: {
      looked: '{item}: looked at on {lookedAt}; no required inspection since.',
      due: '{item}: last looked at on {lookedAt}; a required inspection was done on {inspected}.',
    },
    establishes: [],
  },
  (facts) =>
    facts.dossier.status.defects.flatMap((each) =>
      each.kind === 'inoperative-item' && each.deferral?.route === '91.213(d)'
        ? [statement(facts, each, each.deferral)]
        : [],
    ),
);

function statement(facts: Facts, defect: Defect, deferral: Deferral): Draft {
  const { on, reinspectedOn } = deferral;
  const lookedAt = reinspectedOn !== null && reinspectedOn > on ? reinspectedOn : on;
  const [newest] = required.flatMap((kind) => facts.records(kind, 'aircraft')).sort(newestFirst);
  // Done on the day of the inspection counts as done at it.
  const inspection = newest && newest.done.date > lookedAt ? newest : null;
  return {
    subject: defect.id,
    clause: inspection
      ? notMet('looked-at-again', { source, evidence: [inspection.id] })
      : met('looked-at-since-last-inspection', { source }),
    messages: { met: 'looked', 'not-met': 'due', 'cannot-tell': 'due', 'not-applicable': 'looked' },
    data: {
      item: facts.units.get(defect.subject)?.unit.name ?? joined([defect.subject]),
      lookedAt,
      inspected: inspection?.done.date ?? null,
    },
    effects: [{ stops: 'capability', capability: 'fly' }],
    remedies: [
      { kind: 'do', change: 'defect.defer', subject: defect.id, facts: [] },
      { kind: 'do', change: 'defect.close', subject: defect.id, facts: [] },
    ],
  };
}
