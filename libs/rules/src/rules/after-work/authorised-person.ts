import type { RecordHead, RecordKind } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import { fact, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import type { Task } from '../who-may.js';
import { releaseOf, tasks } from '../who-may.js';

/** Authority is a matter of the task, not of the job: one job may need two entries by two signers. What a wrong signer costs, the rule of the test says. */
export const authorisedPerson = defineRule(
  {
    id: 'authorised-person',
    topic: 'after-work',
    asks: 'Each entry is signed by a person or agency that the rules name for the task, with the ratings held on that day.',
    binds: 'The newest seen entry of each kind and subject, and entries that answer what work called for.',
    sources: [...new Set(Object.values(tasks).map((each) => each.source))],
    messages: {
      allowed: '{what} of {done}: {name} may sign it.',
      'not-allowed': '{what} of {done}: {name} is not a person or agency that may sign it.',
      unclear: '{what} of {done}: whether {name} may sign it cannot be told from the record.',
    },
    establishes: [],
  },
  (facts) =>
    facts.dossier.status.records.flatMap((record) => {
      const task = matters(facts, record) ? taskOf(facts, record) : null;
      return task === null ? [] : [statement(facts, record, task)];
    }),
);

function statement(facts: Facts, record: RecordHead, task: Task): Draft {
  const path = `status.records.${record.id}.agency`;
  const extra = { source: task.source, evidence: [record.id] };
  const clause: Clause =
    record.agency === null
      ? unknown('signer-recorded', [path], extra)
      : fact(task.may(record.agency), 'signer-allowed', `${path}.ratings`, extra);
  const answers = facts.dossier.status.obligations.some((each) => each.closedBy === record.id);
  return {
    subject: record.id,
    clause,
    messages: { met: 'allowed', 'not-met': 'not-allowed', 'cannot-tell': 'unclear', 'not-applicable': 'allowed' },
    data: { what: record.kind, done: record.done.date, name: record.agency?.name ?? 'the signer' },
    effects: answers ? [{ stops: 'release' }] : [{ stops: 'nothing', kind: 'record' }],
    remedies: [
      recordIt(record.kind, record.subjects[0] ?? 'aircraft'),
      ...(record.agency?.ratings ? [] : [findOut('record.correct', record.id, path)]),
    ],
  };
}

/** Older entries are history; unseen ones are judged by nobody. */
function matters(facts: Facts, record: RecordHead): boolean {
  if (record.evidence !== 'entry-seen') return false;
  if (facts.dossier.status.obligations.some((each) => each.closedBy === record.id)) return true;
  return record.subjects.some(
    (subject) => facts.records(record.kind, subject).find((each) => each.evidence === 'entry-seen') === record,
  );
}

const byKind: Partial<Record<RecordKind, Task>> = {
  'annual-inspection': tasks.annualInspection,
  'hundred-hour-inspection': tasks.hundredHour,
  'progressive-complete': tasks.progressive,
  'program-inspection': tasks.maintenance,
  'static-system-test': tasks.staticTest,
  'static-leak-test': tasks.staticTest,
  'altimeter-test': tasks.altimeterTest,
  'altitude-reporting-test': tasks.altimeterTest,
  'transponder-test': tasks.transponderTest,
  'altitude-correspondence-test': tasks.correspondence,
  'elt-inspection': tasks.maintenance,
  'compass-swing': tasks.compassSwing,
  'bonding-check': tasks.maintenance,
  'gnss-function-check': tasks.maintenance,
  'vhf-interference-check': tasks.maintenance,
  'controls-check': tasks.maintenance,
  'pilot-flight-check': tasks.pilotCheck,
};

function taskOf(facts: Facts, record: RecordHead): Task | null {
  const { certificate } = facts.dossier.configuration.aircraft;
  if (record.kind === 'condition-inspection' && certificate !== 'light-sport') return tasks.experimentalInspection;
  if (record.kind === 'condition-inspection') return tasks.lightSportInspection;
  // 91.327(c) and 91.319(g) name other people than 91.409(b).
  if (record.kind === 'hundred-hour-inspection' && (certificate === 'light-sport' || certificate === 'experimental'))
    return tasks.lightSportInspection;
  return record.kind === 'release-entry' ? releaseOf(facts, record.subjects) : (byKind[record.kind] ?? null);
}
