import type { SignalCode } from '../catalogue/type.js';
import type { Link } from '../dossier/installation.js';
import type { UnitFacts } from './units.js';
import { mayServe } from './units.js';

/**
 * From a source of guidance to an indicator, through selectors if need be. Ids: `source>indicator`, for its own display
 * `source>source`, and the source alone where it is joined to nothing: a result through a chain bears on no other chain.
 */
export interface Chain {
  readonly id: string;
  readonly source: UnitFacts;
  /** Null: the source is joined to no indicator. The source itself, where its own display shows deviation. */
  readonly indicator: UnitFacts | null;
  readonly lateral: readonly Link[] | null;
  readonly vertical: readonly Link[] | null;
  /** Ids of everything the chain passes, its own id among them. */
  readonly members: readonly string[];
}

export type SignalOf = (link: Link) => SignalCode | null;

export function chainsFrom(
  source: UnitFacts,
  units: ReadonlyMap<string, UnitFacts>,
  links: readonly Link[],
  signalOf: SignalOf,
  antennas: readonly string[],
): Chain[] {
  const lateral = reach(source, 'lateral-deviation', units, links, signalOf);
  const vertical = reach(source, 'vertical-deviation', units, links, signalOf);
  const ends = new Set([...lateral.keys(), ...vertical.keys()]);
  const chains = [...ends].sort().map((end): Chain => {
    const lateralPath = lateral.get(end) ?? null;
    const verticalPath = vertical.get(end) ?? null;
    const id = `${source.id}>${end}`;
    return {
      id,
      source,
      indicator: units.get(end) ?? null,
      lateral: lateralPath,
      vertical: verticalPath,
      members: [...new Set([id, source.id, end, ...antennas, ...passed(lateralPath), ...passed(verticalPath)])],
    };
  });
  if (source.functions.has('lateral-deviation')) {
    const id = `${source.id}>${source.id}`;
    chains.push({
      id,
      source,
      indicator: source,
      lateral: [],
      vertical: source.functions.has('vertical-deviation') ? [] : null,
      members: [id, source.id, ...antennas],
    });
  }
  return chains.length > 0
    ? chains
    : [{ id: source.id, source, indicator: null, lateral: null, vertical: null, members: [source.id, ...antennas] }];
}

/** Indicators that the signal reaches, each with the links on the way; only a source selector passes it on. A portable display is none. */
function reach(
  source: UnitFacts,
  signal: SignalCode,
  units: ReadonlyMap<string, UnitFacts>,
  links: readonly Link[],
  signalOf: SignalOf,
): Map<string, readonly Link[]> {
  const found = new Map<string, readonly Link[]>();
  const visited = new Set([source.id]);
  const queue: { at: string; path: readonly Link[] }[] = [{ at: source.id, path: [] }];
  for (let next = queue.shift(); next; next = queue.shift()) {
    for (const link of links) {
      if (link.fromUnit !== next.at || signalOf(link) !== signal) continue;
      const unit = units.get(link.toUnit);
      if (!unit || !mayServe(unit) || visited.has(unit.id)) continue;
      visited.add(unit.id);
      const path = [...next.path, link];
      const shows = signal === 'vertical-deviation' ? 'vertical-deviation' : 'lateral-deviation';
      if (unit.functions.has(shows)) found.set(unit.id, path);
      if (unit.functions.has('source-selector')) queue.push({ at: unit.id, path });
    }
  }
  return found;
}

function passed(path: readonly Link[] | null): string[] {
  return (path ?? []).flatMap((link) => [link.id, link.fromUnit, link.toUnit]);
}
