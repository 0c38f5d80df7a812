import type { Clause, Outcome } from '../verdict/clause.js';
import { strictest } from '../verdict/conditions.js';
import { evaluate } from '../verdict/evaluate.js';
import type { Counted } from './accomplished.js';

/** Whether an entry counts, which no time and no flight changes. */
export function entryOutcome({ clause }: Counted): Outcome {
  return timelessOutcome(clause);
}

/** Of a clause that has no region. */
export function timelessOutcome(clause: Clause): Outcome {
  return evaluate(clause, {
    instant: '0001-01-01T00:00Z',
    meters: {},
    conditions: strictest,
    capability: () => 'cannot-tell',
  });
}
