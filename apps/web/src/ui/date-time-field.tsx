import { Field } from './field.js';

export interface DateTimeFieldProps {
  readonly label: string;
  /** Local time of the named zone, 'YYYY-MM-DDTHH:MM'; empty while the person is typing. */
  readonly value: string;
  readonly onChange: (local: string) => void;
  readonly zone: string;
  readonly error?: string | null;
}

/** A date and time that always names its zone: the browser's own zone is never meant. */
export function DateTimeField({ label, value, onChange, zone, error }: DateTimeFieldProps) {
  return (
    <Field label={label} hint={`Time of ${zone.replace(/_/g, ' ')}`} error={error}>
      <input type="datetime-local" value={value} onChange={(event) => onChange(event.target.value)} step={60} />
    </Field>
  );
}
