import { annunciatorsOf, inUse } from '../../graph/annunciation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { mayServe } from '../../graph/units.js';
import { anyOf } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { annunciatedInView, reactivations } from '../annunciated.js';
import { ac } from '../cite.js';
import { planAndRelease } from '../effects.js';
import { joining, noJoint, unclearJoints } from '../no-joint.js';
import { defineRule } from '../rule.js';

const source = ac('20-138D', 'approach mode in view (from memory)', 'change 2, 7 Apr 2016', 'from-memory');
const code = 'approach-annunciation';

/** One statement a navigator that is used for approaches or annunciates them. Where its screen is out of view, a light repeats it. */
export const approachAnnunciation = defineRule(
  {
    id: 'approach-annunciation',
    topic: 'indication',
    asks: 'The pilot sees that the approach is armed or active: on the navigator itself where it is in view, or on a unit joined to it that is in view.',
    binds: 'Satellite navigators that annunciate the approach, or are approved for one.',
    sources: [source],
    messages: {
      shown: 'The approach mode of {unit} is annunciated in view.',
      missing: 'Nothing in view annunciates the approach mode of {unit}.',
      unclear: 'Whether the approach mode of {unit} is in view cannot be told.',
    },
    establishes: [],
  },
  (facts) => [...facts.units.values()].filter(isBound).map((each) => statement(facts, each)),
);

function statement(facts: Facts, own: UnitFacts): Draft {
  const found = annunciatorsOf(facts, own, code);
  const unclear = unclearJoints(facts, [own.id], ['approach-status', 'data'], [code]);
  const clause = anyOf(
    'approach-shown',
    [
      ...inUse(found).map((each) => annunciatedInView(facts, each, code, 'maximum', source)),
      noJoint(facts, 'another-annunciator-joined', source, unclear),
    ],
    'cannot-tell',
  );
  return {
    subject: own.id,
    clause,
    messages: { met: 'shown', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'shown' },
    data: { unit: own.unit.name },
    effects: planAndRelease,
    remedies: [...joining(facts, clause, own.id), ...reactivations(found)],
  };
}

function isBound(own: UnitFacts): boolean {
  if (!own.functions.has('gnss') || !mayServe(own)) return false;
  return own.functions.has(code) || (own.unit.approval?.grants ?? []).some((each) => /^approach-l/.test(each));
}
