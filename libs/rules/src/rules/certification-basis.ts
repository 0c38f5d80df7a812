import { rewrittenByAmendment } from '../facts/old-part-23.js';
import type { SourceRef, Sourced } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import { met, unknown } from '../verdict/build.js';
import type { Leaf } from '../verdict/clause.js';
import type { Effect } from '../verdict/result.js';
import { advice } from './effects.js';

/**
 * Whether a paragraph of the certification basis binds the aircraft: `binds`; `does-not`, where its basis has none of it; `unknown`, where
 * nobody recorded the basis or its text was not read.
 */
export type Binding = 'binds' | 'does-not' | 'unknown';

/** Since which amendment each part has the same demand, and what is known of it elsewhere: of CAR 3 no text was read. */
export interface Demand {
  readonly part23: Sourced<number>;
  readonly part27: { readonly since: Sourced<number>; readonly before: 'does-not' | 'unknown' } | null;
  readonly car3: Binding;
}

export function bindingOf(facts: Facts, { part23, part27, car3 }: Demand): Binding {
  const { basis } = facts.dossier.configuration.aircraft;
  if (basis === null) return 'unknown';
  if (basis.code === 'car-3') return car3;
  if (basis.code === 'part-23') {
    if (basis.amendment === null || basis.amendment >= rewrittenByAmendment.value) return 'unknown';
    return basis.amendment >= part23.value ? 'binds' : 'does-not';
  }
  if (basis.code !== 'part-27' || part27 === null) return 'does-not';
  if ((basis.amendment ?? 0) >= part27.since.value) return 'binds';
  return basis.amendment === null ? 'unknown' : part27.before;
}

/** The demand as the part of the aircraft words it; of an aircraft of neither, as part 23 does. */
export function sourceOf(facts: Facts, { part23, part27 }: Demand): SourceRef {
  const isRotorcraft = facts.dossier.configuration.aircraft.basis?.code === 'part-27';
  return isRotorcraft && part27 !== null ? part27.since.source : part23.source;
}

/** A known basis is met; without one nothing that hangs on it is. */
export function basisKnown(facts: Facts, binding: Binding, source: SourceRef): Leaf {
  const { basis } = facts.dossier.configuration.aircraft;
  const path = 'configuration.aircraft.basis';
  if (binding === 'binds') return met('certification-basis', { source });
  if (basis === null) return unknown('certification-basis', [path], { source });
  const hangsOnAmendment = basis.code === 'part-23' || basis.code === 'part-27';
  const missing = hangsOnAmendment && basis.amendment === null ? [`${path}.amendment`] : [];
  return unknown('certification-basis', missing, { source });
}

/** Without a known basis nothing is stopped: advice. */
export function effectsBy(binding: Binding, effects: readonly Effect[]): readonly Effect[] {
  return binding === 'binds' ? effects : advice;
}
