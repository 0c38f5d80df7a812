import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { AddCalibrationMutation, type Calibration, type TestSet } from '../query.js';

const shown = ['checkedOn', 'goodUntil', 'certificate'];

/** Enters a calibration, or that the set was found out of tolerance. */
export function CheckForm({ set, reload }: { set: TestSet; reload: () => Promise<unknown> }) {
  const [checkedOn, setCheckedOn] = useState('');
  const [asFound, setAsFound] = useState<Calibration['asFound'] | ''>('');
  const [goodUntil, setGoodUntil] = useState('');
  const [certificate, setCertificate] = useState('');
  const { run, busy, problem, at } = useAct();
  const [add] = useMutation(AddCalibrationMutation);
  async function send() {
    const input = {
      testSetId: set.id,
      expectedRevision: set.revision,
      checkedOn,
      asFound: asFound === '' ? null : asFound,
      goodUntil: goodUntil === '' ? null : goodUntil,
      certificate: certificate.trim() === '' ? null : certificate,
    };
    await add({ variables: { input } });
    await reload();
  }
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run(send, `The check of ${set.serial} is entered.`).then((done) => {
          if (!done) return;
          setCheckedOn('');
          setAsFound('');
          setGoodUntil('');
          setCertificate('');
        });
      }}
    >
      <div className="tw-fields">
        <Field label="Checked on" error={at('checkedOn')}>
          <input type="date" required value={checkedOn} onChange={(event) => setCheckedOn(event.target.value)} />
        </Field>
        <Field label="Found, before any adjustment">
          <select value={asFound ?? ''} onChange={(event) => setAsFound(event.target.value as typeof asFound)}>
            <option value="">not stated</option>
            <option value="IN_TOLERANCE">in tolerance</option>
            <option value="OUT_OF_TOLERANCE">out of tolerance</option>
          </select>
        </Field>
        <Field
          label="Good until"
          hint="Leave it empty if it was found out of tolerance and not put right."
          error={at('goodUntil')}
        >
          <input type="date" value={goodUntil} onChange={(event) => setGoodUntil(event.target.value)} />
        </Field>
        <Field label="Certificate" optional error={at('certificate')}>
          <input value={certificate} maxLength={200} onChange={(event) => setCertificate(event.target.value)} />
        </Field>
      </div>
      <ProblemNote problem={problem} fields={shown} onReload={reload} />
      <div className="tw-row">
        <Button type="submit" busy={busy} disabled={checkedOn === ''}>
          Enter the check
        </Button>
      </div>
    </form>
  );
}
