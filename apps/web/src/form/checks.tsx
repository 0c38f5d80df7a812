import { labelIn, useForm, type Option } from './form-context.js';
import { GroupProblem } from './group-problem.js';
import type { FieldViewProps } from './field-view.js';

/** Any number of a list, each with its box. */
export function Checks({ spec, path, value, options }: FieldViewProps & { options: readonly Option[] }) {
  const form = useForm();
  const ticked = Array.isArray(value) ? (value as string[]) : [];
  const unknown = spec.nullable && value === null;
  return (
    <fieldset className="tw-group tw-group-wide">
      <legend>{labelIn(form, path)}</legend>
      {spec.nullable && (
        <label className="tw-check">
          <input
            type="checkbox"
            checked={unknown}
            onChange={(event) => form.set(path, event.target.checked ? null : [])}
          />
          {form.words.notGiven}
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
          {options.length === 0 && <span className="tw-soft">{form.words.noOptions}</span>}
        </div>
      )}
      <GroupProblem path={path} />
    </fieldset>
  );
}
