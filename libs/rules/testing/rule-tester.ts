import { describe, expect, it } from 'vitest';
import { metersAt } from '../src/assess/meters.js';
import type { Catalogue, EquipmentType } from '../src/catalogue/type.js';
import type { Dossier } from '../src/dossier/dossier.js';
import { factsOf } from '../src/graph/facts.js';
import type { Rule } from '../src/rules/rule.js';
import type { Capability } from '../src/verdict/capability.js';
import type { Outcome } from '../src/verdict/clause.js';
import type { FlightConditions } from '../src/verdict/conditions.js';
import { strictest } from '../src/verdict/conditions.js';
import type { Point } from '../src/verdict/evaluate.js';
import { evaluate } from '../src/verdict/evaluate.js';
import type { Draft, Values } from '../src/verdict/result.js';
import { forget, recordedFacts } from './forgetting.js';

export interface RuleCase {
  readonly name: string;
  readonly dossier: Dossier;
  readonly types?: readonly EquipmentType[];
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
  /** Which statement is meant, where the rule makes several. */
  readonly subject?: string;
  /** `none`: the rule makes no statement on this subject. */
  readonly expect: Outcome | 'none';
  readonly message?: string;
  readonly data?: Values;
  readonly topFt?: number;
}

/** One strict tester for all rules: stricter than any author. */
export function testRule(rule: Rule, cases: readonly RuleCase[]): void {
  const { meta } = rule;
  describe(meta.id, () => {
    it('states what it asks, whom it binds and its sources', () => {
      expect(meta.asks).toMatch(/\.$/);
      expect(meta.binds).toMatch(/\.$/);
      expect(meta.sources.length).toBeGreaterThan(0);
    });

    it('has no two cases alike', () => {
      const seen = cases.map((each) => each.name);
      expect(new Set(seen).size).toBe(seen.length);
      const asked = cases.map((each) =>
        JSON.stringify({ ...each, name: null, expect: null, message: null, data: null }),
      );
      expect(new Set(asked).size).toBe(asked.length);
    });

    it.each(cases.map((each) => [each.name, each] as const))('%s', (_name, each) => {
      const drafts = statements(rule, each);
      const subjects = drafts.map((draft) => draft.subject);
      expect(new Set(subjects).size, 'one statement a subject').toBe(subjects.length);
      for (const draft of drafts) checkDraft(rule, draft);
      const draft =
        each.subject === undefined ? drafts[0] : drafts.find((candidate) => candidate.subject === each.subject);
      if (each.expect === 'none') {
        expect(draft).toBeUndefined();
        return;
      }
      if (!draft)
        throw new Error(
          `${meta.id} states nothing on ${each.subject ?? 'any subject'}; it speaks of: ${subjects.join(', ') || 'nothing'}`,
        );
      const outcome = evaluate(draft.clause, pointOf(each, each.dossier));
      expect(outcome).toBe(each.expect);
      if (each.message !== undefined) expect(draft.messages[outcome]).toBe(each.message);
      if (each.data !== undefined) expect(draft.data).toMatchObject(each.data);
      if (each.topFt !== undefined) expect(draft.topFt).toBe(each.topFt);
    });

    it('says the same twice, keeps its hands off its input and survives JSON', () => {
      for (const each of cases) {
        const frozen = deepFreeze(structuredClone(each.dossier));
        const first = rule.evaluate(factsOf(frozen, catalogueOf(each)));
        const second = rule.evaluate(factsOf(frozen, catalogueOf(each)));
        expect(second).toEqual(first);
        expect(JSON.parse(JSON.stringify(first))).toEqual(first);
      }
    });

    it('produces every message and every outcome it claims in some case', () => {
      const produced = new Set<string>();
      for (const each of cases)
        for (const draft of statements(rule, each))
          produced.add(draft.messages[evaluate(draft.clause, pointOf(each, each.dossier))]);
      expect([...produced].sort()).toEqual(Object.keys(meta.messages).sort());
    });

    it('never improves when a recorded fact is taken away', () => {
      for (const each of cases) {
        const before = outcomesOf(rule, each, each.dossier);
        for (const path of recordedFacts(each.dossier)) {
          if (each.states?.includes(path.join('.'))) continue;
          const poorer = forget(each.dossier, path);
          for (const [subject, outcome] of outcomesOf(rule, each, poorer)) {
            const was = before.get(subject);
            if (outcome === 'met' && was !== undefined && was !== 'met' && was !== 'not-applicable')
              throw new Error(`${each.name}: forgetting ${path.join('.')} turns ${subject} from ${was} into met`);
          }
        }
      }
    });
  });
}

function statements(rule: Rule, each: RuleCase): readonly Draft[] {
  return rule.evaluate(factsOf(each.dossier, catalogueOf(each)));
}

function outcomesOf(rule: Rule, each: RuleCase, dossier: Dossier): Map<string, Outcome> {
  const point = pointOf(each, dossier);
  return new Map(
    rule.evaluate(factsOf(dossier, catalogueOf(each))).map((draft) => [draft.subject, evaluate(draft.clause, point)]),
  );
}

function pointOf(each: RuleCase, dossier: Dossier): Point {
  return {
    instant: each.at,
    meters: metersAt(dossier, each.hoursAhead ?? 0),
    conditions: { ...strictest, ...each.flight },
    capability: (capability) => each.capabilities?.[capability] ?? 'cannot-tell',
  };
}

function catalogueOf(each: RuleCase): Catalogue {
  return { version: 'test', types: Object.fromEntries((each.types ?? []).map((type) => [type.id, type])) };
}

function checkDraft(rule: Rule, draft: Draft): void {
  for (const id of Object.values(draft.messages)) {
    const text = rule.meta.messages[id];
    if (text === undefined) throw new Error(`${rule.meta.id} uses message ${id}, which its metadata does not have`);
    for (const [, name] of text.matchAll(/\{(\w+)\}/g)) {
      if (name !== undefined && !(name in draft.data))
        throw new Error(`Message ${id} of ${rule.meta.id} asks for {${name}}, which the data does not have`);
    }
  }
}

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}
