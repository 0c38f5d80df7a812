import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import type { Column } from '../../../ui/table.js';
import { AddOperatorMutation, RenameOperatorMutation, type Operator } from '../query.js';
import { HouseList } from './house-list.js';

export interface OperatorsProps {
  readonly operators: readonly Operator[];
  readonly mayWrite: boolean;
  readonly reload: () => Promise<unknown>;
}

/** Who runs the aircraft. */
export function Operators({ operators, mayWrite, reload }: OperatorsProps) {
  return (
    <HouseList
      id="operators"
      title="Operators"
      rows={operators}
      columns={columns}
      one="operator"
      change="Rename"
      mayWrite={mayWrite}
      form={(operator, close) => <OperatorForm operator={operator} reload={reload} onDone={close} />}
    />
  );
}

function OperatorForm(props: { operator: Operator | null; reload: () => Promise<unknown>; onDone: () => void }) {
  const { operator, reload, onDone } = props;
  const [name, setName] = useState(operator?.name ?? '');
  const { run, busy, problem, at } = useAct();
  const [add] = useMutation(AddOperatorMutation);
  const [rename] = useMutation(RenameOperatorMutation);
  async function send() {
    if (operator === null) await add({ variables: { name } });
    else {
      const input = { operatorId: operator.id, expectedRevision: operator.revision, name };
      await rename({ variables: { input } });
    }
    await reload();
  }
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run(send, `The operator ${name.trim()} is saved.`).then((done) => {
          if (done) onDone();
        });
      }}
    >
      <Field label="Name of the operator" error={at('name')}>
        <input value={name} maxLength={200} onChange={(event) => setName(event.target.value)} />
      </Field>
      <ProblemNote problem={problem} fields={['name']} onReload={reload} />
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          Save the operator
        </Button>
      </div>
    </form>
  );
}

const columns: readonly Column<Operator>[] = [
  { key: 'name', head: 'Operator', rowHead: true, sort: ({ name }) => name, cell: ({ name }) => name },
  {
    key: 'aircraft',
    head: 'Aircraft',
    align: 'end',
    sort: ({ aircraft }) => aircraft,
    cell: ({ aircraft }) => aircraft,
  },
];
