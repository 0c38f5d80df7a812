import { Link } from 'react-router';
import { DateTimeField } from '../../../ui/date-time-field.js';

export interface Asked {
  /** Local time at the base; '' for now. */
  readonly at: string;
  /** '' for a moment. */
  readonly entry: string;
  /** 'now' for what is known today about then. */
  readonly known: string;
}

export interface AskFormProps {
  readonly asked: Asked;
  readonly zone: string;
  readonly onAsk: (next: Partial<Asked>) => void;
}

/** Which moment, and whose knowledge: of then, or of today about then. */
export function AskForm({ asked, zone, onAsk }: AskFormProps) {
  return (
    <section aria-label="Which moment, and what was known" className="tw-sheet tw-look-ask tw-no-print">
      {asked.entry !== '' ? (
        <p>
          After entry {asked.entry} was written.{' '}
          <Link to={`?${asked.known ? 'known=now' : ''}`}>Choose a day instead</Link>
        </p>
      ) : (
        <DateTimeField
          label="As it stood on (empty: now)"
          zone={zone}
          value={asked.at}
          onChange={(at) => onAsk({ at })}
        />
      )}
      <fieldset className="tw-group">
        <legend>By what was known</legend>
        <label className="tw-check">
          <input type="radio" name="known" checked={asked.known === ''} onChange={() => onAsk({ known: '' })} />
          Then: entries written down by then. So the board answered at that time.
        </label>
        <label className="tw-check">
          <input type="radio" name="known" checked={asked.known === 'now'} onChange={() => onAsk({ known: 'now' })} />
          Now about then: entries about days until then, also those written later, each corrected as it is today.
        </label>
      </fieldset>
    </section>
  );
}
