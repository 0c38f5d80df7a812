import type { Antenna, Link } from '../dossier/installation.js';
import type { Capability } from '../verdict/capability.js';
import type { Chain, SignalOf } from './chains.js';
import type { UnitFacts } from './units.js';

/** One way to have a capability: a chain over installed units, links and antennas. */
export interface Means {
  readonly id: string;
  readonly capability: Capability;
  readonly members: readonly string[];
}

/** Every means the installation offers, good or not; the rules say which of them hold. Deactivated units offer none. */
export function listMeans(
  units: ReadonlyMap<string, UnitFacts>,
  links: readonly Link[],
  chains: readonly Chain[],
  signalOf: SignalOf,
  antennasOf: (unitId: string) => readonly Antenna[],
): Means[] {
  const active = [...units.values()].filter((each) => each.active);
  const joined = (to: string, signals: readonly string[]) =>
    links.filter(
      (link) => link.toUnit === to && signals.includes(signalOf(link) ?? '') && units.get(link.fromUnit)?.active,
    );
  const withAntennas = (unit: UnitFacts, more: readonly string[] = []) => [
    unit.id,
    ...more,
    ...antennasOf(unit.id).map((each) => each.id),
  ];
  const means: Means[] = [];

  for (const chain of chains) {
    for (const capability of guidanceOf(chain.source)) means.push({ id: chain.id, capability, members: chain.members });
  }
  for (const unit of active) {
    if (unit.functions.has('com'))
      means.push({ id: unit.id, capability: 'two-way-radio', members: withAntennas(unit) });
    if (unit.functions.has('transponder')) {
      means.push(
        ...fed(
          unit,
          joined(unit.id, ['altitude-gray', 'altitude-serial']),
          unit.functions.has('altitude-reporting'),
          'altitude-reporting',
          withAntennas,
        ),
      );
    }
    if (unit.functions.has('ads-b-out-1090') || unit.functions.has('ads-b-out-uat')) {
      means.push(...fed(unit, joined(unit.id, ['position']), unit.functions.has('gnss'), 'ads-b-out', withAntennas));
    }
  }
  return means;
}

export function guidanceOf(source: UnitFacts): readonly Capability[] {
  const found: Capability[] = [];
  if (source.functions.has('vor-receiver')) found.push('nav-vor', 'approach-vor');
  if (source.functions.has('loc-receiver')) found.push('approach-loc');
  if (source.functions.has('loc-receiver') && source.functions.has('gs-receiver')) found.push('approach-ils');
  if (source.functions.has('gnss'))
    found.push('nav-gnss', 'approach-lnav', 'approach-lp', 'approach-lnav-vnav', 'approach-lpv');
  return found;
}

/** A unit with each of the units that feed it, or by itself where it has its own source or nothing feeds it. */
function fed(
  unit: UnitFacts,
  feeds: readonly Link[],
  own: boolean,
  capability: Capability,
  withAntennas: (unit: UnitFacts, more?: readonly string[]) => string[],
): Means[] {
  const by = feeds.map((link) => ({
    id: `${link.fromUnit}>${unit.id}`,
    capability,
    members: withAntennas(unit, [`${link.fromUnit}>${unit.id}`, link.fromUnit, link.id]),
  }));
  return own || by.length === 0 ? [{ id: unit.id, capability, members: withAntennas(unit) }, ...by] : by;
}
