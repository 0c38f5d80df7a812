import { useMutation } from '@apollo/client/react';
import { localTimeAt } from '@tallywing/rules';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { useRequestKey } from '../../../app/use-request-key.js';
import type { Names } from '@tallywing/rules';
import { resultWords } from '../../../trade/words.js';
import { clockNow, instantAt } from '../../../trade/time.js';
import { Button } from '../../../ui/button.js';
import { Checks } from '../../../ui/checks.js';
import { DateTimeField } from '../../../ui/date-time-field.js';
import { Field } from '../../../ui/field.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { AircraftQuery, EndSaySoMutation, GiveSaySoMutation, type AircraftAnswer } from '../query.js';

const reread = { refetchQueries: [AircraftQuery], awaitRefetchQueries: true };

export interface SaySoProps {
  readonly aircraft: AircraftAnswer;
  readonly when: (instant: string) => string;
}

/** What rests on a source that the house doubts, who has answered for it, and answering for it. */
export function SaySo({ aircraft, when }: SaySoProps) {
  const { wantsSaySo: wanted, sayings } = aircraft;
  const given = sayings.filter((each) => each.open);
  if (wanted.length === 0 && given.length === 0) return null;
  return (
    <section className="tw-sheet tw-stack" aria-label="Say-so for doubted sources">
      {wanted.length > 0 && (
        <>
          <p>
            <StatusMark status="say-so" />
          </p>
          <ul>
            {wanted.map(({ result, text }) => (
              <li key={result}>{text}</li>
            ))}
          </ul>
          {wanted.some(({ mayGive }) => mayGive) ? (
            <GiveForm aircraft={aircraft} />
          ) : (
            <p className="tw-soft">The house’s policy names other roles to give it.</p>
          )}
        </>
      )}
      {given.map((each) => (
        <Given key={each.id} aircraft={aircraft} given={each} when={when} />
      ))}
    </section>
  );
}

function GiveForm({ aircraft }: { aircraft: AircraftAnswer }) {
  const { zone } = aircraft.base;
  const [left, setLeft] = useState<readonly string[]>([]);
  const [reason, setReason] = useState('');
  const [until, setUntil] = useState(() => endOfDay(zone));
  const { run, busy, problem, at } = useAct();
  const [give] = useMutation(GiveSaySoMutation, reread);
  const results = aircraft.wantsSaySo.map(({ result }) => result).filter((each) => !left.includes(each));
  const asked = { aircraftId: aircraft.id, results, reason, until: instantAt(until, zone) ?? '' };
  const key = useRequestKey(asked);
  return (
    <form
      className="tw-stack tw-no-print"
      onSubmit={(event) => {
        event.preventDefault();
        void run(() => give({ variables: { input: { ...asked, key } } }), 'The say-so is recorded.');
      }}
    >
      <Checks
        legend="I answer for"
        options={aircraft.wantsSaySo.map(({ result }) => ({
          id: result,
          name: resultWords(result, aircraft.names as Names),
        }))}
        ticked={results}
        onTick={(ticked) =>
          setLeft(aircraft.wantsSaySo.map(({ result }) => result).filter((each) => !ticked?.includes(each)))
        }
        error={at('results')}
      />
      <div className="tw-fields">
        <Field label="On what grounds" error={at('reason')}>
          <input value={reason} maxLength={500} onChange={(event) => setReason(event.target.value)} />
        </Field>
        <DateTimeField label="Until" zone={zone} value={until} onChange={setUntil} error={at('until')} />
      </div>
      <ProblemNote problem={problem} fields={['reason', 'until', 'results']} />
      <div className="tw-row">
        <Button type="submit" busy={busy}>
          Say so
        </Button>
      </div>
    </form>
  );
}

function Given(props: SaySoProps & { given: AircraftAnswer['sayings'][number] }) {
  const { aircraft, given, when } = props;
  const names = aircraft.names as Names;
  const [reason, setReason] = useState<string | null>(null);
  const key = useRequestKey(reason);
  const { run, busy, problem, at } = useAct();
  const [end] = useMutation(EndSaySoMutation, reread);
  return (
    <div className="tw-stack">
      <p>
        {given.by} answers for {resultWords(given.result, names)} until {when(given.until)}: {given.reason}{' '}
        {reason === null && (
          <Button look="quiet" onClick={() => setReason('')}>
            Take it back
          </Button>
        )}
      </p>
      {reason !== null && (
        <form
          className="tw-row tw-no-print"
          onSubmit={(event) => {
            event.preventDefault();
            const input = { aircraftId: aircraft.id, saySoId: given.id, reason, key };
            void run(() => end({ variables: { input } }), 'It is taken back.');
          }}
        >
          <Field label="Why" error={at('reason')}>
            <input value={reason} maxLength={500} onChange={(event) => setReason(event.target.value)} />
          </Field>
          <Button type="submit" busy={busy}>
            Take it back
          </Button>
          <ProblemNote problem={problem} fields={['reason']} />
        </form>
      )}
    </div>
  );
}

/** A say-so for today is what a person usually means. */
function endOfDay(zone: string): string {
  return `${localTimeAt(clockNow(), zone).slice(0, 10)}T23:59`;
}
