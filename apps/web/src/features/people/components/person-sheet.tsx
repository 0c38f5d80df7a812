import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { Sheet } from '../../../ui/sheet.js';
import {
  AmendPersonMutation,
  DeactivatePersonMutation,
  EndSessionsOfMutation,
  ReactivatePersonMutation,
  SetPasswordMutation,
  type Person,
  type Session,
} from '../query.js';
import { PersonForm } from './person-form.js';
import { SessionList } from './session-list.js';

export interface PersonSheetProps {
  readonly person: Person;
  readonly sessions: readonly Session[];
  readonly zone: string;
  /** Reads people and sessions again. */
  readonly reload: () => Promise<unknown>;
  readonly onClose: () => void;
}

/** Everything a manager does about one person. */
export function PersonSheet({ person, sessions, zone, reload, onClose }: PersonSheetProps) {
  const [amend] = useMutation(AmendPersonMutation);
  const seen = { personId: person.id, expectedRevision: person.revision };
  return (
    <Sheet title={person.name} onClose={onClose}>
      <p className="tw-soft">{person.email}</p>
      {/* A new revision starts the form anew from what is stored. */}
      <PersonForm
        key={`${person.id} ${person.revision}`}
        person={person}
        send={async (facts) => {
          await amend({ variables: { input: { ...seen, ...facts } } });
          await reload();
        }}
        onDone={onClose}
        onReload={reload}
      />
      <h3>Password</h3>
      <PasswordForm person={person} reload={reload} />
      <h3>Signed in</h3>
      <SessionList caption={`Sessions of ${person.name}`} sessions={sessions} zone={zone} onEnded={reload} />
      <ActiveButtons person={person} open={sessions.length} reload={reload} />
    </Sheet>
  );
}

type Part = Pick<PersonSheetProps, 'person' | 'reload'>;

function PasswordForm({ person, reload }: Part) {
  const [password, setPassword] = useState('');
  const { run, busy, problem, at } = useAct();
  const [send] = useMutation(SetPasswordMutation);
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run(async () => {
          const input = { personId: person.id, expectedRevision: person.revision, password };
          await send({ variables: { input } });
          await reload();
        }, `${person.name} has a new password and is signed out everywhere.`).then((done) => {
          if (done) setPassword('');
        });
      }}
    >
      <Field
        label="New password"
        hint="Ten characters or more. It signs the person out everywhere."
        error={at('password')}
      >
        <input
          type="password"
          autoComplete="new-password"
          value={password}
          onChange={(event) => setPassword(event.target.value)}
        />
      </Field>
      <ProblemNote problem={problem} fields={['password']} onReload={reload} />
      <div className="tw-row">
        <Button type="submit" busy={busy} disabled={password === ''}>
          Set the new password
        </Button>
      </div>
    </form>
  );
}

function ActiveButtons({ person, open, reload }: Part & { readonly open: number }) {
  const { run, busy, problem } = useAct();
  const [deactivate] = useMutation(DeactivatePersonMutation);
  const [reactivate] = useMutation(ReactivatePersonMutation);
  const [endAll] = useMutation(EndSessionsOfMutation);
  const input = { personId: person.id, expectedRevision: person.revision };
  const act = (work: () => Promise<unknown>, said: string) =>
    void run(async () => {
      await work();
      await reload();
    }, said);
  return (
    <>
      <ProblemNote problem={problem} onReload={reload} />
      <div className="tw-row">
        {open > 0 && (
          <Button
            busy={busy}
            onClick={() =>
              act(() => endAll({ variables: { personId: person.id } }), `${person.name} is signed out everywhere.`)
            }
          >
            End every session
          </Button>
        )}
        {person.active ? (
          <Button
            look="stop"
            busy={busy}
            onClick={() => act(() => deactivate({ variables: { input } }), `${person.name} can no longer sign in.`)}
          >
            Deactivate
          </Button>
        ) : (
          <Button
            busy={busy}
            onClick={() => act(() => reactivate({ variables: { input } }), `${person.name} can sign in again.`)}
          >
            Let in again
          </Button>
        )}
      </div>
    </>
  );
}
