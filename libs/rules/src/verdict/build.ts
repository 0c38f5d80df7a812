import type { Capability } from './capability.js';
import type { When } from './conditions.js';
import type { Clause, Group, Implies, Leaf, Outcome, Ref } from './clause.js';

/** Short hands for clauses. `extra` carries source, evidence, value and limit. */
type Extra = Partial<Pick<Leaf, 'source' | 'evidence' | 'value' | 'limit' | 'missing'>>;

export function met(label: string, extra: Extra = {}): Leaf {
  return { is: 'leaf', label, inside: 'met', outside: 'met', ...extra };
}

export function notMet(label: string, extra: Extra = {}): Leaf {
  return { is: 'leaf', label, inside: 'not-met', outside: 'not-met', ...extra };
}

/** Nobody recorded it: `missing` names the facts, so that the find-out list can ask for them. */
export function unknown(label: string, missing: readonly string[], extra: Extra = {}): Leaf {
  return { is: 'leaf', label, inside: 'cannot-tell', outside: 'cannot-tell', missing, ...extra };
}

export function notApplicable(label: string, extra: Extra = {}): Leaf {
  return { is: 'leaf', label, inside: 'not-applicable', outside: 'not-applicable', ...extra };
}

/** A fact that may be unrecorded: true is met, false is not-met, null is cannot-tell. */
export function fact(value: boolean | null | undefined, label: string, path: string, extra: Extra = {}): Leaf {
  if (value === null || value === undefined) return unknown(label, [path], extra);
  return value ? met(label, extra) : notMet(label, extra);
}

/** Within the region met, outside it not-met, unless said otherwise. */
export function within(
  label: string,
  region: Pick<Leaf, 'from' | 'before' | 'atMost' | 'when'>,
  extra: Extra = {},
  inside: Outcome = 'met',
  outside: Outcome = 'not-met',
): Leaf {
  return { is: 'leaf', label, inside, outside, ...region, ...extra };
}

/** True of the flight asked about. For the `if` of `implies`. */
export function flight(label: string, when: When, extra: Extra = {}): Leaf {
  return { is: 'leaf', label, inside: 'met', outside: 'not-met', when, ...extra };
}

export function allOf(label: string, of: readonly Clause[], ifEmpty: Outcome): Group {
  return { is: 'all', label, of, ifEmpty };
}

export function anyOf(label: string, of: readonly Clause[], ifEmpty: Outcome): Group {
  return { is: 'any', label, of, ifEmpty };
}

export function implies(condition: Clause, then: Clause): Implies {
  return { is: 'implies', if: condition, then };
}

/** Met where the clause is not-met, and the other way round; cannot-tell stays. Leaves only: a group is turned by its members. */
export function not(leaf: Leaf): Leaf {
  return { ...leaf, inside: turned(leaf.inside), outside: turned(leaf.outside) };
}

export function ref(capability: Capability): Ref {
  return { is: 'ref', capability };
}

function turned(outcome: Outcome): Outcome {
  if (outcome === 'met') return 'not-met';
  return outcome === 'not-met' ? 'met' : outcome;
}
