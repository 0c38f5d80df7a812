import { createContext, useContext } from 'react';
import { HouseChoices } from '../../../app/house-choices.js';
import { codeWords, recordKindWords } from '../../../trade/words.js';
import { localTimeAt } from '@tallywing/rules';
import { instantAt } from '../../../trade/time.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { labelOf, unitOf } from './labels.js';
import { hoursText, numberText, readHours, readNumber } from './numbers.js';
import type { Option } from './options.js';
import { blank, type Spec } from './spec.js';
import { TypedInput } from './typed-input.js';
import { TypePicker } from './type-picker.js';

/** What every field of a step's form needs. */
export interface FormContext {
  readonly zone: string;
  readonly set: (path: string, value: unknown) => void;
  readonly problem: (path: string) => string | null;
  readonly options: (path: string) => readonly Option[] | null;
  readonly hidden: (path: string) => boolean;
}

export const FormContextProvider = createContext<FormContext | null>(null);

function useForm(): FormContext {
  const form = useContext(FormContextProvider);
  if (!form) throw new Error('A field is used outside a form');
  return form;
}

export interface FieldViewProps {
  readonly spec: Spec;
  readonly path: string;
  readonly value: unknown;
}

/** One field, or a group of them, after its spec. */
export function FieldView(props: FieldViewProps) {
  const form = useForm();
  if (form.hidden(props.path)) return null;
  if (props.spec.kind === 'object') return <Group {...props} spec={props.spec} />;
  if (props.spec.kind === 'list') return <Rows {...props} spec={props.spec} />;
  if (props.spec.kind === 'many') return <Checks {...props} options={props.spec.values.map(codeOption)} />;
  return <Single {...props} />;
}

function codeOption(value: string): Option {
  return { value, words: codeWords(value) };
}

function Group({ spec, path, value }: FieldViewProps & { spec: Extract<Spec, { kind: 'object' }> }) {
  const form = useForm();
  const given = value !== null && value !== undefined;
  const fields = given && (
    <div className="tw-fields">
      {spec.fields.map((field) => (
        <FieldView
          key={field.name}
          spec={field.spec}
          path={path === '' ? field.name : `${path}.${field.name}`}
          value={(value as Record<string, unknown>)[field.name]}
        />
      ))}
    </div>
  );
  if (path === '') return fields;
  return (
    <fieldset className="tw-group">
      <legend>{labelOf(path)}</legend>
      {spec.nullable && (
        <label className="tw-check">
          <input
            type="checkbox"
            checked={given}
            onChange={(event) => form.set(path, event.target.checked ? blank({ ...spec, nullable: false }) : null)}
          />
          Recorded
        </label>
      )}
      <HouseChoices path={path} onPick={(choice) => form.set(path, choice)} />
      {fields}
      <Problem path={path} />
    </fieldset>
  );
}

function Rows({ spec, path, value }: FieldViewProps & { spec: Extract<Spec, { kind: 'list' }> }) {
  const form = useForm();
  const options = form.options(path);
  if (options) return <Checks spec={spec} path={path} value={value} options={options} />;
  const rows = Array.isArray(value) ? (value as unknown[]) : [];
  return (
    <fieldset className="tw-group tw-group-wide">
      <legend>{labelOf(path)}</legend>
      <ol className="tw-rows">
        {rows.map((row, index) => (
          // Rows have no identity of their own; they are only added at the end and taken out one by one.
          <li key={index}>
            <FieldView spec={spec.of} path={`${path}.${index}`} value={row} />
            <Button
              look="quiet"
              onClick={() =>
                form.set(
                  path,
                  rows.filter((_, at) => at !== index),
                )
              }
            >
              Take out row {index + 1}
            </Button>
          </li>
        ))}
      </ol>
      <Button onClick={() => form.set(path, [...rows, blank(spec.of)])}>Add a row</Button>
      <Problem path={path} />
    </fieldset>
  );
}

