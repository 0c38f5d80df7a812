import { useState, type InputHTMLAttributes } from 'react';

export interface TypedInputProps extends Omit<InputHTMLAttributes<HTMLInputElement>, 'value' | 'onChange'> {
  readonly value: unknown;
  readonly show: (value: unknown) => string;
  readonly read: (text: string) => unknown;
  readonly onRead: (value: unknown) => void;
}

/** Keeps what a person types as it is typed ('12.' on the way to '12.5') while the form holds what it means. */
export function TypedInput({ value, show, read, onRead, ...rest }: TypedInputProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const shown = typed !== null && Object.is(read(typed), value) ? typed : show(value);
  return (
    <input
      {...rest}
      value={shown}
      onChange={(event) => {
        setTyped(event.target.value);
        onRead(read(event.target.value));
      }}
      onBlur={() => setTyped(null)}
    />
  );
}
