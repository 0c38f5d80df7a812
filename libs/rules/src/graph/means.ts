import type { FunctionCode } from '../catalogue/type.js';
import type { Antenna, Link } from '../dossier/installation.js';
import type { Capability } from '../verdict/capability.js';
import { gnssCapabilities, isGnss } from '../verdict/capability.js';
import type { Annunciator } from './annunciation.js';
import { annunciationId, annunciatorsOf, inUse, sourceLabelsOf } from './annunciation.js';
import type { Chain } from './chains.js';
import type { Graph } from './facts.js';
import type { UnitFacts } from './units.js';
import { mayServe } from './units.js';

/** One way to have a capability: a chain over installed units, links and antennas, with what annunciates what the pilot must see of it. */
export interface Means {
  /** Of the chain: ways that differ in who annunciates are ways of one chain. */
  readonly id: string;
  readonly capability: Capability;
  readonly members: readonly string[];
}

/** Every means the installation offers, good or not; the rules say which of them hold. Deactivated and portable units offer none. */
export function listMeans(graph: Graph, antennasOf: (unitId: string) => readonly Antenna[]): Means[] {
  const { units, links, chains, signalOf } = graph;
  const serving = [...units.values()].filter(mayServe);
  const joined = (to: string, signals: readonly string[]) =>
    links.filter((link) => {
      const from = units.get(link.fromUnit);
      return link.toUnit === to && signals.includes(signalOf(link) ?? '') && from && mayServe(from);
    });
  const withAntennas = (unit: UnitFacts, more: readonly string[] = []) => [
    unit.id,
    ...more,
    ...antennasOf(unit.id).map((each) => each.id),
  ];
  const means: Means[] = chains.flatMap((chain) => guidanceBy(graph, chain));
  for (const unit of serving) {
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

/**
 * A chain with each of those who may annunciate what the pilot must see of it: integrity of a satellite navigator, and which source
 * a shared indicator shows. Where nobody does, the chain is left, and the rules on annunciation speak of that.
 */
function guidanceBy(graph: Graph, chain: Chain): readonly Means[] {
  const ways = (code: FunctionCode, by: readonly Annunciator[]): readonly (readonly string[])[] => {
    const found = inUse(by).map((each) => [
      annunciationId(chain, each, code),
      each.unit.id,
      ...(each.link === null ? [] : [each.link.id]),
    ]);
    return found.length > 0 ? found : [[]];
  };
  const integrity = ways('integrity-annunciation', annunciatorsOf(graph, chain.source, 'integrity-annunciation'));
  const source = ways('source-annunciation', sourceLabelsOf(graph, chain)?.labels ?? []);
  return guidanceOf(chain.source).flatMap((capability) =>
    (isGnss(capability) ? integrity : [[]]).flatMap((told) =>
      source.map((labelled) => ({
        id: chain.id,
        capability,
        members: [...new Set([...chain.members, ...told, ...labelled])],
      })),
    ),
  );
}

export function guidanceOf(source: UnitFacts): readonly Capability[] {
  const found: Capability[] = [];
  if (source.functions.has('vor-receiver')) found.push('nav-vor', 'approach-vor');
  if (source.functions.has('loc-receiver')) found.push('approach-loc');
  if (source.functions.has('loc-receiver') && source.functions.has('gs-receiver')) found.push('approach-ils');
  if (source.functions.has('gnss')) found.push(...gnssCapabilities);
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
