import type { Catalogue } from '@tallywing/rules';
import { useMemo, useState } from 'react';
import { Button } from '../../../ui/button.js';
import { FieldView } from '../../../form/field-view.js';
import { HouseChoices } from '../../../app/house-choices.js';
import { FormContextProvider, type FormContext } from '../../../form/form-context.js';
import { problemAt } from '../../../form/problems.js';
import { optionsFor } from '../options.js';
import type { Spec } from '../../../form/spec.js';
import { valueAt } from '../../../form/tree.js';
import { specFor, stepWith } from '../follow.js';
import { formOf } from '../kinds.js';
import { judgeStep } from '../judging.js';
import type { JudgedStep, Step } from '../plan.js';
import { Readings } from './readings.js';
import { StepNotes } from './step-notes.js';
import { stepWords } from '../step-words.js';

export interface StepCardProps {
  readonly judged: JudgedStep;
  readonly number: number;
  readonly catalogue: Catalogue;
  readonly zone: string;
  /** Show empty fields as problems: once recording was tried. */
  readonly strict: boolean;
  readonly onChange: (step: Step) => void;
  readonly onRemove: () => void;
}

/** One thing done: its form, what is wrong with it, and readings judged while they are typed. */
export function StepCard(props: StepCardProps) {
  const { judged, number, catalogue, zone, strict, onChange, onRemove } = props;
  const { step, before } = judged;
  const [more, setMore] = useState(false);
  const form = formOf(step.kind);
  const spec = useMemo(() => specFor(step.kind), [step.kind]);
  const problems = strict ? judged.problems : judged.problems.filter((each) => !isEmpty(step.value, each.field));
  const shown = useMemo(() => shownPaths(spec, form.first), [spec, form.first]);
  const hasMore = useMemo(() => hasFolded(spec, '', shown, form.hidden ?? []), [spec, shown, form.hidden]);
  const context: FormContext = {
    zone,
    above: (path) => (
      <HouseChoices path={path} onPick={(value) => onChange(stepWith(step, path, value, before, catalogue))} />
    ),
    words: { given: 'Recorded', notGiven: 'Not recorded', noOptions: 'There is none on this aircraft.' },
    set: (path, value) => onChange(stepWith(step, path, value, before, catalogue)),
    problem: (path) => problemAt(problems, path),
    options: (path) => optionsFor(step.kind, path, step.value, before, catalogue),
    hidden: (path) => {
      if (form.hidden?.includes(path)) return true;
      // The readings of other kinds of entry stay out of sight.
      if (/^record\.readings\.\w+$/.test(path)) return valueAt(step.value, path) === null;
      return !more && !shown(path) && problemAt(problems, path) === null;
    },
  };
  const whole = problems.filter((each) => each.field === '' || form.hidden?.includes(each.field));
  const readings = judgeStep(step.value);
  return (
    <li className="tw-step tw-sheet" data-state={judged.change ? 'whole' : 'open'}>
      <div className="tw-step-head">
        <h3>
          {number}. {form.title}
        </h3>
        <span className="tw-soft tw-small">{stepWords(judged)}</span>
      </div>
      <FormContextProvider value={context}>
        <FieldView spec={spec} path="" value={step.value} />
      </FormContextProvider>
      {readings && <Readings judged={readings} />}
      <StepNotes step={step} basis={before.configuration.aircraft.basis} />
      {whole.map((each) => (
        <p key={each.says} className="tw-field-error" role="alert">
          {each.says} {each.wayOut}
        </p>
      ))}
      <div className="tw-row">
        {hasMore && (
          <Button look="quiet" aria-expanded={more} onClick={() => setMore(!more)}>
            {more ? 'Fewer fields' : 'More fields'}
          </Button>
        )}
        <Button look="quiet" onClick={onRemove}>
          Leave this out
        </Button>
      </div>
    </li>
  );
}

function isEmpty(value: unknown, path: string): boolean {
  const at = valueAt(value, path);
  return at === null || at === undefined || at === '';
}

/** A path is shown if it leads to, is, or lies below one of the first; so is everything that must be given. */
function shownPaths(spec: Spec, first: readonly string[]): (path: string) => boolean {
  const needed = new Set(requiredPaths(spec, ''));
  return (path) =>
    path === '' ||
    needed.has(path) ||
    /\.\d+(\.|$)/.test(path) ||
    first.some((each) => each === path || each.startsWith(`${path}.`) || path.startsWith(`${each}.`));
}

function requiredPaths(spec: Spec, at: string): string[] {
  if (spec.nullable || spec.kind === 'many' || spec.kind === 'list') return [];
  if (spec.kind !== 'object') return [at];
  const inner = spec.fields.flatMap((field) =>
    requiredPaths(field.spec, at === '' ? field.name : `${at}.${field.name}`),
  );
  return inner.length > 0 ? [at, ...inner] : [];
}

function hasFolded(spec: Spec, at: string, shown: (path: string) => boolean, hidden: readonly string[]): boolean {
  if (hidden.includes(at)) return false;
  if (!shown(at)) return true;
  return (
    spec.kind === 'object' &&
    spec.fields.some((field) => hasFolded(field.spec, at === '' ? field.name : `${at}.${field.name}`, shown, hidden))
  );
}
