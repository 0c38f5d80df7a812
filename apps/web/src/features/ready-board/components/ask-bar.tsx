import { clockNow } from '../../../trade/time.js';
import { Button } from '../../../ui/button.js';
import { DateTimeField } from '../../../ui/date-time-field.js';
import { Field } from '../../../ui/field.js';
import { hoursOf, soon, type Asked } from '../asked.js';
import type { Around } from '../query.js';

export interface AskBarProps {
  readonly asked: Asked;
  readonly onAsk: (next: Partial<Asked>) => void;
  readonly zone: string;
  readonly lists: Pick<Around, 'profiles' | 'operators' | 'bases'> | undefined;
}

/** The question: when, for how long, which flight, whose aircraft, where. */
export function AskBar({ asked, onAsk, zone, lists }: AskBarProps) {
  const hours = hoursOf(asked.hours);
  return (
    <form
      className="tw-ask tw-no-print"
      onSubmit={(event) => event.preventDefault()}
      aria-label="What the board is asked"
    >
      <div className="tw-ask-when">
        <DateTimeField label="Date and time" value={asked.at} zone={zone} onChange={(at) => onAsk({ at })} />
        {asked.at === '' ? (
          <Button onClick={() => onAsk({ at: soon(clockNow(), zone) })}>Another time</Button>
        ) : (
          <Button onClick={() => onAsk({ at: '' })}>Now</Button>
        )}
      </div>
      <Field
        label="Flight hours from the last reading"
        error={Number.isNaN(hours) ? 'Type hours with at most two decimals, such as 2.5.' : null}
      >
        <input
          inputMode="decimal"
          value={asked.hours}
          placeholder="0"
          onChange={(event) => onAsk({ hours: event.target.value })}
        />
      </Field>
      <Field label="Flight profile">
        <select value={asked.profile} onChange={(event) => onAsk({ profile: event.target.value, ready: '' })}>
          <option value="">all</option>
          {lists?.profiles.map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
        </select>
      </Field>
      {asked.profile !== '' && (
        <Field label="Answer">
          <select value={asked.ready} onChange={(event) => onAsk({ ready: event.target.value })}>
            <option value="">any</option>
            <option value="yes">yes</option>
            <option value="no">no</option>
            <option value="cannot-tell">cannot tell</option>
          </select>
        </Field>
      )}
      <Field label="Operator">
        <select value={asked.operator} onChange={(event) => onAsk({ operator: event.target.value })}>
          <option value="">all</option>
          {lists?.operators.map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
        </select>
      </Field>
      <Field label="Base">
        <select value={asked.base} onChange={(event) => onAsk({ base: event.target.value })}>
          <option value="">all</option>
          {lists?.bases.map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
        </select>
      </Field>
      <Field label="Registration, make or model">
        <input type="search" value={asked.text} onChange={(event) => onAsk({ text: event.target.value })} />
      </Field>
    </form>
  );
}
