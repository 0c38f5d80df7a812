import { useId } from 'react';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import type { SheetMeter, SheetRow } from '../query.js';
import { timeWords, type Entry, type Judged } from '../sheet.js';

export interface DialCellProps {
  readonly row: SheetRow;
  readonly meter: SheetMeter;
  readonly entry: Entry;
  readonly judged: Judged;
  readonly onType: (change: Partial<Entry>) => void;
  /** It is lower because a new dial was put in. */
  readonly onReplaced: () => void;
}

/** The place for one new reading, and under it what is wrong with it or what is asked about it. */
export function DialCell({ row, meter, entry, judged, onType, onReplaced }: DialCellProps) {
  const id = useId();
  const asked = judged.questions.length > 0;
  const name = `${meter.name} of ${row.aircraft.registration}`;
  return (
    <div className="tw-dial" data-open={judged.problem !== null || (asked && judged.change === null)}>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        className="tw-mono"
        aria-label={`The dial shows, ${name}`}
        aria-describedby={`${id}note`}
        aria-invalid={judged.problem !== null || undefined}
        data-dial={row.aircraft.id}
        value={entry.dial}
        onChange={(event) => onType({ dial: event.target.value })}
      />
      {entry.asOf !== null && entry.dial !== '' && (
        <span className="tw-soft">
          read {timeWords(entry.asOf, row)}{' '}
          <Button look="quiet" onClick={() => onType({ asOf: null })}>
            Use the time of the sheet
          </Button>
        </span>
      )}
      <p
        id={`${id}note`}
        className="tw-dial-note"
        data-kind={judged.problem === null ? 'asked' : 'wrong'}
        aria-live="polite"
      >
        {judged.problem ?? (asked ? `Is that right? ${judged.questions.join(' ')}` : '')}
      </p>
      {asked && (
        <div className="tw-dial-answer">
          {judged.lower && (
            <>
              <Field label="Why is it lower?" hint="It is recorded as a correction, with this reason.">
                <input type="text" value={entry.reason} onChange={(event) => onType({ reason: event.target.value })} />
              </Field>
              <Button look="quiet" onClick={onReplaced}>
                The meter was replaced: record that
              </Button>
            </>
          )}
          <label className="tw-check">
            <input type="checkbox" checked={entry.sure} onChange={(event) => onType({ sure: event.target.checked })} />
            Yes, {entry.dial.trim()} is right
          </label>
        </div>
      )}
    </div>
  );
}
