import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { AddTestSetMutation, AmendTestSetMutation, type TestSet } from '../query.js';

export interface SetFormProps {
  readonly set: TestSet | null;
  readonly reload: () => Promise<unknown>;
  readonly onDone: () => void;
}

/** What a test set is, by the serial that entries name. */
export function SetForm({ set, reload, onDone }: SetFormProps) {
  const [name, setName] = useState(set?.name ?? '');
  const [serial, setSerial] = useState(set?.serial ?? '');
  const [inUse, setInUse] = useState(set?.inUse ?? true);
  const { run, busy, problem, at } = useAct();
  const [add] = useMutation(AddTestSetMutation);
  const [amend] = useMutation(AmendTestSetMutation);
  async function send() {
    if (set === null) await add({ variables: { serial, name } });
    else {
      const input = { testSetId: set.id, expectedRevision: set.revision, serial, name, inUse };
      await amend({ variables: { input } });
    }
    await reload();
  }
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run(send, `The test set ${serial.trim()} is saved.`).then((done) => {
          if (done) onDone();
        });
      }}
    >
      <div className="tw-fields">
        <Field label="What it is" error={at('name')}>
          <input value={name} maxLength={200} onChange={(event) => setName(event.target.value)} />
        </Field>
        <Field label="Serial number" hint="As entries name it." error={at('serial')}>
          <input value={serial} maxLength={200} onChange={(event) => setSerial(event.target.value)} />
        </Field>
      </div>
      {set !== null && (
        <label className="tw-check">
          <input type="checkbox" checked={inUse} onChange={(event) => setInUse(event.target.checked)} />
          In use: offered when work is recorded
        </label>
      )}
      <ProblemNote problem={problem} fields={['name', 'serial']} onReload={reload} />
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          Save the test set
        </Button>
      </div>
    </form>
  );
}
