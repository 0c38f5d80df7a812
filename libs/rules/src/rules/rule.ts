import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import type { Capability } from '../verdict/capability.js';
import type { Draft, Statement } from '../verdict/result.js';

export const topics = [
  'authority',
  'installation',
  'interfaces',
  'indication',
  'equipment',
  'inspections',
  'readings',
  'after-work',
  'mass',
  'electrical',
  'databases',
  'defects',
] as const;
export type Topic = (typeof topics)[number];

/** What a reader must know of a rule without reading its code. The rule pages are made from it. */
export interface RuleMeta {
  /** File name and anchor. */
  readonly id: string;
  readonly topic: Topic;
  /** One sentence: what the rule asks. */
  readonly asks: string;
  /** One sentence: whom it binds, and whom not. */
  readonly binds: string;
  readonly sources: readonly SourceRef[];
  /** Words for each message id; `{name}` takes a value from the result's data. */
  readonly messages: Readonly<Record<string, string>>;
  /** Capabilities that this rule positively judges. A capability that no such rule judged on a means is "not judged". */
  readonly establishes: readonly Capability[];
}

/**
 * A rule states clauses about one aircraft. It sees no moment and no flight: those are regions of its clauses.
 * Same facts, same statements; it keeps nothing and changes nothing.
 */
export interface Rule {
  readonly meta: RuleMeta;
  readonly evaluate: Evaluate;
}

/** `said`: what the rules before it in the list stated, for a rule that speaks of the sources of others. */
type Evaluate = (facts: Facts, said: readonly Statement[]) => readonly Draft[];

export function defineRule(meta: RuleMeta, evaluate: Evaluate): Rule {
  return { meta, evaluate };
}
