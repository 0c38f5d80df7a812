import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Facts } from '../graph/facts.js';
import { factsOf } from '../graph/facts.js';
import type { Means } from '../graph/means.js';
import { rules } from '../rules/registry.js';
import type { Capability } from '../verdict/capability.js';
import { capabilities } from '../verdict/capability.js';
import type { Clause } from '../verdict/clause.js';
import type { Edges } from '../verdict/regions.js';
import { collectEdges, noEdges } from '../verdict/regions.js';
import type { Statement } from '../verdict/result.js';
import { readingLimits } from './meters.js';

/** Everything that does not depend on moment and flight: the statements of all rules, and what bears on what. */
export interface System {
  readonly dossier: Dossier;
  readonly facts: Facts;
  readonly statements: readonly Statement[];
  /** For each statement, the capabilities that its rule positively judges. */
  readonly establishes: readonly (readonly Capability[])[];
  readonly byCapability: Readonly<Record<Capability, Bearing>>;
  readonly edges: Edges;
}

export interface Bearing {
  /** Indexes of statements on the aircraft as a whole. */
  readonly aircraft: readonly number[];
  readonly means: readonly {
    readonly means: Means;
    readonly statements: readonly number[];
    readonly judged: boolean;
  }[];
  /** For a capability of the aircraft as a whole: some rule that establishes it spoke. */
  readonly judged: boolean;
}

const cache = new WeakMap<Dossier, { readonly catalogue: Catalogue; readonly system: System }>();

/** Pure; remembered per dossier object, because preview, assessment and horizon ask for the same one. */
export function systemOf(dossier: Dossier, catalogue: Catalogue): System {
  const known = cache.get(dossier);
  if (known && known.catalogue === catalogue) return known.system;
  const system = build(dossier, catalogue);
  cache.set(dossier, { catalogue, system });
  return system;
}

function build(dossier: Dossier, catalogue: Catalogue): System {
  const facts = factsOf(dossier, catalogue);
  const said: Statement[] = [];
  const spoken = rules.flatMap((rule) => {
    const own = rule.evaluate(facts, said).map((draft): Spoken => ({
      statement: { ...draft, ruleId: rule.meta.id, key: `${rule.meta.id}|${draft.subject}` },
      establishes: rule.meta.establishes,
    }));
    said.push(...own.map((each) => each.statement));
    return own;
  });
  return systemFrom(dossier, facts, spoken);
}

/** A statement with the capabilities that its rule positively judges. */
export interface Spoken {
  readonly statement: Statement;
  readonly establishes: readonly Capability[];
}

/** Sorts out which statement bears on what, and where outcomes may change. */
export function systemFrom(dossier: Dossier, facts: Facts, spoken: readonly Spoken[]): System {
  const statements = spoken.map((each) => each.statement);
  const edges = noEdges();
  for (const each of statements) collectEdges(each.clause, edges);
  for (const each of readingLimits(dossier, facts.catalogue.policies, facts.zone)) edges.instants.add(each);

  const bears = (capability: Capability, through: ReadonlySet<string> | null) =>
    statements.flatMap((statement, index) => (bearsOn(statement, capability, through) ? [index] : []));
  const byCapability = Object.fromEntries(
    capabilities.map((capability): [Capability, Bearing] => {
      const judged = (indexes: readonly number[]) =>
        indexes.some((index) => spoken[index]?.establishes.includes(capability));
      const aircraft = bears(capability, null);
      const means = facts.means
        .filter((each) => each.capability === capability)
        .map((each) => {
          const indexes = bears(capability, new Set(each.members));
          return { means: each, statements: indexes, judged: judged(indexes) };
        });
      return [capability, { aircraft, means, judged: judged(aircraft) }];
    }),
  ) as Record<Capability, Bearing>;
  return { dossier, facts, statements, establishes: spoken.map((each) => each.establishes), byCapability, edges };
}

/** On the aircraft as a whole (`through` null), or on a means with these members. */
function bearsOn(statement: Statement, capability: Capability, through: ReadonlySet<string> | null): boolean {
  return statement.effects.some((effect) => {
    if (effect.stops !== 'capability' || effect.capability !== capability) return false;
    return effect.through === undefined ? through === null : through !== null && through.has(effect.through);
  });
}

export function hasRef(clause: Clause): boolean {
  if (clause.is === 'ref') return true;
  if (clause.is === 'leaf') return false;
  return clause.is === 'implies' ? hasRef(clause.if) || hasRef(clause.then) : clause.of.some(hasRef);
}
