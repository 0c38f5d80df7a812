import type { SignalCode } from '../../catalogue/type.js';
import type { Chain } from '../../graph/chains.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, met, notMet } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { ac } from '../cite.js';
import { gnssCapabilities, lostThrough } from '../effects.js';
import { inView } from '../in-view.js';
import { noSubstitute } from '../no-substitute.js';
import { defineRule } from '../rule.js';

const source = ac('20-138D', 'loss of integrity in view (from memory)', 'change 2, 7 Apr 2016', 'from-memory');

/** One statement a chain of a satellite navigator: its own screen in view, or another unit that it tells. */
export const integrityAnnunciation = defineRule(
  {
    id: 'integrity-annunciation',
    topic: 'indication',
    asks: 'The pilot sees loss of integrity: on the navigator itself where it is in view, or on an indicator or annunciator joined to it.',
    binds: 'Satellite navigators; one statement for each indicator that they are joined to.',
    sources: [source],
    messages: {
      shown: 'Loss of integrity of {unit} is annunciated.',
      missing: 'Nothing in view annunciates loss of integrity of {unit}.',
      unclear: 'Whether loss of integrity of {unit} is in view cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    facts.chains
      .filter((chain) => chain.source.functions.has('gnss'))
      .map((chain) => ({
        subject: chain.id,
        clause: anyOf('integrity-shown', [onItself(facts, chain), ...onOthers(facts, chain)], 'cannot-tell'),
        messages: { met: 'shown', 'not-met': 'missing', 'cannot-tell': 'unclear', 'not-applicable': 'shown' },
        data: { unit: chain.source.unit.name },
        effects: lostThrough(chain.id, gnssCapabilities),
        remedies: [{ kind: 'do' as const, change: 'link.connect', subject: chain.source.id, facts: [] }],
      })),
);

function onItself(facts: Facts, { source: own }: Chain): Clause {
  if (!own.functions.has('integrity-annunciation')) return notMet('annunciates-itself', { source });
  const limit = noSubstitute(own, 'integrity-annunciation');
  if (limit !== null) return notMet('own-annunciation-may-stand-in', { source: limit });
  // A warning: eye rotation alone, where the manual does not say otherwise.
  return allOf(
    'own-annunciation-in-view',
    [met('annunciates-itself', { source }), inView(facts, own, 'optimum')],
    'cannot-tell',
  );
}

function onOthers(facts: Facts, { source: own }: Chain): readonly Clause[] {
  return told(facts, own).map((each) => met('annunciator-joined', { source, evidence: [each.id] }));
}

const carriers: readonly (SignalCode | null)[] = ['integrity-flag', 'data'];

/** Units that the navigator tells of its integrity, by a flag of its own or within its data. */
function told(facts: Facts, own: UnitFacts): readonly UnitFacts[] {
  return facts.links.flatMap((link) => {
    const unit = facts.units.get(link.toUnit);
    return link.fromUnit === own.id &&
      carriers.includes(facts.signalOf(link)) &&
      unit?.active &&
      unit.functions.has('integrity-annunciation') &&
      !unit.functions.has('portable-display')
      ? [unit]
      : [];
  });
}
