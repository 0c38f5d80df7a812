import { describe, expect, it } from 'vitest';
import type { Dossier } from '../src/dossier/dossier.js';
import type { Rule } from '../src/rules/rule.js';
import type { Outcome } from '../src/verdict/clause.js';
import { evaluate } from '../src/verdict/evaluate.js';
import type { Draft } from '../src/verdict/result.js';
import { withBystanders } from './bystanders.js';
import { forget, recordedFacts } from './forgetting.js';
import type { RuleCase } from './rule-case.js';
import { pointOf, statements, statementsOn } from './rule-case.js';
import { checkDraft } from './sound.js';
import { statedBy, statedFile } from './stated.js';
import { shownBy, workedFile } from './worked.js';

export type { RuleCase } from './rule-case.js';

/**
 * One strict tester for all rules: stricter than any author. `namesEveryUnit`: a statement on the aircraft has a clause for each unit, so
 * with more units it is the outcome that must stay, not the clause.
 */
export function testRule(rule: Rule, cases: readonly RuleCase[], { namesEveryUnit = false } = {}): void {
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
        JSON.stringify({ ...each, name: null, expect: null, message: null, data: null, due: null }),
      );
      expect(new Set(asked).size).toBe(asked.length);
    });

    it.each(cases.map((each) => [each.name, each] as const))('%s', (_name, each) => {
      const drafts = statements(rule, each);
      const subjects = drafts.map((draft) => draft.subject);
      expect(new Set(subjects).size, 'one statement a subject').toBe(subjects.length);
      for (const draft of drafts) checkDraft(rule, draft, each.dossier);
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
      if (each.due !== undefined) expect(draft.due ?? []).toMatchObject(each.due);
      if (each.topFt !== undefined) expect(draft.topFt).toBe(each.topFt);
    });

    it('says the same twice, keeps its hands off its input and survives JSON', () => {
      for (const each of cases) {
        const frozen = deepFreeze(structuredClone(each.dossier));
        const first = statementsOn(rule, each, frozen);
        const second = statementsOn(rule, each, frozen);
        expect(second).toEqual(first);
        expect(JSON.parse(JSON.stringify(first))).toEqual(first);
      }
    });

    it('says the same beside equipment that has nothing to do with it', () => {
      for (const each of cases.filter(({ alone }) => !alone)) {
        const beside = { ...each, dossier: withBystanders(each.dossier, each.at.slice(0, 10)) };
        const said = new Map(statements(rule, beside).map((draft) => [draft.subject, draft]));
        const part = (draft: Draft | undefined) =>
          namesEveryUnit ? draft && evaluate(draft.clause, pointOf(beside, beside.dossier)) : draft;
        for (const draft of statements(rule, each))
          expect(part(said.get(draft.subject)), each.name).toEqual(part(draft));
      }
    });

    it('produces every message and every outcome it claims in some case', () => {
      const produced = new Set<string>();
      for (const each of cases)
        for (const draft of statements(rule, each))
          produced.add(draft.messages[evaluate(draft.clause, pointOf(each, each.dossier))]);
      expect([...produced].sort()).toEqual(Object.keys(meta.messages).sort());
    });

    it('has its cases written down as they ran, for the pages of the rules', async () => {
      const wayOut = `see that ${meta.id} should say this, then run \`npx vitest run --project rules libs/rules -u\``;
      await expect(shownBy(rule, cases), wayOut).toMatchFileSnapshot(workedFile(meta.id));
    });

    it('has what it states written down, so that a difference is read', async () => {
      const wayOut = `see that ${meta.id} should state this, then run \`npx vitest run --project rules libs/rules -u\``;
      await expect(statedBy(rule, cases), wayOut).toMatchFileSnapshot(statedFile(meta.id));
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

function outcomesOf(rule: Rule, each: RuleCase, dossier: Dossier): Map<string, Outcome> {
  const point = pointOf(each, dossier);
  return new Map(statementsOn(rule, each, dossier).map((draft) => [draft.subject, evaluate(draft.clause, point)]));
}

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) deepFreeze(inner);
  }
  return value;
}
