import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import type { Typed } from '../view-model.js';
import './own-figures.css';

export interface OwnFiguresProps {
  readonly what: string;
  /** Null: the usual hours count. */
  readonly typed: Typed | null;
  /** What is saved, to be seen beside what is typed. */
  readonly inForce: Typed | null;
  readonly wrong: (name: keyof Typed) => string | undefined;
  readonly writable: boolean;
  readonly onEnter: () => void;
  readonly onChange: (next: Typed) => void;
  readonly onDrop: () => void;
}

const fields: readonly (readonly [keyof Typed, string])[] = [
  ['low', 'Low'],
  ['typical', 'Typical'],
  ['high', 'High'],
  ['parts', 'Parts'],
];

/** The house's own figures for one kind of work. */
export function OwnFigures(props: OwnFiguresProps) {
  const { what, typed, inForce, wrong, writable, onEnter, onChange, onDrop } = props;
  if (typed === null) {
    return (
      <div className="tw-row">
        {inForce && <span>In force: {inWords(inForce)}; dropped when you save.</span>}
        {writable ? (
          <Button look="quiet" onClick={onEnter} aria-label={`Enter our hours: ${what}`}>
            Enter our hours
          </Button>
        ) : (
          <span className="tw-soft">as usual</span>
        )}
      </div>
    );
  }
  if (!writable) return <span>{inWords(typed)}</span>;
  const other = inForce !== null && inWords(inForce) !== inWords(typed);
  return (
    <div role="group" aria-label={`Our hours: ${what}`}>
      <div className="tw-own-figures">
        {fields.map(([name, label]) => (
          <Field key={name} label={label} error={wrong(name)}>
            <input
              inputMode="decimal"
              value={typed[name]}
              onChange={(event) => onChange({ ...typed, [name]: event.target.value })}
            />
          </Field>
        ))}
        <Button look="quiet" onClick={onDrop} aria-label={`Back to the usual hours: ${what}`}>
          Back to the usual
        </Button>
      </div>
      {other && <p className="tw-small tw-soft">In force: {inWords(inForce)}.</p>}
    </div>
  );
}

function inWords({ low, typical, high, parts }: Typed): string {
  return `${typical} h (${low} to ${high})${parts === '' ? '' : `, parts ${parts}`}`;
}
