import {
  admit,
  apply,
  parseChange,
  refusalTexts,
  type Catalogue,
  type Change,
  type Dossier,
  type Refusal,
} from '@tallywing/rules';
import type { Spec } from './form/spec.js';
import { valueAt } from './form/tree.js';

/** One thing done or planned, as the form holds it. It may be unfinished. */
export interface Step {
  readonly key: string;
  readonly kind: string;
  readonly value: unknown;
}

/** What is wrong with one field of a step, and the way out. `field` is '' for the step as a whole. */
export interface FieldProblem {
  readonly field: string;
  readonly says: string;
  readonly wayOut: string;
}

export interface JudgedStep {
  readonly step: Step;
  readonly problems: readonly FieldProblem[];
  /** The change it makes; null while something is wrong with it. */
  readonly change: Change | null;
  /** The aircraft as this step finds it. */
  readonly before: Dossier;
}

export interface Plan {
  readonly steps: readonly JudgedStep[];
  /** The aircraft after every step that could be applied. */
  readonly after: Dossier;
  /** Every step is complete and admitted. */
  readonly ready: boolean;
}

/** The same admit and apply as on the server, step upon step. `now` is a UTC minute. */
export function planOf(dossier: Dossier, catalogue: Catalogue, steps: readonly Step[], now: string): Plan {
  let after = dossier;
  const judged = steps.map((step): JudgedStep => {
    const before = after;
    const parsed = parseChange({ kind: step.kind, version: 1, ...(step.value as object) });
    if (!parsed.ok)
      return { step, before, change: null, problems: parsed.refusals.map((each) => problemWords(each, step.value)) };
    const refusals = admit(before, catalogue, parsed.change, now);
    if (refusals.length > 0)
      return { step, before, change: null, problems: refusals.map((each) => problemWords(each, step.value)) };
    after = apply(before, parsed.change);
    return { step, before, change: parsed.change, problems: [] };
  });
  return { steps: judged, after, ready: judged.length > 0 && judged.every((each) => each.change !== null) };
}

/** A refusal in words, from the core's own texts; an empty field simply asks to be filled in. */
export function problemWords(refusal: Refusal, value: unknown): FieldProblem {
  const { field } = refusal;
  if (refusal.code === 'malformed') {
    const given = valueAt(value, field);
    if (given === null || given === undefined || given === '')
      return { field, says: 'This is still empty.', wayOut: 'Fill it in.' };
    return { field, says: plainProblem(String(refusal.data['problem'] ?? '')), wayOut: '' };
  }
  const texts = refusalTexts[refusal.code];
  return { field, says: filled(texts.says, refusal.data), wayOut: filled(texts.wayOut, refusal.data) };
}

/** The schema library's own words are for programmers; these are not. */
function plainProblem(problem: string): string {
  const least = /expected (?:number|int) to be (>=?)\s*(-?[\d.]+)/.exec(problem);
  if (least) return `Must be ${least[1] === '>' ? 'more than' : 'at least'} ${least[2]}.`;
  const most = /expected (?:number|int) to be (<=?)\s*(-?[\d.]+)/.exec(problem);
  if (most) return `Must be ${most[1] === '<' ? 'less than' : 'at most'} ${most[2]}.`;
  if (/expected number/.test(problem)) return 'This is not a number.';
  if (/expected int/.test(problem)) return 'Must be a whole number.';
  if (/Invalid option/.test(problem)) return 'Choose one of the list.';
  const text = problem.charAt(0).toUpperCase() + problem.slice(1);
  return text.endsWith('.') ? text : `${text}.`;
}

function filled(template: string, data: Refusal['data']): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => String(data[name] ?? ''));
}

/** The problem that belongs to one field, in one line. */
export function problemAt(problems: readonly FieldProblem[], field: string): string | null {
  const found = problems.filter((problem) => problem.field === field);
  return found.length === 0 ? null : found.map((problem) => `${problem.says} ${problem.wayOut}`.trim()).join(' ');
}

/**
 * A step as the API takes it: codes in capitals with underscores, under the name of its kind ('unit.install' is
 * `unitInstall`). Mechanical, from the same spec that made the form.
 */
export function inputOf(step: Step, spec: Spec): Record<string, unknown> {
  const name = step.kind.replace(/[.-](\w)/g, (_, letter: string) => letter.toUpperCase());
  return { [name]: encoded(step.value, spec) };
}

function encoded(value: unknown, spec: Spec): unknown {
  if (value === null || value === undefined) return null;
  switch (spec.kind) {
    case 'object':
      return Object.fromEntries(
        spec.fields.map(({ name, spec: inner }) => [name, encoded(valueAt(value, name), inner)]),
      );
    case 'list':
      return (value as unknown[]).map((each) => encoded(each, spec.of));
    case 'many':
      return (value as string[]).map(enumName);
    case 'choice':
      return enumName(String(value));
    default:
      return value;
  }
}

function enumName(code: string): string {
  const name = code.toUpperCase().replace(/[^A-Z0-9]/g, '_');
  return /^[0-9]/.test(name) ? `_${name}` : name;
}
