import { calendarMonths } from '../../facts/intervals.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, implies, met, notMet, unknown } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { unitsWith } from '../altitude-chain.js';
import { transponderTested } from '../altitude-tests.js';
import { cfr } from '../cite.js';
import { findEntry, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

const source = calendarMonths.transponder.source;
const transmitAlways = cfr('91.225(f)');

/**
 * A lapsed test forbids the use of the unit under any rules; it grounds nothing by itself. What it costs IFR comes through the
 * altitude reporting system (91.411), and is the rule `static-altimeter-test`.
 */
export const transponderTest = defineRule(
  {
    id: 'transponder-test',
    topic: 'inspections',
    asks: 'Within the preceding 24 calendar months the transponder was tested to part 43 appendix F by a person whom 91.413(c) names.',
    binds:
      'Each transponder in use, under VFR and IFR; where it is also the ADS-B transmitter, its lapse meets 91.225(f).',
    sources: [source, tasks.transponderTest.source, transmitAlways],
    messages: {
      current: '{item}: tested on appendix F, good through {lastGood}.',
      lapsed: '{item}: no test that counts within the preceding 24 calendar months; it may not be used.',
      unclear: '{item}: whether a test counts cannot be told from the record.',
      'not-used': '{item} is deactivated.',
      together: '{item}: its test allows it to transmit ADS-B as 91.225(f) asks.',
      collide:
        '{item}: 91.413(a) forbids its use and 91.225(f) asks it to transmit; the rules do not say which yields.',
    },
    establishes: ['altitude-reporting'],
  },
  (facts) =>
    unitsWith(facts, 'transponder').flatMap((each) =>
      each.functions.has('ads-b-out-1090') ? [ofUse(facts, each), ofTransmitter(facts, each)] : [ofUse(facts, each)],
    ),
);

function ofUse(facts: Facts, unit: UnitFacts): Draft {
  const { clause, lastGood, due } = transponderTested(facts, unit.id);
  return {
    subject: unit.id,
    clause: implies(inUse(unit), clause),
    messages: { met: 'current', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'not-used' },
    data: { item: unit.unit.name, lastGood },
    effects: [{ stops: 'capability', capability: 'altitude-reporting', through: unit.id }],
    due,
    remedies: [
      recordIt('transponder-test', unit.id),
      ...(lastGood === null ? [findEntry('transponder-test', unit.id)] : []),
    ],
  };
}

/**
 * One box that may not be used and must transmit at all times: no text read reconciles the two, so no flight can be told.
 * Ways out: the test where the aircraft stands, deactivation with its entry, a deviation or a special flight permit.
 */
function ofTransmitter(facts: Facts, unit: UnitFacts): Draft {
  const { clause, lastGood } = transponderTested(facts, unit.id);
  const collision = allOf(
    'two-rules-collide',
    [
      unknown('may-not-be-used', [], { source: cfr('91.413(a)') }),
      unknown('must-transmit-at-all-times', [], { source: transmitAlways }),
    ],
    'cannot-tell',
  );
  return {
    subject: `${unit.id}:ads-b-out`,
    clause: implies(inUse(unit), anyOf('tested-or-rules-collide', [clause, collision], 'cannot-tell')),
    messages: { met: 'together', 'not-met': 'collide', 'cannot-tell': 'collide', 'not-applicable': 'not-used' },
    data: { item: unit.unit.name, lastGood },
    effects: [
      { stops: 'capability', capability: 'ads-b-out', through: unit.id },
      { stops: 'capability', capability: 'fly' },
    ],
    remedies: [
      recordIt('transponder-test', unit.id),
      { kind: 'do', change: 'unit.deactivate', subject: unit.id, facts: [] },
    ],
  };
}

function inUse(unit: UnitFacts) {
  return unit.active ? met('in-use', { source }) : notMet('in-use', { source });
}
