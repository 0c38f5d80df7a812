import { useId } from 'react';
import { localTimeAt, codeWords } from '@tallywing/rules';
import { instantAt } from '../trade/time.js';
import { Field } from '../ui/field.js';
import type { FieldViewProps } from './field-view.js';
import { codeOption, labelIn, useForm, type Option } from './form-context.js';
import { unitOf } from './labels.js';
import { hoursText, readHours } from '../trade/hours.js';
import { gaugeText, numberText, readGauge, readNumber } from './numbers.js';
import { TypedInput } from './typed-input.js';
import { TypePicker } from './type-picker.js';

/** One control after its spec, with label, unit, hint and problem. */
export function SingleField({ spec, path, value }: FieldViewProps) {
  const form = useForm();
  const set = (next: unknown) => form.set(path, next);
  const shared = {
    label: labelIn(form, path),
    hint: form.hint?.(path),
    error: form.problem(path),
    optional: spec.nullable,
  };
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
      ? (code: string) => ({ value: code, words: codeWords(code) })
      : codeOption;
    const list = options ?? (spec.kind === 'choice' ? spec.values.map(words) : []);
    return (
      <Field {...shared}>
        <Choice
          list={list}
          value={text}
          onChange={setText}
          empty={spec.nullable ? form.words.notGiven.toLowerCase() : 'choose…'}
        />
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
            empty={spec.nullable ? form.words.notGiven.toLowerCase() : 'choose…'}
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
      if (path.endsWith('.wireAwg'))
        return (
          <Field {...shared} hint={shared.hint ?? '24 to 1, then 1/0 to 4/0'}>
            <TypedInput value={value} show={gaugeText} read={readGauge} onRead={set} />
          </Field>
        );
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
            <Suggested value={text} onChange={setText} list={form.suggestions?.(path) ?? []} />
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

/** A line of text, with a list of likely ones where there is one. Takes the id and descriptions as `Choice` does. */
function Suggested({ list, value, onChange, ...rest }: Omit<ChoiceProps, 'empty'>) {
  const listId = useId();
  return (
    <>
      <input
        {...rest}
        value={value}
        onChange={(event) => onChange(event.target.value)}
        {...(list.length > 0 ? { list: listId } : {})}
      />
      {list.length > 0 && (
        <datalist id={listId}>
          {list.map((option) => (
            <option key={option.value} value={option.value}>
              {option.words}
            </option>
          ))}
        </datalist>
      )}
    </>
  );
}
