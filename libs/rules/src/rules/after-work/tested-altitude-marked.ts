import type { RecordHead } from '../../dossier/status.js';
import { appendixE } from '../../facts/altimeter.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { unitsWith } from '../altitude-chain.js';
import { findOut, missingNames } from '../gaps.js';
import { defineRule } from '../rule.js';

const source = appendixE('(d)');

/** How high a flight may go is `ifr-altitude-limit`; here only that the figure stands where the text wants it. */
export const testedAltitudeMarked = defineRule(
  {
    id: 'tested-altitude-marked',
    topic: 'after-work',
    asks: 'The date and the highest altitude of the newest altimeter test are marked on the altimeter and stand in the entry.',
    binds: 'Altimeters with an entry of a test that was seen; a matter of record.',
    sources: [source],
    messages: {
      marked: '{item}: marked, and entered as tested to {topFt} ft on {done}.',
      unmarked: '{item}: the test of {done} is not marked on it.',
      unclear:
        '{item}: whether date and altitude of the test of {done} are marked and entered is not recorded: {unrecorded}.',
    },
    establishes: [],
  },
  (facts) =>
    unitsWith(facts, 'altimeter').flatMap((each) => {
      const newest = facts.records('altimeter-test', each.id).find(({ evidence }) => evidence === 'entry-seen');
      return newest ? [statement(each, newest)] : [];
    }),
);

function statement({ id, unit }: UnitFacts, record: RecordHead): Draft {
  const path = `status.records.${record.id}`;
  const extra = { source, evidence: [record.id] };
  const clause = allOf(
    'marked-and-entered',
    [
      fact(record.marked, 'marked-on-altimeter', `${path}.marked`, extra),
      fact(record.testedToFt === null ? null : true, 'altitude-entered', `${path}.testedToFt`, extra),
    ],
    'cannot-tell',
  );
  return {
    subject: id,
    clause,
    messages: { met: 'marked', 'not-met': 'unmarked', 'cannot-tell': 'unclear', 'not-applicable': 'marked' },
    data: {
      item: unit.name,
      done: record.done.date,
      topFt: record.testedToFt,
      unrecorded: missingNames(clause) ?? 'nothing',
    },
    effects: [{ stops: 'nothing', kind: 'record' }],
    remedies: [
      { kind: 'do', change: 'record.correct', subject: record.id, facts: [] },
      ...findOut(clause, 'record.correct', record.id),
    ],
  };
}
