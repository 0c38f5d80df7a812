import { admit, apply, parseChange, refusalTexts, type Catalogue, type Change, type Dossier } from '@tallywing/rules';
import { problemWords, type FieldProblem } from '../../form/problems.js';

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
