import './field.css';

export interface ChecksProps {
  readonly legend: string;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  /** null: not recorded, which only `unknown` offers. */
  readonly ticked: readonly string[] | null;
  readonly onTick: (ticked: readonly string[] | null) => void;
  /** Words for "nobody recorded it"; left out where the answer is always known. */
  readonly unknown?: string;
  readonly error?: string | null;
}

/** Any number of a short list. */
export function Checks({ legend, options, ticked, onTick, unknown, error }: ChecksProps) {
  return (
    <fieldset className="tw-group">
      <legend>{legend}</legend>
      {unknown !== undefined && (
        <label className="tw-check">
          <input
            type="checkbox"
            checked={ticked === null}
            onChange={(event) => onTick(event.target.checked ? null : [])}
          />
          {unknown}
        </label>
      )}
      {ticked !== null && (
        <div className="tw-checks">
          {options.map(({ id, name }) => (
            <label key={id} className="tw-check">
              <input
                type="checkbox"
                checked={ticked.includes(id)}
                onChange={(event) =>
                  onTick(event.target.checked ? [...ticked, id] : ticked.filter((each) => each !== id))
                }
              />
              {name}
            </label>
          ))}
        </div>
      )}
      {error && (
        <p className="tw-field-error" role="alert">
          {error}
        </p>
      )}
    </fieldset>
  );
}
