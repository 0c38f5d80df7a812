import { fileURLToPath } from 'node:url';
import type { SourceRef } from '../src/facts/source.js';
import type { Rule } from '../src/rules/rule.js';
import type { Clause } from '../src/verdict/clause.js';
import type { Effect } from '../src/verdict/result.js';
import type { RuleCase } from './rule-case.js';
import { statements } from './rule-case.js';

export function statedFile(ruleId: string): string {
  return fileURLToPath(new URL(`../stated/${ruleId}.txt`, import.meta.url));
}

/**
 * What the statements of all cases are made of, each thing once: of what they speak, how their clauses hang together, what they stop and
 * what can be done, their words, what falls due, and each leaf with its regions, figures, gaps and source. A difference here is read like one of the code.
 */
export function statedBy(rule: Rule, cases: readonly RuleCase[]): string {
  const drafts = cases.flatMap((each) => statements(rule, each));
  const parts = {
    statements: drafts.map(({ subject, clause, effects, remedies }) => ({
      subject,
      states: shapeOf(clause),
      effects: effects.map(effectName).join(' '),
      remedies,
    })),
    messages: drafts.map((draft) => draft.messages),
    data: drafts.map((draft) => draft.data),
    due: drafts.flatMap((draft) => draft.due ?? []),
    leaves: drafts.flatMap((draft) => leavesOf(draft.clause)),
  };
  return Object.entries(parts)
    .map(([name, list]) => `${name}\n${[...new Set(list.map((each) => `  ${lineOf(each)}\n`))].join('')}`)
    .join('');
}

function lineOf(value: unknown): string {
  return JSON.stringify(value, (key, inner: unknown) =>
    key === 'source' && typeof inner === 'object' ? sourceName(inner as SourceRef) : inner,
  );
}

function sourceName({ document, paragraph, edition, status }: SourceRef): string {
  return [document, paragraph, edition, status].join(' | ');
}

function effectName(effect: Effect): string {
  if (effect.stops === 'nothing') return effect.kind;
  return effect.stops === 'capability'
    ? [effect.capability, ...(effect.through ? [effect.through] : [])].join('@')
    : effect.stops;
}

/** How leaves hang together, by their labels and what they come to. */
function shapeOf(clause: Clause): unknown {
  if (clause.is === 'leaf')
    return `${clause.label}: ${clause.inside}${clause.outside === clause.inside ? '' : `, ${clause.outside}`}`;
  if (clause.is === 'ref') return { ref: clause.capability };
  if (clause.is === 'implies') return { if: shapeOf(clause.if), then: shapeOf(clause.then) };
  const { is, n, label, of, ifEmpty } = clause;
  return { [`${[is, n].join('')} ${label}, else ${ifEmpty}`]: of.map(shapeOf) };
}

function leavesOf(clause: Clause): readonly object[] {
  if (clause.is === 'leaf') return [{ ...clause, is: undefined }];
  if (clause.is === 'ref') return [];
  return (clause.is === 'implies' ? [clause.if, clause.then] : clause.of).flatMap(leavesOf);
}
