import type { RecordHead } from '../../dossier/status.js';
import { allOf, fact, met, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { doneAfter } from '../after-work.js';
import { practice } from '../cite.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

const source = practice(
  'rear supports secured and controls free, at both extremes combined, after work behind the panel',
);

/** Stacks that sagged onto the controls have ended take-offs: nobody flies until two people have looked. */
export const controlsFreeAndSecured = defineRule(
  {
    id: 'controls-free-and-secured',
    topic: 'after-work',
    asks: 'After work behind the panel an entry says that rear supports are secured and the controls free and full, with the signature of a second person.',
    binds: 'Aircraft on which work behind the panel is recorded.',
    sources: [source, tasks.maintenance.source],
    messages: {
      done: 'Supports secured and controls free, signed by two people after the work of {since}.',
      owed: 'Work behind the panel on {since}: no check of supports and controls by two people counts.',
      unclear:
        'Work behind the panel on {since}: whether supports and controls were checked by two people cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    facts.dossier.status.obligations
      .filter((owed) => owed.what === 'controls-check')
      .map((owed): Draft => {
        const work = { since: owed.since, path: `status.obligations.${owed.id}.since.at` };
        const requirement = { by: tasks.maintenance, also: twoPeople };
        return {
          subject: owed.id,
          clause: doneAfter(facts, ['controls-check'], owed.subject, work, requirement, source),
          messages: { met: 'done', 'not-met': 'owed', 'cannot-tell': 'unclear', 'not-applicable': 'unclear' },
          data: { since: owed.since.date },
          effects: [{ stops: 'capability', capability: 'fly' }, { stops: 'release' }],
          remedies: [recordIt('controls-check', owed.subject)],
        };
      }),
);

function twoPeople(record: RecordHead): readonly Clause[] {
  const path = `status.records.${record.id}`;
  const extra = { source, evidence: [record.id] };
  const { agency, secondPerson } = record;
  if (secondPerson === null) return [unknown('second-signature-recorded', [`${path}.secondPerson`], extra)];
  const another = agency === null ? null : !samePerson(agency.name, secondPerson);
  return [
    allOf(
      'two-people-signed',
      [met('second-signature-recorded', extra), fact(another, 'second-person-is-another', `${path}.agency`, extra)],
      'cannot-tell',
    ),
  ];
}

/** Dots and blanks are written or left out by one and the same person. */
function samePerson(one: string, other: string): boolean {
  const letters = (name: string) => name.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, '');
  return letters(one) === letters(other);
}
