import { useId, type ReactElement, type ReactNode, cloneElement } from 'react';
import './field.css';

interface ControlProps {
  id?: string;
  'aria-describedby'?: string | undefined;
  'aria-invalid'?: boolean | undefined;
}

export interface FieldProps {
  readonly label: string;
  readonly children: ReactElement<ControlProps>;
  readonly hint?: ReactNode;
  /** What is wrong and the way out; announced when it appears and tied to the control. */
  readonly error?: string | null | undefined;
  /** Judgement or unit beside the control. */
  readonly aside?: ReactNode;
  readonly optional?: boolean;
}

/** Label, one control, hint and error, tied together for assistive technology. */
export function Field({ label, children, hint, error, aside, optional }: FieldProps) {
  const id = useId();
  const described = [hint ? `${id}h` : '', error ? `${id}e` : ''].filter(Boolean).join(' ');
  return (
    <div className="tw-field" data-error={error ? true : undefined}>
      <label htmlFor={id}>
        {label}
        {optional && <span className="tw-field-optional"> (may stay empty)</span>}
      </label>
      <div className="tw-field-line">
        {cloneElement(children, {
          id,
          'aria-describedby': described || undefined,
          'aria-invalid': error ? true : undefined,
        })}
        {aside}
      </div>
      {hint && (
        <p id={`${id}h`} className="tw-field-hint">
          {hint}
        </p>
      )}
      <p id={`${id}e`} className="tw-field-error" aria-live="polite">
        {error}
      </p>
    </div>
  );
}
