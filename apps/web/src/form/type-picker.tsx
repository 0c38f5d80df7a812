import { ComboBox } from 'react-aria-components/ComboBox';
import { Input } from 'react-aria-components/Input';
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox';
import { Popover } from 'react-aria-components/Popover';
import type { Option } from './form-context.js';
import './type-picker.css';

export interface TypePickerProps {
  readonly options: readonly Option[];
  readonly value: string | null;
  readonly onChange: (value: string | null) => void;
  readonly id?: string;
  readonly 'aria-describedby'?: string | undefined;
  readonly 'aria-invalid'?: boolean | undefined;
}

/** Finds an equipment type by a few letters of maker, name or part number: a catalogue is too long for a plain list. */
export function TypePicker({ options, value, onChange, id, ...aria }: TypePickerProps) {
  return (
    <ComboBox
      className="tw-type-picker"
      aria-label="Equipment type"
      defaultItems={options.map((option) => ({ id: option.value, words: option.words }))}
      {...(id ? { id } : {})}
      selectedKey={value}
      onSelectionChange={(key) => onChange(key === null ? null : String(key))}
      menuTrigger="focus"
    >
      <Input placeholder="type a few letters" {...(aria['aria-invalid'] ? { 'aria-invalid': true } : {})} />
      <Popover className="tw-type-popover">
        <ListBox className="tw-type-list">
          {(item: { id: string; words: string }) => (
            <ListBoxItem id={item.id} textValue={item.words} className="tw-type-item">
              {item.words}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
