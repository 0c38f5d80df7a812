import type { Mass } from '../dossier/installation.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import type { CivilDate } from '../time/instant.js';
import type { Remedy } from '../verdict/result.js';
import { fittedOn } from './fitted.js';
import { findOut } from './remedies.js';

const unitPath = 'configuration.units.';
const fitted = '.fitted';

/** A unit that is part of the empty weight, and whether a change on the weight record speaks of it alone. */
export interface FittedUnit {
  readonly id: string;
  /** Null: nobody recorded when it went in. */
  readonly on: CivilDate | null;
  readonly noted: boolean;
}

/**
 * Every unit with the change of its day that takes no weight out, one change for one unit. A portable unit is no part of the empty weight.
 */
export function unitsNoted(facts: Facts, mass: Mass): readonly FittedUnit[] {
  return matched(facts, mass).units;
}

/**
 * True: something may have been taken out after `since` of which no change speaks. The record keeps which units were taken out, but not
 * when; none later than the work on the aircraft for which it was last to be released. So each wants a change of its own that adds no
 * weight, unless that work is no later than `since` (null: nobody knows the day).
 */
export function mayLackRemoval(facts: Facts, mass: Mass, since: CivilDate | null): boolean {
  const { takenOut } = facts.dossier.configuration;
  const last = facts.dossier.status.obligations.find(({ id }) => id === 'release-entry:aircraft')?.since.date ?? null;
  if (last !== null && since !== null && last <= since) return false;
  const spoken = matched(facts, mass).left.filter(
    ({ on, weightLb }) => weightLb <= 0 && since !== null && on >= since && (last === null || on <= last),
  );
  return spoken.length < takenOut.length;
}

/** Facts to find out before the changes on the record are all that changed the weight since it was revised. */
export function uncounted(facts: Facts, mass: Mass): readonly string[] {
  return [
    ...unitsNoted(facts, mass)
      .filter(({ on, noted }) => on === null || (on > mass.revisedOn && !noted))
      .map(({ id, on }) => `${unitPath}${id}${on === null ? fitted : '.massLb'}`),
    ...(mayLackRemoval(facts, mass, mass.revisedOn) ? ['configuration.mass.changesSince'] : []),
  ];
}

/** How what was never counted comes onto the record: the day of fitting with its unit, a weight as a change of its own. */
export function countRemedies(facts: readonly string[]): readonly Remedy[] {
  const days = facts.filter((fact) => fact.endsWith(fitted));
  const weights = facts.filter((fact) => !days.includes(fact));
  return [
    ...(weights.length === 0 ? [] : [findOut('mass.note', 'aircraft', ...weights)]),
    ...days.map((fact) => findOut('unit.amend', fact.slice(unitPath.length, -fitted.length), fact)),
  ];
}

function matched(facts: Facts, mass: Mass) {
  // Changes of no weight come last: they may speak of a unit taken out as well.
  const left = [...mass.changesSince].sort((a, b) => b.weightLb - a.weightLb);
  const units = [...facts.units.values()].filter(isFixed).map((each): FittedUnit => {
    const on = fittedOn(each);
    const index = left.findIndex((change) => change.on === on && change.weightLb >= 0);
    if (index >= 0) left.splice(index, 1);
    return { id: each.id, on, noted: index >= 0 };
  });
  return { units, left };
}

function isFixed({ functions }: UnitFacts): boolean {
  return !functions.has('portable-display');
}
