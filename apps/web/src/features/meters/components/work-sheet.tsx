import { useApolloClient, useMutation } from '@apollo/client/react';
import { codeWords, localTimeAt } from '@tallywing/rules';
import { useRef, useState } from 'react';
import { refreshShown } from '../../../app/live/refresh.js';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { DateTimeField } from '../../../ui/date-time-field.js';
import { Field } from '../../../ui/field.js';
import { Sheet } from '../../../ui/sheet.js';
import { judgeWork, meterKinds, startWork, type WorkForm, type WorkKind } from '../meter-work.js';
import { RecordReadings, type SheetMeter, type SheetRow } from '../query.js';
import { lastDial, timeWords } from '../sheet.js';

export interface WorkSheetProps {
  readonly row: SheetRow;
  /** Null: a new meter. */
  readonly meter: SheetMeter | null;
  readonly now: string;
  readonly by: string;
  readonly onClose: () => void;
}

const titles: Readonly<Record<WorkKind, string>> = {
  replace: 'A new dial was put in',
  correct: 'The last reading was wrong',
  define: 'What the meter is',
  use: 'How much it flies, and how long a reading is good for',
  another: 'The aircraft has another meter',
};
const ofMeter: readonly WorkKind[] = ['replace', 'correct', 'define', 'use', 'another'];

/** What else can be recorded of a meter: replaced, misread, defined, and how long its readings count. */
export function WorkSheet({ row, meter, now, by, onClose }: WorkSheetProps) {
  const client = useApolloClient();
  const [commit] = useMutation(RecordReadings);
  const { run, busy, problem } = useAct();
  const [work, setWork] = useState<WorkKind>(meter === null ? 'define' : 'replace');
  const [form, setForm] = useState(() => startWork(row, meter, localTimeAt(now, row.aircraft.base.zone)));
  const [tried, setTried] = useState(false);
  // The same content keeps its key: a request whose answer was lost is then recorded once.
  const sent = useRef({ mark: '', key: '' });
  const { problems, change } = judgeWork(work, form, { row, meter, now, by });
  const name = meter?.name ?? 'a new meter';
  const type = (next: Partial<WorkForm>) => setForm((before) => ({ ...before, ...next }));
  const at = (field: keyof WorkForm) => (tried ? problems[field] : undefined);

  async function record() {
    const mark = JSON.stringify([row.revision, change]);
    if (sent.current.mark !== mark) sent.current = { mark, key: crypto.randomUUID() };
    const input = {
      aircraftId: row.aircraft.id,
      expectedRevision: row.revision,
      key: sent.current.key,
      changes: change === null ? [] : [change],
    };
    await commit({ variables: { input } });
    await refreshShown(client);
  }

  return (
    <Sheet title={`${name} of ${row.aircraft.registration}`} onClose={onClose}>
      <form
        className="tw-stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          setTried(true);
          if (change !== null)
            void run(record, `Recorded on ${row.aircraft.registration}.`).then((done) => {
              if (done) onClose();
            });
        }}
      >
        <fieldset className="tw-group">
          <legend>What is to be recorded</legend>
          <div className="tw-checks">
            {(meter === null ? (['define'] as const) : ofMeter).map((each) => (
              <label key={each} className="tw-check">
                <input
                  type="radio"
                  name="work"
                  checked={work === each}
                  onChange={() => {
                    if (each === 'another' || work === 'another')
                      setForm(startWork(row, each === 'another' ? null : meter, form.at));
                    setWork(each);
                    setTried(false);
                  }}
                />
                {titles[each]}
              </label>
            ))}
          </div>
        </fieldset>
        {meter !== null && work !== 'another' && (
          <p className="tw-soft">
            Last reading: {lastDial(meter)}
            {meter.asOf !== null && `, ${timeWords(meter.asOf, row)}`}.
          </p>
        )}
        <div className="tw-fields">
          <Fields work={work} form={form} type={type} at={at} row={row} meter={work === 'another' ? null : meter} />
        </div>
        <ProblemNote problem={problem} onReload={() => refreshShown(client)} />
        <div className="tw-row">
          <Button type="submit" look="main" busy={busy}>
            Record it
          </Button>
          {tried && change === null && <span role="alert">Nothing was recorded: mend the fields above.</span>}
        </div>
      </form>
    </Sheet>
  );
}

interface FieldsProps {
  readonly work: WorkKind;
  readonly form: WorkForm;
  readonly type: (next: Partial<WorkForm>) => void;
  readonly at: (field: keyof WorkForm) => string | undefined;
  readonly row: SheetRow;
  readonly meter: SheetMeter | null;
}

function Fields({ work, form, type, at, row, meter }: FieldsProps) {
  const text = (field: keyof WorkForm, label: string, hint?: string, numeric = true) => (
    <Field label={label} hint={hint} error={at(field)}>
      <input
        type="text"
        inputMode={numeric ? 'decimal' : 'text'}
        value={String(form[field])}
        onChange={(event) => type({ [field]: event.target.value })}
      />
    </Field>
  );
  const when = (label: string) => (
    <DateTimeField
      label={label}
      zone={row.aircraft.base.zone}
      value={form.at}
      error={at('at') ?? null}
      onChange={(local) => type({ at: local })}
    />
  );
  if (work === 'replace')
    return (
      <>
        {text('oldDial', 'The old dial showed last')}
        {text('newDial', 'The new dial shows', 'The hours go on from the old dial.')}
        {when('Replaced at')}
      </>
    );
  if (work === 'correct')
    return (
      <>
        {text('dial', 'The dial really showed')}
        {when('Read at')}
        {text('reason', 'Why', 'The mistaken reading stays among the entries, with a link to this one.', false)}
      </>
    );
  if (work === 'use')
    return (
      <>
        {text('perMonth', 'Flight hours a month', 'Empty: nobody knows.')}
        {text(
          'goodForDays',
          'A reading is good for, days',
          'Empty: as the house says. After that no limit in hours counts as met.',
        )}
      </>
    );
  return (
    <>
      {text('name', 'Name', undefined, false)}
      <Field label="Kind">
        <select value={form.kind} onChange={(event) => type({ kind: event.target.value })}>
          {meterKinds.map((kind) => (
            <option key={kind} value={kind}>
              {codeWords(kind)}
            </option>
          ))}
        </select>
      </Field>
      {text('pace', 'Moves in one flight hour', '1: the same pace; 0: it stands still in flight.')}
      <label className="tw-check">
        <input
          type="checkbox"
          checked={form.standsFor}
          disabled={meter?.timeInService === true}
          onChange={(event) => type({ standsFor: event.target.checked })}
        />
        It stands for time in service
        {meter?.timeInService && ' (until another meter is named for it)'}
      </label>
    </>
  );
}