function Checks({ spec, path, value, options }: FieldViewProps & { options: readonly Option[] }) {
  const form = useForm();
  const ticked = Array.isArray(value) ? (value as string[]) : [];
  const unknown = spec.nullable && value === null;
  return (
    <fieldset className="tw-group tw-group-wide">
      <legend>{labelOf(path)}</legend>
      {spec.nullable && (
        <label className="tw-check">
          <input
            type="checkbox"
            checked={unknown}
            onChange={(event) => form.set(path, event.target.checked ? null : [])}
          />
          Not recorded
        </label>
      )}
      {!unknown && (
        <div className="tw-checks">
          {options.map((option) => (
            <label key={option.value} className="tw-check">
              <input
                type="checkbox"
                checked={ticked.includes(option.value)}
                onChange={(event) =>
                  form.set(
                    path,
                    event.target.checked ? [...ticked, option.value] : ticked.filter((each) => each !== option.value),
                  )
                }
              />
              {option.words}
            </label>
          ))}
          {options.length === 0 && <span className="tw-soft">There is none on this aircraft.</span>}
        </div>
      )}
      <Problem path={path} />
    </fieldset>
  );
}

/** For groups, which have no control of their own to carry the message. */
function Problem({ path }: { path: string }) {
  const problem = useForm().problem(path);
  return problem ? (
    <p className="tw-field-error" role="alert">
      {problem}
    </p>
  ) : null;
}

function Single({ spec, path, value }: FieldViewProps) {
  const form = useForm();
  const set = (next: unknown) => form.set(path, next);
  const shared = { label: labelOf(path), error: form.problem(path), optional: spec.nullable };
  const text = typeof value === 'string' ? value : '';
  /** What may stay unrecorded is null when it is emptied, never an empty text. */
  const setText = (next: string) => set(next === '' && spec.nullable ? null : next);
  const options = form.options(path);

  if (path.endsWith('typeId') && options) {
    return (
      <Field {...shared}>
        <TypePicker options={options} value={typeof value === 'string' ? value : null} onChange={set} />
      </Field>
    );
  }
  if (options || spec.kind === 'choice') {
    const words = path.endsWith('record.kind')
      ? (code: string) => ({ value: code, words: recordKindWords(code) })
      : codeOption;
    const list = options ?? (spec.kind === 'choice' ? spec.values.map(words) : []);
    return (
      <Field {...shared}>
        <Choice list={list} value={text} onChange={setText} empty={spec.nullable ? 'not recorded' : 'choose…'} />
      </Field>
    );
  }
  switch (spec.kind) {
    case 'yes-no':
      return (
        <Field {...shared}>
          <Choice
            list={yesNo}
            value={value === true ? 'yes' : value === false ? 'no' : ''}
            onChange={(next) => set(next === '' ? null : next === 'yes')}
            empty={spec.nullable ? 'not recorded' : 'choose…'}
          />
        </Field>
      );
    case 'date':
      return (
        <Field {...shared}>
          <input type="date" value={text} onChange={(event) => setText(event.target.value)} />
        </Field>
      );
    case 'instant':
      return (
        <Field {...shared} hint={`Time of ${form.zone.replace(/_/g, ' ')}`}>
          <TypedInput
            type="datetime-local"
            value={value}
            show={(at) => (typeof at === 'string' && at.endsWith('Z') ? localTimeAt(at, form.zone) : '')}
            read={(local) => instantAt(local, form.zone) ?? (spec.nullable ? null : '')}
            onRead={set}
          />
        </Field>
      );
    case 'hours':
      return (
        <Field {...shared} aside="h">
          <TypedInput inputMode="decimal" value={value} show={hoursText} read={readHours} onRead={set} />
        </Field>
      );
    case 'number':
      return (
        <Field {...shared} aside={unitOf(path)}>
          <TypedInput inputMode="decimal" value={value} show={numberText} read={readNumber} onRead={set} />
        </Field>
      );
    default:
      return (
        <Field {...shared}>
          {spec.kind === 'text' && spec.long ? (
            <textarea rows={2} value={text} onChange={(event) => setText(event.target.value)} />
          ) : (
            <input value={text} onChange={(event) => setText(event.target.value)} />
          )}
        </Field>
      );
  }
}

const yesNo: readonly Option[] = [
  { value: 'yes', words: 'Yes' },
  { value: 'no', words: 'No' },
];

interface ChoiceProps {
  readonly list: readonly Option[];
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly empty: string;
}

/** Takes the id and descriptions that `Field` gives its control. */
function Choice({ list, value, onChange, empty, ...rest }: ChoiceProps) {
  return (
    <select {...rest} value={value} onChange={(event) => onChange(event.target.value)}>
      <option value="">{empty}</option>
      {list.map((option) => (
        <option key={option.value} value={option.value}>
          {option.words}
        </option>
      ))}
    </select>
  );
}
