import { metersAt } from '../src/assess/meters.js';
import type { Catalogue, EquipmentType } from '../src/catalogue/type.js';
import type { Policy } from '../src/catalogue/policy.js';
import { policyAt } from '../src/catalogue/policy.js';
import type { Dossier } from '../src/dossier/dossier.js';
import { factsOf } from '../src/graph/facts.js';
import type { Rule } from '../src/rules/rule.js';
import type { Capability } from '../src/verdict/capability.js';
import type { Outcome } from '../src/verdict/clause.js';
import type { FlightConditions } from '../src/verdict/conditions.js';
import { strictest } from '../src/verdict/conditions.js';
import type { Point } from '../src/verdict/evaluate.js';
import type { Draft, Due, Values } from '../src/verdict/result.js';

export interface RuleCase {
  readonly name: string;
  readonly dossier: Dossier;
  readonly types?: readonly EquipmentType[];
  readonly policies?: readonly Policy[];
  /** Rules whose statements the rule under test looks at. */
  readonly beside?: readonly Rule[];
  /** UTC, `YYYY-MM-DDTHH:MMZ`. */
  readonly at: string;
  /** Flight hours since the latest reading, whole hundredths. */
  readonly hoursAhead?: number;
  /** What the flight is; fields left out take the strictest value. */
  readonly flight?: Partial<FlightConditions>;
  /**
   * Paths whose null is a state in this case, not a gap: an entry that carries no readings stands by its own statement, so taking
   * away the readings makes another entry of it.
   */
  readonly states?: readonly string[];
  /** What other capabilities are, for rules that refer to them; unnamed ones are cannot-tell. */
  readonly capabilities?: Partial<Record<Capability, Outcome>>;
  /** The case is that of an aircraft without any equipment recorded, so other equipment would change it. */
  readonly alone?: true;
  /** Which statement is meant, where the rule makes several. */
  readonly subject?: string;
  /** `none`: the rule makes no statement on this subject. */
  readonly expect: Outcome | 'none';
  readonly message?: string;
  readonly data?: Values;
  readonly topFt?: number;
  /** All that falls due by the statement, in its order. */
  readonly due?: readonly Partial<Due>[];
}

export function statements(rule: Rule, each: RuleCase): readonly Draft[] {
  return statementsOn(rule, each, each.dossier);
}

export function statementsOn(rule: Rule, each: RuleCase, dossier: Dossier): readonly Draft[] {
  const facts = factsOf(dossier, catalogueOf(each));
  const said = (each.beside ?? []).flatMap(({ meta, evaluate }) =>
    evaluate(facts, []).map((draft) => ({ ...draft, ruleId: meta.id, key: `${meta.id}|${draft.subject}` })),
  );
  return rule.evaluate(facts, said);
}

export function pointOf(each: RuleCase, dossier: Dossier): Point {
  return {
    instant: each.at,
    meters: metersAt(
      dossier,
      each.hoursAhead ?? 0,
      false,
      policyAt(each.policies, 'reading-age', each.at, dossier.configuration.aircraft.base.zone)?.body.days,
    ),
    conditions: { ...strictest, ...each.flight },
    capability: (capability) => each.capabilities?.[capability] ?? 'cannot-tell',
  };
}

export function catalogueOf(each: RuleCase): Catalogue {
  return {
    version: 'test',
    types: Object.fromEntries((each.types ?? []).map((type) => [type.id, type])),
    ...(each.policies === undefined ? {} : { policies: each.policies }),
  };
}
