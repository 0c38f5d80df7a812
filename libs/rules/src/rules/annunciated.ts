import type { FunctionCode } from '../catalogue/type.js';
import type { SourceRef } from '../facts/source.js';
import type { Annunciator } from '../graph/annunciation.js';
import type { Facts } from '../graph/facts.js';
import { allOf, met, notMet } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import type { Remedy } from '../verdict/result.js';
import type { Cone } from './in-view.js';
import { inView } from './in-view.js';
import { noSubstitute } from './no-substitute.js';

/** Whether the pilot sees what a unit annunciates: its manual lets it stand in for an annunciator, and it sits where he sees it. */
export function annunciatedInView(
  facts: Facts,
  { unit, link }: Annunciator,
  code: FunctionCode,
  cone: Cone,
  source: SourceRef,
): Clause {
  const limit = noSubstitute(unit, code);
  if (limit !== null) return notMet('own-annunciation-may-stand-in', { source: limit });
  const told =
    link === null
      ? met('annunciates-itself', { source })
      : met('annunciator-joined', { source, evidence: [unit.id, link.id] });
  return allOf('annunciation-in-view', [told, inView(facts, unit, cone)], 'cannot-tell');
}

/** Why what should annunciate does not: nothing is there, its manual lets it stand in for no annunciator, or it is out of view. */
export function whyNot(by: Annunciator | null, code: FunctionCode): 'missing' | 'no-substitute' | 'hidden' {
  if (by === null) return 'missing';
  return noSubstitute(by.unit, code) === null ? 'hidden' : 'no-substitute';
}

/** Annunciators that are there and switched off. */
export function reactivations(annunciators: readonly Annunciator[]): readonly Remedy[] {
  return annunciators.flatMap(({ unit }) =>
    unit.active ? [] : [{ kind: 'do' as const, change: 'unit.reactivate', subject: unit.id, facts: [] }],
  );
}
