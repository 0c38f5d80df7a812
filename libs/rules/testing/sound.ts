import { changeDefinitions } from '../src/changes/changes.js';
import type { Dossier } from '../src/dossier/dossier.js';
import type { Rule } from '../src/rules/rule.js';
import type { Clause, Outcome } from '../src/verdict/clause.js';
import type { Draft, Remedy } from '../src/verdict/result.js';

const changeKinds: ReadonlySet<string> = new Set(changeDefinitions.map(({ kind }) => kind));
const outcomes: readonly Outcome[] = ['met', 'not-met', 'cannot-tell', 'not-applicable'];

/** What must be right about any statement of any rule, whatever the case. Throws with what to mend. */
export function checkDraft(rule: Rule, draft: Draft, dossier: Dossier): void {
  for (const fault of [
    ...messageFaults(rule, draft),
    ...draft.remedies.flatMap((remedy) => remedyFaults(remedy)),
    ...clauseFaults(draft.clause, dossier),
    ...(draft.subject === '' ? ['a statement about nothing'] : []),
  ])
    throw new Error(`${rule.meta.id}, on ${draft.subject}: ${fault}`);
}

function messageFaults(rule: Rule, draft: Draft): readonly string[] {
  return outcomes.flatMap((outcome) => {
    const id = draft.messages[outcome];
    const text = rule.meta.messages[id];
    if (text === undefined) return [`message ${id} is not in its metadata`];
    const names = [...text.matchAll(/\{(\w+)\}/g)].flatMap(([, name]) => name ?? []);
    return names
      .filter((name) => !(name in draft.data))
      .map((name) => `message ${id} asks for {${name}}, which the data does not have`);
  });
}

function remedyFaults({ kind, change, subject, facts }: Remedy): readonly string[] {
  return [
    ...(changeKinds.has(change) ? [] : [`remedy ${change} is no change that can be recorded`]),
    ...(subject === '' ? [`remedy ${change} is about nothing`] : []),
    ...(kind === 'do' && facts.length > 0 ? [`remedy ${change} is to be done, so it asks for no facts`] : []),
  ];
}

function clauseFaults(clause: Clause, dossier: Dossier): readonly string[] {
  if (clause.is === 'ref') return [];
  if (clause.is === 'implies') return [clause.if, clause.then].flatMap((each) => clauseFaults(each, dossier));
  const label = /^\S+$/.test(clause.label) ? [] : [`"${clause.label}" is no label`];
  if (clause.is !== 'leaf') {
    const empty = outcomes.includes(clause.ifEmpty) ? [] : [`"${clause.ifEmpty}" is no outcome`];
    return [...label, ...empty, ...clause.of.flatMap((each) => clauseFaults(each, dossier))];
  }
  const units = [clause.value, clause.limit].flatMap((each) =>
    each && (each.unit === '' || !Number.isFinite(each.amount)) ? [each] : [],
  );
  return [
    ...label,
    ...[clause.inside, clause.outside].flatMap((each) => (outcomes.includes(each) ? [] : [`"${each}" is no outcome`])),
    ...units.map((each) => `${clause.label} has a figure without amount or unit: ${JSON.stringify(each)}`),
    ...(clause.missing ?? []).flatMap((path) =>
      isPlace(path, dossier) ? [] : [`${clause.label} misses ${path}, which is no place`],
    ),
  ];
}

/** Whether a path begins at a place of the dossier, or at a unit whose type is asked about, and skips no step. */
function isPlace(path: string, dossier: Dossier): boolean {
  const [part = '', place = '', ...rest] = path.split('.');
  if ([place, ...rest].includes('')) return false;
  if (part === 'catalogue') return rest.length > 0;
  const whole: unknown = Object.entries(dossier).find(([key]) => key === part)?.[1];
  // What a record need not have stands in no dossier of a case that is not about it.
  if (part === 'status' && place === 'sayings') return true;
  return typeof whole === 'object' && whole !== null && place in whole;
}
