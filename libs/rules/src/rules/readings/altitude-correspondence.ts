import { judgeCorrespondence } from '../../calculations/correspondence.js';
import { correspondenceToleranceFt } from '../../facts/altimeter.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import type { Draft } from '../../verdict/result.js';
import { transpondersOf, underControlledIfr, unitsWith } from '../altitude-chain.js';
import { cfr } from '../cite.js';
import { recordedReadings } from '../recorded-readings.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

/**
 * The integration test of appendix E(c). 91.217(a)(3) accepts an altimeter under TSO-C10b with a digitizer under TSO-C88 instead of
 * the 125 ft as installed; it does not make a test that failed pass, so it saves no reading here.
 */
export const altitudeCorrespondence = defineRule(
  {
    id: 'altitude-correspondence',
    topic: 'readings',
    asks: 'In the newest integration test the reported altitude is within 125 ft of the displayed altimeter at every point.',
    binds:
      'Transponders whose newest entry carries such readings, for any use (91.413(b)) and again under IFR in controlled airspace (91.411(a)(3)).',
    sources: [correspondenceToleranceFt.source, cfr('91.413(b)'), cfr('91.411(a)(3)'), cfr('91.217(a)')],
    messages: {
      within: '{item}: reported and displayed altitude agree in the test of {done}.',
      outside: '{item}: at {at} ft the reported altitude is {value} ft off, the limit is {limit} ft.',
      failed: '{item}: the test of {done} was entered as failed.',
      incomplete: '{item}: the readings of {done} are not complete.',
      none: '{item}: no readings to judge for this flight.',
    },
    establishes: [],
  },
  (facts) => unitsWith(facts, 'transponder').flatMap((each) => ofTransponder(facts, each)),
);

function ofTransponder(facts: Facts, { id, unit }: UnitFacts): readonly Draft[] {
  const reporters = unitsWith(facts, 'altitude-reporting')
    .filter((each) => transpondersOf(facts, each).some((served) => served.id === id))
    .map((each) => each.id);
  const found = recordedReadings(
    facts,
    {
      kinds: ['altitude-correspondence-test'],
      readOnly: ['altitude-reporting-test'],
      subjects: ['aircraft', id, ...reporters],
      by: tasks.correspondence,
    },
    ({ correspondence }) => (correspondence === null ? null : judgeCorrespondence(correspondence)),
  );
  const ofUse: Draft = {
    subject: id,
    clause: found.clause,
    messages: found.messages,
    data: { item: unit.name, ...found.data },
    effects: [{ stops: 'capability', capability: 'altitude-reporting', through: id }],
    remedies: [recordIt('altitude-correspondence-test')],
  };
  const effects: Draft['effects'] = [{ stops: 'capability', capability: 'ifr-aircraft' }];
  return [ofUse, { ...ofUse, subject: `${id}:ifr`, clause: underControlledIfr(facts, found.clause), effects }];
}
