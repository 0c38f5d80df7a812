import { judgeStaticLeak } from '../../calculations/static-leak.js';
import type { StaticSystem } from '../../dossier/status.js';
import { staticLeakUnpressurized, staticSystemCondition } from '../../facts/static-system.js';
import type { Facts } from '../../graph/facts.js';
import type { Draft } from '../../verdict/result.js';
import { doneAfter } from '../after-work.js';
import { underControlledIfr } from '../altitude-chain.js';
import { cfr } from '../cite.js';
import { recordedReadings } from '../recorded-readings.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

const afterOpening = cfr('91.411(a)(2)');
/** The full test of the static system includes the leak test. */
const kinds = ['static-leak-test', 'static-system-test'] as const;

/** Two statements a system: what was read, and whether a test is later than the last recorded opening. */
export const staticLeakReading = defineRule(
  {
    id: 'static-leak-reading',
    topic: 'readings',
    asks: 'The newest leak test lost at most 100 ft in a minute, found the lines clear, the heater of the ports working where there is one and the skin about them unaltered; and a leak test that counts is later than the last opening of the static system.',
    binds:
      'Static systems of airplanes and helicopters under IFR in controlled airspace; drains and alternate static valves are no opening.',
    sources: [staticLeakUnpressurized.source, staticSystemCondition, afterOpening, tasks.staticTest.source],
    messages: {
      within: '{item}: the leak reading of {done} is within its limit.',
      outside: '{item}: {what} reads {value} {unit}, the limit is {limit}.',
      wrong: '{item}: the test of {done} did not find as it must be: {what}.',
      failed: '{item}: the leak test of {done} was entered as failed.',
      incomplete: '{item}: the leak reading of {done} is not complete.',
      none: '{item}: no leak reading to judge for this flight.',
      closed: '{item}: tested after it was last opened on {opened}.',
      open: '{item}: opened on {opened}, and no leak test that counts is later.',
      order: '{item}: whether a leak test that counts is later than the opening on {opened} cannot be told.',
    },
    establishes: [],
  },
  (facts) => facts.dossier.configuration.staticSystems.flatMap((each) => ofSystem(facts, each)),
);

function ofSystem(facts: Facts, { id, name, lastOpened }: StaticSystem): readonly Draft[] {
  const found = recordedReadings(facts, { kinds, subjects: [id], by: tasks.staticTest }, ({ staticLeak }) =>
    staticLeak === null ? null : judgeStaticLeak(staticLeak),
  );
  // What was looked at has neither figure nor unit.
  const looked = found.data['what'] !== null && found.data['unit'] === null;
  const read: Draft = {
    subject: id,
    clause: underControlledIfr(facts, found.clause),
    messages: { ...found.messages, 'not-met': looked ? 'wrong' : found.messages['not-met'] },
    data: { item: name, opened: lastOpened?.date ?? null, ...found.data },
    effects: [{ stops: 'capability', capability: 'ifr-aircraft' }],
    remedies: [recordIt('static-leak-test', id)],
  };
  if (lastOpened === null) return [read];
  const work = { since: lastOpened, path: `configuration.staticSystems.${id}.lastOpened.at` };
  const tested = doneAfter(facts, kinds, id, work, { by: tasks.staticTest }, afterOpening);
  return [
    read,
    {
      ...read,
      subject: `${id}:opening`,
      clause: underControlledIfr(facts, tested),
      messages: { met: 'closed', 'not-met': 'open', 'cannot-tell': 'order', 'not-applicable': 'none' },
    },
  ];
}
