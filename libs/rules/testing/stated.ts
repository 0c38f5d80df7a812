import { fileURLToPath } from 'node:url';
import type { SourceRef } from '../src/facts/source.js';
import type { Rule } from '../src/rules/rule.js';
import type { Clause } from '../src/verdict/clause.js';
import type { RuleCase } from './rule-case.js';
import { statements } from './rule-case.js';

export function statedFile(ruleId: string): string {
  return fileURLToPath(new URL(`../stated/${ruleId}.txt`, import.meta.url));
}

/**
 * What the statements of all cases are made of, each thing once: of what they speak, what they stop, what can be done, what falls due,
 * and each leaf with its regions, figures, gaps and source. A difference here is read like one of the code.
 */
export function statedBy(rule: Rule, cases: readonly RuleCase[]): string {
  const drafts = cases.flatMap((each) => statements(rule, each));
  const parts = {
    subjects: drafts.map((draft) => draft.subject),
    messages: drafts.map((draft) => draft.messages),
    data: drafts.map((draft) => draft.data),
    effects: drafts.map((draft) => draft.effects),
    remedies: drafts.map((draft) => draft.remedies ?? []),
    due: drafts.flatMap((draft) => draft.due ?? []),
    clauses: drafts.map((draft) => shapeOf(draft.clause)),
    leaves: drafts.flatMap((draft) => leavesOf(draft.clause)),
  };
  return Object.entries(parts)
    .map(([name, list]) => `${name}\n${[...new Set(list.map((each) => `  ${lineOf(each)}\n`))].join('')}`)
    .join('');
}

function lineOf(value: unknown): string {
  return JSON.stringify(value, (key, inner: unknown) => (key === 'source' ? sourceName(inner as SourceRef) : inner));
}

function sourceName({ document, paragraph, edition, status }: SourceRef): string {
  return [document, paragraph, edition, status].join(' | ');
}

/** How leaves hang together, by their labels. */
function shapeOf(clause: Clause): unknown {
  if (clause.is === 'leaf') return clause.label;
  if (clause.is === 'ref') return { ref: clause.capability };
  if (clause.is === 'implies') return { if: shapeOf(clause.if), then: shapeOf(clause.then) };
  const { is, n, label, of, ifEmpty } = clause;
  return { is, n, label, of: of.map(shapeOf), ifEmpty };
}

function leavesOf(clause: Clause): readonly object[] {
  if (clause.is === 'leaf') return [{ ...clause, is: undefined }];
  if (clause.is === 'ref') return [];
  return (clause.is === 'implies' ? [clause.if, clause.then] : clause.of).flatMap(leavesOf);
}
