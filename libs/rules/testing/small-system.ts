import type { Policy } from '../src/catalogue/policy.js';
import type { Dossier } from '../src/dossier/dossier.js';
import { factsOf } from '../src/graph/facts.js';
import type { Spoken, System } from '../src/assess/system.js';
import { systemFrom } from '../src/assess/system.js';
import type { Capability } from '../src/verdict/capability.js';
import type { Clause } from '../src/verdict/clause.js';
import type { Statement } from '../src/verdict/result.js';
import { catalogueOf } from './changes.js';
import type { Part } from './dossiers.js';
import { dossierOf } from './dossiers.js';

const messages = { met: 'm', 'not-met': 'n', 'cannot-tell': 'c', 'not-applicable': 'na' };

/** What a rule says of one thing, on a capability of the aircraft, or on the means that pass `through`; `only`: without establishing it. */
export function says(
  key: string,
  clause: Clause,
  capability: Capability,
  part: Partial<Statement> & { readonly through?: string; readonly only?: true } = {},
): Spoken {
  const { through, only, ...rest } = part;
  const effect = { stops: 'capability', capability } as const;
  return {
    statement: {
      ruleId: key,
      key,
      subject: key,
      clause,
      messages,
      data: {},
      effects: [through === undefined ? effect : { ...effect, through }],
      remedies: [],
      ...rest,
    },
    establishes: only ? [] : [capability],
  };
}

/** One way to have a capability: a unit by itself. */
export function means(id: string, capability: Capability) {
  return { id, capability, members: [id] };
}

/** A system of a few statements in place of all rules; `listed`: somebody stated the list of equipment complete. */
export function smallSystem(parts: {
  readonly spoken: readonly Spoken[];
  readonly means?: readonly ReturnType<typeof means>[];
  readonly listed?: boolean;
  readonly dossier?: Part<Dossier>;
  readonly policies?: readonly Policy[];
}): System {
  const { spoken, means: ways = [], listed = true, dossier: part = {}, policies } = parts;
  const dossier = dossierOf(part);
  const catalogue = catalogueOf();
  const facts = factsOf(dossier, policies ? { ...catalogue, policies } : catalogue);
  const complete = () => (listed ? { asOf: '2026-01-01', by: 'R. Tamsin' } : null);
  return systemFrom(dossier, { ...facts, means: ways, complete }, spoken);
}
