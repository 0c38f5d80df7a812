import type { PolicyKind, PolicyStretch } from '../catalogue/policy.js';
import { housePolicy } from '../catalogue/policy.js';
import { implies, within } from '../verdict/build.js';
import type { Clause, Leaf } from '../verdict/clause.js';

/** What a version of a policy asks, while it counts; before and after, not applicable. */
export function duringPolicy(stretch: PolicyStretch<PolicyKind>, asks: Clause): Clause {
  return implies(policyCounts(stretch), asks);
}

export function policyCounts({ from, before, policy }: PolicyStretch<PolicyKind>): Leaf {
  const region = { from, ...(before === null ? {} : { before }) };
  return within('the-policy-counts', region, { source: housePolicy(policy) });
}
