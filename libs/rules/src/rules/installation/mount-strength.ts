import type { MountFactors } from '../../calculations/mount.js';
import {
  mountFactors,
  mountLoadLb,
  mountLoadsLb,
  rotorcraftMountFactors,
  transportMountFactors,
} from '../../calculations/mount.js';
import {
  cabinMassItems,
  emergencyLanding,
  equipmentTestFactors,
  forwardWhereNobodyIsStruck,
  rotorcraftMassItems,
  transportTestFactors,
} from '../../facts/load-factors.js';
import { cabinMassItemsSince, partItself } from '../../facts/old-part-23.js';
import { rotorcraftMassItemsSince, rotorcraftMountsSince } from '../../facts/part-27.js';
import type { SourceRef } from '../../facts/source.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, met, notMet, unknown } from '../../verdict/build.js';
import type { Leaf } from '../../verdict/clause.js';
import { unitAcceptedAsFound } from '../as-found.js';
import type { Demand } from '../certification-basis.js';
import { basisKnown, bindingOf, effectsBy } from '../certification-basis.js';
import { planAndRelease } from '../effects.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const mostLb = 10_000;
const directions = ['forward', 'up', 'side', 'down'] as const;
/** CAR 3 and every amendment ask for a mount that holds; only how much differs. */
const demand: Demand = {
  part23: partItself,
  part27: { since: rotorcraftMountsSince, before: 'unknown' },
  car3: 'binds',
};
const wordOf: Readonly<Record<string, string>> = {
  forward: 'forward',
  up: 'upward',
  side: 'sideward',
  down: 'downward',
};

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
    const binding = bindingOf(facts, demand);
    if (binding === 'does-not') return [];
    return [...facts.units.values()].filter(wasAdded).map((each) => {
      const bearings = directions.map((direction) => bearing(facts, each, direction));
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
          direction: wordOf[directions[failing] ?? 'none'] ?? null,
          bearsLb: bearings[failing]?.value?.amount ?? null,
          neededLb: bearings[failing]?.limit?.amount ?? null,
        },
        effects: effectsBy(binding, planAndRelease),
        remedies: [findOut('unit.amend', each.id, `configuration.units.${each.id}.asBuilt`)],
      };
    });
  },
);

function isRotorcraft(facts: Facts): boolean {
  return facts.dossier.configuration.aircraft.basis?.code === 'part-27';
}

function wasAdded({ unit, functions }: UnitFacts): boolean {
  return unit.approval?.basis !== 'type-certificate' && !functions.has('portable-display');
}

function massOf({ unit, type }: UnitFacts): number | null {
  return unit.massLb ?? type?.massLb ?? null;
}

function bearing(facts: Facts, each: UnitFacts, direction: (typeof directions)[number]): Leaf {
  const massLb = massOf(each);
  const path = `configuration.units.${each.id}`;
  const source = sourceOf(facts, direction);
  const label = `bears-${direction}`;
  if (massLb === null || massLb > mostLb) return unknown(label, [`${path}.massLb`], { source });
  const needed = loadsAsked(facts, each, massLb, direction);
  const bornLb = each.unit.asBuilt?.bears?.[`${direction}Lb`] ?? null;
  if (bornLb === null) return unknown(label, [`${path}.asBuilt.bears.${direction}Lb`], { source });
  if (needed === null) return unknown(label, [], { source, value: { amount: bornLb, unit: 'lb' } });
  const limit = Math.max(...needed);
  const extra = { source, value: { amount: bornLb, unit: 'lb' }, limit: { amount: limit, unit: 'lb' } };
  if (bornLb >= limit)
    return mayAskMaker(facts, direction) ? unknown(label, openFacts(facts, each), extra) : met(label, extra);
  // What a rotorcraft asks of a mount whose unit could injure nobody was not read.
  const isAsked = !isRotorcraft(facts) || each.unit.asBuilt?.couldStrike === true;
  return isAsked && bornLb < Math.min(...needed) ? notMet(label, extra) : unknown(label, openFacts(facts, each), extra);
}

function isTransport(facts: Facts): boolean {
  return !isRotorcraft(facts) && facts.dossier.configuration.aircraft.category === 'transport';
}

/** Of an aircraft whose category nobody recorded it may be so. */
function mayAskMaker(facts: Facts, direction: (typeof directions)[number]): boolean {
  const { category } = facts.dossier.configuration.aircraft;
  const mayBeTransport = isTransport(facts) || (category === null && !isRotorcraft(facts));
  return mayBeTransport && transportTestFactors.value.askMaker.some((each) => each === direction);
}

/** Pounds in a direction by every set of factors that the facts leave possible. Null: no table says. */
function loadsAsked(
  facts: Facts,
  each: UnitFacts,
  massLb: number,
  direction: (typeof directions)[number],
): readonly number[] | null {
  if (!isTransport(facts)) return possible(facts, each).map((factors) => mountLoadsLb(massLb, factors)[direction]);
  const factors = struckOrNot(each).map((couldStrike) => transportMountFactors(couldStrike)[direction]);
  return factors.every((factor) => factor !== null) ? factors.map((factor) => mountLoadLb(massLb, factor)) : null;
}

function struckOrNot({ unit }: UnitFacts): readonly boolean[] {
  return unit.asBuilt?.couldStrike == null ? [false, true] : [unit.asBuilt.couldStrike];
}

/** Every set of factors that the recorded facts leave possible. */
function possible(facts: Facts, each: UnitFacts): readonly MountFactors[] {
  const { category, basis } = facts.dossier.configuration.aircraft;
  if (basis?.code === 'part-27') {
    const since = basis.amendment === null ? [false, true] : [basis.amendment >= rotorcraftMassItemsSince.value];
    return since.map(rotorcraftMountFactors);
  }
  const acrobatic = category === null ? [false, true] : [category === 'acrobatic'];
  const massItems =
    basis?.code === 'part-23' && (basis.amendment ?? cabinMassItemsSince.value) >= cabinMassItemsSince.value;
  return acrobatic.flatMap((one) =>
    struckOrNot(each).map((other) => mountFactors({ acrobatic: one, couldStrike: other, massItems })),
  );
}

function openFacts(facts: Facts, { id, unit }: UnitFacts): readonly string[] {
  const { category, basis } = facts.dossier.configuration.aircraft;
  const path = 'configuration.aircraft';
  return [
    ...(isRotorcraft(facts) && basis?.amendment === null ? [`${path}.basis.amendment`] : []),
    ...(!isRotorcraft(facts) && category === null ? [`${path}.category`] : []),
    ...(unit.asBuilt?.couldStrike == null ? [`configuration.units.${id}.asBuilt.couldStrike`] : []),
  ];
}

function sourceOf(facts: Facts, direction: (typeof directions)[number]): SourceRef {
  if (isRotorcraft(facts)) return rotorcraftMassItems.source;
  if (direction === 'down' || isTransport(facts)) return equipmentTestFactors.source;
  const { basis } = facts.dossier.configuration.aircraft;
  if (basis?.code !== 'part-23') return equipmentTestFactors.source;
  return (basis.amendment ?? 0) >= cabinMassItemsSince.value ? cabinMassItems.source : emergencyLanding.source;
}
