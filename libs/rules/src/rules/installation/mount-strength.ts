import {
  cabinMassItems,
  emergencyLanding,
  equipmentTestFactors,
  forwardWhereNobodyIsStruck,
  rotorcraftMassItems,
} from '../../facts/load-factors.js';
import { cabinMassItemsSince } from '../../facts/old-part-23.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, met, notMet, unknown } from '../../verdict/build.js';
import type { Leaf } from '../../verdict/clause.js';
import { unitAcceptedAsFound } from '../as-found.js';
import { basisKnown, bindingOf, effectsBy } from '../certification-basis.js';
import { planAndRelease } from '../effects.js';
import type { MountDirection } from '../mount-loads.js';
import {
  directionWord,
  isRotorcraft,
  loadsAsked,
  massOf,
  mayAskMaker,
  mountDemand,
  mountDirections,
  openFacts,
  strengthSource,
  struckOrNot,
  wasAdded,
} from '../mount-loads.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

/** One statement a unit that was added to the type design. Several factors may be asked where a fact is open: met by the greatest, not met below the least. */
export const mountStrength = defineRule(
  {
    id: 'mount-strength',
    topic: 'installation',
    asks: 'The mount of an added unit bears its mass times the factors of the certification basis in each direction.',
    binds:
      'Units added to an aircraft under CAR 3, part 23 or part 27; not units of the type design, and as advice where the basis is not known. In a rotorcraft the factors are those of a unit that could injure somebody: where it could not, less may do, which cannot be told here. Of the transport category only its maker can tell how much the mount must bear upward and downward.',
    sources: [
      equipmentTestFactors.source,
      emergencyLanding.source,
      cabinMassItems.source,
      cabinMassItemsSince.source,
      forwardWhereNobodyIsStruck.source,
      rotorcraftMassItems.source,
    ],
    messages: {
      strong: 'The mount of {unit} ({massLb} lb) bears what it must in each direction.',
      weak: 'The mount of {unit} ({massLb} lb) bears {bearsLb} lb {direction}, where {neededLb} lb are asked.',
      unclear: 'Whether the mount of {unit} bears what it must cannot be told.',
    },
    establishes: [],
  },
  (facts) => {
    const binding = bindingOf(facts, mountDemand);
    if (binding === 'does-not') return [];
    return [...facts.units.values()].filter(wasAdded).map((each) => {
      const bearings = mountDirections.map((direction) => bearing(facts, each, direction));
      const failing = bearings.findIndex(({ inside }) => inside === 'not-met');
      return {
        subject: each.id,
        clause: anyOf(
          'holds',
          [
            unitAcceptedAsFound(each),
            allOf(
              'bears-its-factors',
              [
                basisKnown(
                  facts,
                  binding,
                  isRotorcraft(facts) ? rotorcraftMassItems.source : equipmentTestFactors.source,
                ),
                ...bearings,
              ],
              'cannot-tell',
            ),
          ],
          'cannot-tell',
        ),
        messages: { met: 'strong', 'not-met': 'weak', 'cannot-tell': 'unclear', 'not-applicable': 'strong' },
        data: {
          unit: each.unit.name,
          massLb: massOf(each),
          direction: directionWord(mountDirections[failing]),
          bearsLb: bearings[failing]?.value?.amount ?? null,
          neededLb: bearings[failing]?.limit?.amount ?? null,
        },
        effects: effectsBy(binding, planAndRelease),
        remedies: [findOut('unit.amend', each.id, `configuration.units.${each.id}.asBuilt`)],
      };
    });
  },
);

function bearing(facts: Facts, each: UnitFacts, direction: MountDirection): Leaf {
  const massLb = massOf(each);
  const path = `configuration.units.${each.id}`;
  const source = strengthSource(facts, direction);
  const label = `bears-${direction}`;
  if (massLb === null) return unknown(label, [`${path}.massLb`], { source });
  const needed = loadsAsked(facts, each, massLb, direction);
  const bornLb = each.unit.asBuilt?.bears?.[`${direction}Lb`] ?? null;
  if (bornLb === null) return unknown(label, [`${path}.asBuilt.bears.${direction}Lb`], { source });
  if (needed === null) return unknown(label, [], { source, value: { amount: bornLb, unit: 'lb' } });
  const limit = Math.max(...needed);
  const extra = { source, value: { amount: bornLb, unit: 'lb' }, limit: { amount: limit, unit: 'lb' } };
  if (bornLb >= limit)
    return mayAskMaker(facts, direction) ? unknown(label, openFacts(facts, each), extra) : met(label, extra);
  // What a rotorcraft asks of a mount whose unit could injure nobody was not read.
  const isAsked = !isRotorcraft(facts) || !struckOrNot(each).includes(false);
  return isAsked && bornLb < Math.min(...needed) ? notMet(label, extra) : unknown(label, openFacts(facts, each), extra);
}
