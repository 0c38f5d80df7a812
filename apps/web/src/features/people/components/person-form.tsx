import { idWords } from '@tallywing/rules';
import { useState } from 'react';
import { CertificateFields } from '../../../app/certificate-fields.js';
import { useHouse } from '../../../app/house.js';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { draftOf, factsOf, roleNames, type PersonDraft } from '../person-draft.js';
import type { Person } from '../query.js';

export interface PersonFormProps {
  /** null: somebody new, with an address and a first password. */
  readonly person: Person | null;
  readonly send: (facts: ReturnType<typeof factsOf>, draft: PersonDraft) => Promise<unknown>;
  readonly onDone: () => void;
  readonly onReload?: () => unknown;
}

const shown = [
  'email',
  'password',
  'name',
  'role',
  'operatorId',
  'certificate.kind',
  'certificate.number',
  'certificate.ratings',
];

/** Name, role, operator and certificate of one person. */
export function PersonForm({ person, send, onDone, onReload = () => undefined }: PersonFormProps) {
  const { operators } = useHouse();
  const [draft, setDraft] = useState(() => draftOf(person));
  const { run, busy, problem, at } = useAct();
  const set = (next: Partial<PersonDraft>) => setDraft({ ...draft, ...next });
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        const said = person === null ? `${draft.name.trim()} is added.` : `${draft.name.trim()} is saved.`;
        void run(() => send(factsOf(draft), draft), said).then((done) => {
          if (done) onDone();
        });
      }}
    >
      <div className="tw-fields">
        <Field label="Name" error={at('name')}>
          <input value={draft.name} maxLength={200} onChange={(event) => set({ name: event.target.value })} />
        </Field>
        {person === null && (
          <>
            <Field label="E-mail" error={at('email')}>
              <input
                type="email"
                autoComplete="off"
                value={draft.email}
                onChange={(event) => set({ email: event.target.value })}
              />
            </Field>
            <Field label="First password" hint="Ten characters or more." error={at('password')}>
              <input
                type="password"
                autoComplete="new-password"
                value={draft.password}
                onChange={(event) => set({ password: event.target.value })}
              />
            </Field>
          </>
        )}
        <Field label="Role" error={at('role')}>
          <select value={draft.role} onChange={(event) => set({ role: event.target.value as PersonDraft['role'] })}>
            {roleNames.map((role) => (
              <option key={role} value={role}>
                {idWords(role)}
              </option>
            ))}
          </select>
        </Field>
        {draft.role === 'DISPATCHER' && (
          <Field label="Works for" hint="One operator: sees only its aircraft." error={at('operatorId')}>
            <select value={draft.operatorId} onChange={(event) => set({ operatorId: event.target.value })}>
              <option value="">the whole house</option>
              {operators.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </Field>
        )}
      </div>
      <CertificateFields
        draft={draft.certificate}
        none="none recorded"
        prefix="certificate."
        at={at}
        onChange={(certificate) => set({ certificate })}
      />
      <ProblemNote problem={problem} fields={shown} onReload={onReload} />
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          {person === null ? 'Add this person' : 'Save'}
        </Button>
      </div>
    </form>
  );
}
