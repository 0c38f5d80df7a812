import { useState, type ReactNode } from 'react';
import { Button } from '../ui/button.js';
import { Checks } from './checks.js';
import { codeOption, labelIn, useForm } from './form-context.js';
import { GroupProblem } from './group-problem.js';
import { SingleField } from './single-field.js';
import { blank, specBeside, type Spec } from './spec.js';
import './form.css';

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
  if (props.spec.kind === 'many')
    return <Checks {...props} options={form.options(props.path) ?? props.spec.values.map(codeOption)} />;
  return <SingleField {...props} />;
}

function Group({ spec, path, value }: FieldViewProps & { spec: Extract<Spec, { kind: 'object' }> }) {
  const form = useForm();
  const given = value !== null && value !== undefined;
  const fields = given && (
    <div className="tw-fields">
      {spec.fields.map(({ name, spec: own }) => {
        const values = value as Record<string, unknown>;
        const beside = specBeside(own, values);
        return (
          <FieldView
            // Another kind of field begins anew: what was typed as months is no text of hours.
            key={`${name} ${beside.kind}`}
            spec={beside}
            path={path === '' ? name : `${path}.${name}`}
            value={values[name]}
          />
        );
      })}
    </div>
  );
  if (path === '') return fields;
  return (
    <fieldset className="tw-group">
      <legend>{labelIn(form, path)}</legend>
      {spec.nullable && (
        <label className="tw-check">
          <input
            type="checkbox"
            checked={given}
            onChange={(event) => form.set(path, event.target.checked ? blank({ ...spec, nullable: false }) : null)}
          />
          {form.words.given}
        </label>
      )}
      {form.above?.(path)}
      {fields}
      <GroupProblem path={path} />
    </fieldset>
  );
}

function Rows({ spec, path, value }: FieldViewProps & { spec: Extract<Spec, { kind: 'list' }> }) {
  const form = useForm();
  const options = form.options(path);
  const rows = Array.isArray(value) ? (value as unknown[]) : [];
  // What is added now is there to be filled in.
  const [before] = useState(rows.length);
  if (options) return <Checks spec={spec} path={path} value={value} options={options} />;
  return (
    <fieldset className="tw-group tw-group-wide">
      <legend>{labelIn(form, path)}</legend>
      <ol className="tw-rows">
        {rows.map((row, index) => (
          // Rows have no identity of their own; they are only added at the end and taken out one by one.
          <li key={index}>
            <Row path={`${path}.${index}`} startsOpen={index >= before}>
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
            </Row>
          </li>
        ))}
      </ol>
      <Button onClick={() => form.set(path, [...rows, blank(spec.of)])}>Add a row</Button>
      <GroupProblem path={path} />
    </fieldset>
  );
}

/** One row, folded where the form has words for it. */
function Row({ path, startsOpen, children }: { path: string; startsOpen: boolean; children: ReactNode }) {
  const form = useForm();
  const [open, setOpen] = useState(startsOpen);
  const words = form.rowWords?.(path) ?? null;
  if (words === null) return children;
  return (
    <details
      className="tw-row-fold"
      open={open || form.troubled?.(path)}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{words}</summary>
      {children}
    </details>
  );
}
