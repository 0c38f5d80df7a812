import type { ReactNode } from 'react';
import { Field } from './field.js';
import './filter-bar.css';

/** Filters of a list, in one row that wraps. Nothing is sent: every control acts at once. */
export function FilterBar({ label, children }: { label: string; children: ReactNode }) {
  return (
    <form className="tw-filter tw-no-print" aria-label={label} onSubmit={(event) => event.preventDefault()}>
      {children}
    </form>
  );
}

export interface PickProps {
  readonly label: string;
  readonly value: string;
  readonly onPick: (value: string) => void;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  readonly all?: string;
}

export function Pick({ label, value, onPick, options, all = 'all' }: PickProps) {
  return (
    <Field label={label}>
      <select value={value} onChange={(event) => onPick(event.target.value)}>
        <option value="">{all}</option>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.name}
          </option>
        ))}
      </select>
    </Field>
  );
}
