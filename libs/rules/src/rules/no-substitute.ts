import type { FunctionCode } from '../catalogue/type.js';
import type { SourceRef } from '../facts/source.js';
import type { UnitFacts } from '../graph/units.js';
import { maker } from './cite.js';

/** The manual's word that the unit, though it has the function, stands in for no required instrument; null: it says nothing of the kind. */
export function noSubstitute({ type }: UnitFacts, code: FunctionCode): SourceRef | null {
  const limit = type?.limitations.find((each) => each.kind === 'not-a-substitute' && each.functions.includes(code));
  return limit ? maker(limit.document, limit.paragraph) : null;
}
