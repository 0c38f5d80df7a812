import { rewrittenByAmendment } from '../facts/old-part-23.js';
import type { SourceRef, Sourced } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import { met, unknown } from '../verdict/build.js';
import type { Leaf } from '../verdict/clause.js';
import type { Effect } from '../verdict/result.js';
import { advice } from './effects.js';

/**
 * Whether a paragraph of the old part 23 binds the aircraft: `binds`; `does-not`, where its basis is another; `unknown`, where nobody recorded
 * the basis or its text was not read.
 */
export type Binding = 'binds' | 'does-not' | 'unknown';

/** `car3`: what is known of the same question under CAR 3, whose text was not read. */
export function oldPart23Binds(facts: Facts, since: Sourced<number>, car3: 'does-not' | 'unknown'): Binding {
  const { basis } = facts.dossier.configuration.aircraft;
  if (basis === null) return 'unknown';
  if (basis.code === 'car-3') return car3;
  if (basis.code !== 'part-23') return 'does-not';
  if (basis.amendment === null || basis.amendment >= rewrittenByAmendment.value) return 'unknown';
  return basis.amendment >= since.value ? 'binds' : 'does-not';
}

/** A known basis is met; without one nothing that hangs on it is. */
export function basisKnown(facts: Facts, binding: Binding, source: SourceRef): Leaf {
  const { basis } = facts.dossier.configuration.aircraft;
  const path = 'configuration.aircraft.basis';
  if (binding === 'binds') return met('certification-basis', { source });
  if (basis === null) return unknown('certification-basis', [path], { source });
  const missing = basis.code === 'part-23' && basis.amendment === null ? [`${path}.amendment`] : [];
  return unknown('certification-basis', missing, { source });
}

/** Without a known basis nothing is stopped: advice. */
export function effectsBy(binding: Binding, effects: readonly Effect[]): readonly Effect[] {
  return binding === 'binds' ? effects : advice;
}
