import { useMutation } from '@apollo/client/react';
import { zoneNames } from '@tallywing/rules';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import type { Column } from '../../../ui/table.js';
import { countWords } from '../../../ui/words.js';
import { AddBaseMutation, AmendBaseMutation, type Base } from '../query.js';
import { HouseList } from './house-list.js';

export interface BasesProps {
  readonly bases: readonly Base[];
  readonly mayWrite: boolean;
  readonly reload: () => Promise<unknown>;
}

/** Where aircraft live, each with the zone that its calendar is kept in. */
export function Bases({ bases, mayWrite, reload }: BasesProps) {
  return (
    <HouseList
      id="bases"
      title="Bases"
      about="This list is for choosing and for showing times. An aircraft’s days end by the zone in its own record: a base renamed or given another zone here rewrites no record and changes no verdict. To move an aircraft’s calendar, record “Facts of the aircraft” on that aircraft, with the new base."
      rows={bases}
      columns={columns}
      one="base"
      change="Change"
      mayWrite={mayWrite}
      form={(base, close) => <BaseForm base={base} reload={reload} onDone={close} />}
    />
  );
}

function BaseForm(props: { base: Base | null; reload: () => Promise<unknown>; onDone: () => void }) {
  const { base, reload, onDone } = props;
  const [name, setName] = useState(base?.name ?? '');
  const [zone, setZone] = useState(base?.zone ?? '');
  const { run, busy, problem, at } = useAct();
  const [add] = useMutation(AddBaseMutation);
  const [amend] = useMutation(AmendBaseMutation);
  async function send() {
    const facts = { name, zone: zone.trim().replace(/ /g, '_') };
    if (base === null) await add({ variables: facts });
    else await amend({ variables: { input: { baseId: base.id, expectedRevision: base.revision, ...facts } } });
    await reload();
  }
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run(send, `The base ${name.trim()} is saved.`).then((done) => {
          if (done) onDone();
        });
      }}
    >
      <div className="tw-fields">
        <Field label="Name of the base" error={at('name')}>
          <input value={name} maxLength={200} onChange={(event) => setName(event.target.value)} />
        </Field>
        <Field label="Time zone" hint="By its name, such as America/Chicago." error={at('zone')}>
          <input list="zones" value={zone} onChange={(event) => setZone(event.target.value)} />
        </Field>
        <datalist id="zones">
          {zoneNames.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      </div>
      <ProblemNote problem={problem} fields={['name', 'zone']} onReload={reload} />
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          Save the base
        </Button>
      </div>
    </form>
  );
}

const columns: readonly Column<Base>[] = [
  { key: 'name', head: 'Base', rowHead: true, sort: ({ name }) => name, cell: ({ name }) => name },
  { key: 'zone', head: 'Zone', sort: ({ zone }) => zone, cell: ({ zone }) => zone.replace(/_/g, ' ') },
  {
    key: 'aircraft',
    head: 'Aircraft',
    sort: ({ aircraft }) => aircraft,
    cell: ({ aircraft, otherZone }) =>
      otherZone === 0
        ? countWords(aircraft, 'aircraft', 'aircraft')
        : `${countWords(aircraft, 'aircraft', 'aircraft')}, ${otherZone} with another zone in the record`,
  },
];
