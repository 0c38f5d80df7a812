import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { CertificateFields, type CertificateDraft } from '../../../app/certificate-fields.js';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { AddAgencyMutation, AmendAgencyMutation, type Agency } from '../query.js';

export interface AgencyFormProps {
  readonly agency: Agency | null;
  readonly reload: () => Promise<unknown>;
  readonly onDone: () => void;
}

const shown = ['name', 'kind', 'number', 'ratings', 'heldUntil'];

/** Whoever signs work, with the ratings held and the days for which they are. */
export function AgencyForm({ agency, reload, onDone }: AgencyFormProps) {
  const [name, setName] = useState(agency?.name ?? '');
  const [held, setHeld] = useState<CertificateDraft>({
    kind: agency?.kind ?? 'REPAIR_STATION',
    number: agency?.certificate ?? '',
    ratings: agency === null ? [] : agency.ratings,
  });
  const [from, setFrom] = useState(agency?.heldFrom ?? '');
  const [until, setUntil] = useState(agency?.heldUntil ?? '');
  const [inUse, setInUse] = useState(agency?.inUse ?? true);
  const { run, busy, problem, at } = useAct();
  const [add] = useMutation(AddAgencyMutation);
  const [amend] = useMutation(AmendAgencyMutation);
  async function send() {
    if (held.kind === '') return;
    const facts = {
      kind: held.kind,
      name,
      certificate: held.number.trim() === '' ? null : held.number.trim(),
      ratings: held.ratings === null ? null : [...held.ratings],
      heldFrom: from === '' ? null : from,
      heldUntil: until === '' ? null : until,
    };
    if (agency === null) await add({ variables: { input: facts } });
    else {
      const seen = { agencyId: agency.id, expectedRevision: agency.revision };
      await amend({ variables: { input: { ...seen, ...facts, inUse } } });
    }
    await reload();
  }
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run(send, `${name.trim()} is saved.`).then((done) => {
          if (done) onDone();
        });
      }}
    >
      <Field label="Name that stands in the record" error={at('name')}>
        <input value={name} maxLength={200} onChange={(event) => setName(event.target.value)} />
      </Field>
      <CertificateFields draft={held} onChange={setHeld} at={at} />
      <div className="tw-fields">
        <Field label="Held from" optional>
          <input type="date" value={from} onChange={(event) => setFrom(event.target.value)} />
        </Field>
        <Field label="Held until" optional error={at('heldUntil')}>
          <input type="date" value={until} onChange={(event) => setUntil(event.target.value)} />
        </Field>
      </div>
      {agency !== null && (
        <label className="tw-check">
          <input type="checkbox" checked={inUse} onChange={(event) => setInUse(event.target.checked)} />
          In use: offered when work is recorded
        </label>
      )}
      <ProblemNote problem={problem} fields={shown} onReload={reload} />
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          Save the agency
        </Button>
      </div>
    </form>
  );
}
