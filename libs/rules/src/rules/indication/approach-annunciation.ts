import type { SignalCode } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, met, notMet } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { ac } from '../cite.js';
import { planAndRelease } from '../effects.js';
import { inView } from '../in-view.js';
import { noSubstitute } from '../no-substitute.js';
import { defineRule } from '../rule.js';

const source = ac('20-138D', 'approach mode in view (from memory)', 'change 2, 7 Apr 2016', 'from-memory');

/** One statement a navigator that is used for approaches or annunciates them. Where its screen is out of view, a light repeats it. */
export const approachAnnunciation = defineRule(
  {
    id: 'approach-annunciation',
    topic: 'indication',
    asks: 'The pilot sees that the approach is armed or active: on the navigator itself where it is in view, or on a unit joined to it.',
    binds: 'Satellite navigators that annunciate the approach, or are approved for one.',
    sources: [source],
    messages: {
      shown: 'The approach mode of {unit} is annunciated in view.',
      missing: 'Nothing in view annunciates the approach mode of {unit}.',
      unclear: 'Whether the approach mode of {unit} is in view cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()].filter(isBound).map((each) => ({
      subject: each.id,
      clause: anyOf('approach-shown', [onItself(facts, each), ...repeated(facts, each)], 'cannot-tell'),
      messages: { met: 'shown', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'shown' },
      data: { unit: each.unit.name },
      effects: planAndRelease,
      remedies: [{ kind: 'do' as const, change: 'link.connect', subject: each.id, facts: [] }],
    })),
);

function isBound({ functions, active, unit }: UnitFacts): boolean {
  if (!functions.has('gnss') || !active || functions.has('portable-display')) return false;
  return (
    functions.has('approach-annunciation') || (unit.approval?.grants ?? []).some((each) => /^approach-l/.test(each))
  );
}

function onItself(facts: Facts, own: UnitFacts): Clause {
  if (!own.functions.has('approach-annunciation')) return notMet('annunciates-itself', { source });
  const limit = noSubstitute(own, 'approach-annunciation');
  if (limit !== null) return notMet('own-annunciation-may-stand-in', { source: limit });
  return allOf(
    'own-annunciation-in-view',
    [met('annunciates-itself', { source }), inView(facts, own, 'maximum')],
    'cannot-tell',
  );
}

/** A line of its own, or the navigator's data. */
const carriers: readonly (SignalCode | null)[] = ['approach-status', 'data'];

/** Where each of them sits is asked of the annunciator itself. */
function repeated(facts: Facts, own: UnitFacts): readonly Clause[] {
  return facts.links.flatMap((link) => {
    const told = facts.units.get(link.toUnit);
    return link.fromUnit === own.id &&
      carriers.includes(facts.signalOf(link)) &&
      told?.active &&
      told.functions.has('approach-annunciation') &&
      !told.functions.has('portable-display')
      ? [met('annunciator-joined', { source, evidence: [told.id] })]
      : [];
  });
}
