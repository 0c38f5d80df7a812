import { judgeCorrespondence } from '../../calculations/correspondence.js';
import { correspondenceToleranceFt } from '../../facts/altimeter.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { accomplished } from '../accomplished.js';
import { reportersOf, underControlledIfr, unitsWith } from '../altitude-chain.js';
import { unitAcceptedAsFound } from '../as-found.js';
import { cfr } from '../cite.js';
import { recordedReadings } from '../recorded-readings.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import type { AskedTest } from '../telling-entry.js';
import { tasks } from '../who-may.js';

const test = 'altitude-correspondence-test';
const periodicTest = 'altitude-reporting-test';
const anyUse = cfr('91.413(b)');

/**
 * The integration test of appendix E(c). 91.217(a)(3) accepts an altimeter under TSO-C10b with a digitizer under TSO-C88 instead of
 * the 125 ft as installed; it does not make a test that failed pass, so it saves no reading here.
 */
export const altitudeCorrespondence = defineRule(
  {
    id: 'altitude-correspondence',
    topic: 'readings',
    asks: 'The reported altitude was once tested against the displayed altimeter, or the installation was accepted as found; in the newest test that carries readings it is within 125 ft at every point.',
    binds:
      'Transponders that an altitude reporter serves, for any use (91.413(b)) and again under IFR in controlled airspace (91.411(a)(3)). Fitting them called for the test: where none is recorded nobody knows. That it is owed again after later work is the rule of tests after a change.',
    sources: [
      correspondenceToleranceFt.source,
      anyUse,
      cfr('91.411(a)(3)'),
      cfr('91.217(a)'),
      tasks.correspondence.source,
    ],
    messages: {
      within: '{item}: reported and displayed altitude agree in the test of {done}.',
      outside: '{item}: at {at} ft the reported altitude is {value} ft off, the limit is {limit} ft.',
      failed: '{item}: the test of {done} was entered as failed.',
      incomplete: '{item}: the readings of {done} are not complete.',
      stands:
        '{item}: reported and displayed altitude agree by the statement of an entry, or the installation was accepted as found; no readings to judge.',
      never:
        '{item}: no test of the reported altitude against the displayed one is recorded, or none that is known to count.',
      none: '{item}: nothing to judge for this flight.',
    },
    establishes: [],
  },
  (facts) => unitsWith(facts, 'transponder').flatMap((each) => ofTransponder(facts, each)),
);

function ofTransponder(facts: Facts, transponder: UnitFacts): readonly Draft[] {
  const { id, unit } = transponder;
  const reporters = reportersOf(facts, transponder);
  const subjects = ['aircraft', ...new Set([id, ...reporters.map((each) => each.id)])];
  const asked: AskedTest = { kinds: [test], readOnly: [periodicTest], subjects, by: tasks.correspondence };
  const found = recordedReadings(facts, asked, ({ correspondence }) =>
    correspondence === null ? null : judgeCorrespondence(correspondence),
  );
  const silent = found.says === 'none' && reporters.length > 0;
  const clause = silent ? everTested(facts, subjects, [transponder, ...reporters]) : found.clause;
  const ofUse: Draft = {
    subject: id,
    clause,
    messages: silent ? { ...found.messages, met: 'stands', 'cannot-tell': 'never' } : found.messages,
    data: { item: unit.name, ...found.data },
    effects: [{ stops: 'capability', capability: 'altitude-reporting', through: id }],
    remedies: [recordIt(test)],
  };
  const effects: Draft['effects'] = [{ stops: 'capability', capability: 'ifr-aircraft' }];
  return [ofUse, { ...ofUse, subject: `${id}:ifr`, clause: underControlledIfr(facts, clause), effects }];
}

/**
 * No readings to judge: an entry that counts stands by its own statement, the periodic test of the reporter with it, because
 * appendix E, which 91.411(a)(1) asks for, holds the integration test. What a named person accepted as found is not asked again.
 */
function everTested(facts: Facts, subjects: readonly string[], units: readonly UnitFacts[]): Clause {
  const entries = subjects.flatMap((subject) =>
    accomplished(facts, [test, periodicTest], subject, { by: tasks.correspondence }).map((each) => each.clause),
  );
  return anyOf(
    'correspondence-tested',
    [
      ...entries,
      allOf('accepted-as-found', units.map(unitAcceptedAsFound), 'cannot-tell'),
      unknown('correspondence-ever-tested', ['status.records'], { source: anyUse }),
    ],
    'cannot-tell',
  );
}
