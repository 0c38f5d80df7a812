import type { SourceRef, SourceStatus } from '../facts/source.js';
import { weakerStatus } from '../facts/source.js';
import type { Centihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import type { Clause, Leaf, MeterId } from './clause.js';

/** Where outcomes of a set of clauses may change: the first instant of the new state, and the last hours of the old one. */
export interface Edges {
  readonly instants: Set<Instant>;
  readonly meters: Map<MeterId, Set<Centihours>>;
}

export function noEdges(): Edges {
  return { instants: new Set(), meters: new Map() };
}

export function collectEdges(clause: Clause, into: Edges): void {
  for (const leaf of leaves(clause)) {
    if (leaf.inside === leaf.outside) continue;
    if (leaf.from !== undefined) into.instants.add(leaf.from);
    if (leaf.before !== undefined) into.instants.add(leaf.before);
    for (const [meter, limit] of Object.entries(leaf.atMost ?? {})) {
      const limits = into.meters.get(meter) ?? new Set();
      into.meters.set(meter, limits.add(limit));
    }
  }
}

export function* leaves(clause: Clause): Generator<Leaf> {
  if (clause.is === 'leaf') yield clause;
  else if (clause.is === 'implies') {
    yield* leaves(clause.if);
    yield* leaves(clause.then);
  } else if (clause.is !== 'ref') for (const each of clause.of) yield* leaves(each);
}

export function weakestOf(sources: Iterable<SourceRef | undefined>): SourceStatus | null {
  let weakest: SourceStatus | null = null;
  for (const each of sources) if (each) weakest = weakest === null ? each.status : weakerStatus(weakest, each.status);
  return weakest;
}
