import { fileURLToPath } from 'node:url';
import type { Cost, Worked, WorkedCase, WorkedValue } from '../src/assess/worked.js';
import type { Rule } from '../src/rules/rule.js';
import type { Clause, Leaf, Outcome } from '../src/verdict/clause.js';
import { evaluate } from '../src/verdict/evaluate.js';
import type { Draft } from '../src/verdict/result.js';
import type { RuleCase } from './rule-case.js';
import { pointOf, statements } from './rule-case.js';

export function workedFile(ruleId: string): string {
  return fileURLToPath(new URL(`../worked/${ruleId}.json`, import.meta.url));
}

/** The file's text: each entry on a line of its own, so that a change is read as one. */
export function shownBy(rule: Rule, cases: readonly RuleCase[]): string {
  const worked = workedOf(rule, cases);
  const lists = (['costs', 'values', 'cases'] as const).map((key) => {
    const lines = worked[key].map((each) => `    ${JSON.stringify(each)}`);
    return `  "${key}": [${lines.length === 0 ? '' : `\n${lines.join(',\n')}\n  `}]`;
  });
  return `{\n${lists.join(',\n')}\n}\n`;
}

function workedOf(rule: Rule, cases: readonly RuleCase[]): Worked {
  const runs = cases.flatMap((each) =>
    statements(rule, each).map((draft) => ({
      each,
      draft,
      outcome: evaluate(draft.clause, pointOf(each, each.dossier)),
    })),
  );
  return {
    costs: distinct(runs.flatMap(costsOf)),
    values: distinct(runs.flatMap(({ draft }) => limitsOf(draft.clause))),
    cases: casesOf(cases, runs),
  };
}

interface Run {
  readonly each: RuleCase;
  readonly draft: Draft;
  readonly outcome: Outcome;
}

/** Each case by what it expects; what is said only beside what a case expects is shown once. */
function casesOf(cases: readonly RuleCase[], runs: readonly Run[]): readonly WorkedCase[] {
  const meant = cases.map((each): WorkedCase => {
    const run = runs.find((one) => one.each === each && (each.subject ?? one.draft.subject) === one.draft.subject);
    return run ? caseOf(run) : { name: each.name, outcome: 'none', message: null, data: {} };
  });
  const said = new Set(meant.map(saying));
  const beside = runs.map(caseOf).filter((each) => {
    const isNew = !said.has(saying(each));
    said.add(saying(each));
    return isNew;
  });
  return [...meant, ...beside];
}

function caseOf({ each, draft, outcome }: Run): WorkedCase {
  return { name: each.name, outcome, message: draft.messages[outcome], data: draft.data };
}

function saying({ outcome, message }: WorkedCase): string {
  return `${outcome} ${message}`;
}

function costsOf({ draft }: Run): readonly Cost[] {
  return draft.effects.map((effect) =>
    effect.stops === 'capability'
      ? { stops: 'capability', capability: effect.capability, ofUnit: effect.through !== undefined }
      : effect,
  );
}

function limitsOf(clause: Clause): readonly WorkedValue[] {
  return leavesOf(clause).flatMap(({ label, limit, source }) => (limit && source ? [{ label, limit, source }] : []));
}

function leavesOf(clause: Clause): readonly Leaf[] {
  if (clause.is === 'leaf') return [clause];
  if (clause.is === 'ref') return [];
  return (clause.is === 'implies' ? [clause.if, clause.then] : clause.of).flatMap(leavesOf);
}

function distinct<T>(list: readonly T[]): readonly T[] {
  return [...new Map(list.map((each) => [JSON.stringify(each), each])).values()];
}
