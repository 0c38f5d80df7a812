import { admit, apply, parseChange, refusalTexts, type Catalogue, type Change, type Dossier } from '@tallywing/rules';
import type { Spec } from '../../form/spec.js';
import { problemWords, type FieldProblem } from '../../form/problems.js';
import { valueAt } from '../../form/tree.js';

/** One thing done or planned, as the form holds it. It may be unfinished. */
export interface Step {
  readonly key: string;
  readonly kind: string;
  readonly value: unknown;
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
      return {
        step,
        before,
        change: null,
        problems: parsed.refusals.map((each) => problemWords(each, step.value, refusalTexts)),
      };
    const refusals = admit(before, catalogue, parsed.change, now);
    if (refusals.length > 0)
      return {
        step,
        before,
        change: null,
        problems: refusals.map((each) => problemWords(each, step.value, refusalTexts)),
      };
    after = apply(before, parsed.change);
    return { step, before, change: parsed.change, problems: [] };
  });
  return { steps: judged, after, ready: judged.length > 0 && judged.every((each) => each.change !== null) };
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
