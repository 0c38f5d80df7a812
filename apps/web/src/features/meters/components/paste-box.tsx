import { useState } from 'react';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { countWords } from '../../../ui/words.js';
import { fillIn, type Pasted } from '../paste.js';
import type { SheetRow } from '../query.js';
import type { Entries } from '../sheet.js';

export interface PasteBoxProps {
  readonly rows: readonly SheetRow[];
  /** Whether all aircraft of the house are on the sheet. */
  readonly whole: boolean;
  readonly entries: Entries;
  readonly now: string;
  readonly onFill: (entries: Entries) => void;
}

/** Takes lines of a spreadsheet and fills the sheet with them; says of each other line why not. Nothing is recorded yet. */
export function PasteBox({ rows, whole, entries, now, onFill }: PasteBoxProps) {
  const [text, setText] = useState('');
  const [done, setDone] = useState<Pasted | null>(null);
  const fill = (from: string) => {
    const pasted = fillIn(from, rows, entries, now, whole);
    onFill(pasted.entries);
    setDone(pasted);
    // What found no place stays, to be mended and tried again.
    setText(pasted.left.map((each) => each.text).join('\n'));
  };
  return (
    <details className="tw-sheet tw-paste tw-no-print">
      <summary>Paste from a spreadsheet</summary>
      <div className="tw-stack">
        <Field
          label="Lines"
          hint="Registration, meter, reading and, if you like, the date (2026-03-09, or 2026-03-09 14:05). A date alone is the end of that day at the base. Leave the meter empty for the one that stands for time in service."
        >
          <textarea
            rows={4}
            className="tw-mono"
            value={text}
            onChange={(event) => setText(event.target.value)}
            onPaste={(event) => {
              const pasted = event.clipboardData.getData('text');
              if (text.trim() !== '' || pasted.trim() === '') return;
              event.preventDefault();
              fill(pasted);
            }}
          />
        </Field>
        <div>
          <Button disabled={text.trim() === ''} onClick={() => fill(text)}>
            Fill the sheet
          </Button>
        </div>
        <div role="status">
          {done && (
            <>
              <p>
                {countWords(done.filled, 'reading')} filled in. {done.filled > 0 && 'Look at them below, then record.'}
              </p>
              {done.left.length > 0 && (
                <>
                  <p>
                    <strong>{countWords(done.left.length, 'line')} left:</strong>
                  </p>
                  <ul>
                    {done.left.map((each) => (
                      <li key={each.line}>
                        Line {each.line}, <span className="tw-mono">{each.text}</span> — {each.why}
                      </li>
                    ))}
                  </ul>
                </>
              )}
            </>
          )}
        </div>
      </div>
    </details>
  );
}
