import type { MountFactors } from '../calculations/mount.js';
import {
  mountFactors,
  mountLoadLb,
  mountLoadsLb,
  rotorcraftMountFactors,
  transportMountFactors,
} from '../calculations/mount.js';
import {
  cabinMassItems,
  emergencyLanding,
  equipmentTestFactors,
  rotorcraftMassItems,
  transportTestFactors,
} from '../facts/load-factors.js';
import { cabinMassItemsSince, partItself } from '../facts/old-part-23.js';
import { rotorcraftMassItemsSince, rotorcraftMountsSince } from '../facts/part-27.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import type { Demand } from './certification-basis.js';

const mostLb = 10_000;
export const mountDirections = ['forward', 'up', 'side', 'down'] as const;
export type MountDirection = (typeof mountDirections)[number];

/** As a sentence has it; null for none. */
export function directionWord(direction: MountDirection | undefined): string | null {
  return direction === undefined ? null : wordOf[direction];
}

const wordOf: Readonly<Record<MountDirection, string>> = {
  forward: 'forward',
  up: 'upward',
  side: 'sideward',
  down: 'downward',
};

/** CAR 3 and every amendment ask for a mount that holds; only how much differs. */
export const mountDemand: Demand = {
  part23: partItself,
  part27: { since: rotorcraftMountsSince, before: 'unknown' },
  car3: 'binds',
};

/** A unit that was added to the type design, so that its mount is not part of it. */
export function wasAdded({ unit, functions }: UnitFacts): boolean {
  return unit.approval?.basis !== 'type-certificate' && !functions.has('portable-display');
}

/** Pounds as recorded, else by its manual. Null: neither says, or a mass that no unit has. */
export function massOf({ unit, type }: UnitFacts): number | null {
  const massLb = unit.massLb ?? type?.massLb ?? null;
  return massLb === null || massLb > mostLb ? null : massLb;
}

export function isRotorcraft(facts: Facts): boolean {
  return facts.dossier.configuration.aircraft.basis?.code === 'part-27';
}

function isTransport(facts: Facts): boolean {
  return !isRotorcraft(facts) && facts.dossier.configuration.aircraft.category === 'transport';
}

/** Only the maker of a transport aircraft can tell; one whose category nobody recorded may be one. */
export function mayAskMaker(facts: Facts, direction: MountDirection): boolean {
  const { category } = facts.dossier.configuration.aircraft;
  const mayBeTransport = isTransport(facts) || (category === null && !isRotorcraft(facts));
  return mayBeTransport && transportTestFactors.value.askMaker.some((each) => each === direction);
}

/** Pounds in a direction by every set of factors that the facts leave possible. Null: no table says. */
export function loadsAsked(
  facts: Facts,
  each: UnitFacts,
  massLb: number,
  direction: MountDirection,
): readonly number[] | null {
  if (!isTransport(facts)) return possible(facts, each).map((factors) => mountLoadsLb(massLb, factors)[direction]);
  const factors = struckOrNot(each).map((couldStrike) => transportMountFactors(couldStrike)[direction]);
  return factors.every((factor) => factor !== null) ? factors.map((factor) => mountLoadLb(massLb, factor)) : null;
}

/** Whether it could strike somebody, as far as that is recorded: else both. */
export function struckOrNot({ unit }: UnitFacts): readonly boolean[] {
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

/** Facts that leave more than one set of factors possible. */
export function openFacts(facts: Facts, each: UnitFacts): readonly string[] {
  const { category, basis } = facts.dossier.configuration.aircraft;
  const path = 'configuration.aircraft';
  return [
    ...(isRotorcraft(facts) && basis?.amendment === null ? [`${path}.basis.amendment`] : []),
    ...(!isRotorcraft(facts) && category === null ? [`${path}.category`] : []),
    ...(struckOrNot(each).length > 1 ? [`configuration.units.${each.id}.asBuilt.couldStrike`] : []),
  ];
}

/** Where the factor of a direction stands. */
export function strengthSource(facts: Facts, direction: MountDirection): SourceRef {
  if (isRotorcraft(facts)) return rotorcraftMassItems.source;
  if (direction === 'down' || isTransport(facts)) return equipmentTestFactors.source;
  const { basis } = facts.dossier.configuration.aircraft;
  if (basis?.code !== 'part-23') return equipmentTestFactors.source;
  return (basis.amendment ?? 0) >= cabinMassItemsSince.value ? cabinMassItems.source : emergencyLanding.source;
}
