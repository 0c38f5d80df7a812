import type { ReasonOutcome } from '../../ui/reason-tree.js';

const outcomes = {
  MET: 'met',
  NOT_MET: 'not-met',
  CANNOT_TELL: 'cannot-tell',
  NOT_APPLICABLE: 'not-applicable',
} as const;

/** An outcome as the API writes it, as the library does. */
export function outcomeOf(code: keyof typeof outcomes): ReasonOutcome {
  return outcomes[code];
}
