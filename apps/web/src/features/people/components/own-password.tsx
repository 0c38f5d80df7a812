import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { ChangeMyPasswordMutation } from '../query.js';

/** One's own password; whoever else is signed in with the old one is out. */
export function OwnPassword({ onChanged }: { readonly onChanged: () => Promise<unknown> }) {
  const [draft, setDraft] = useState({ current: '', next: '' });
  const { run, busy, problem, at } = useAct();
  const [send] = useMutation(ChangeMyPasswordMutation);
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run(async () => {
          await send({ variables: { input: draft } });
          await onChanged();
        }, 'Your password is changed; you are signed in nowhere else.').then((done) => {
          if (done) setDraft({ current: '', next: '' });
        });
      }}
    >
      <div className="tw-fields">
        <Field label="Password now" error={at('current')}>
          <input
            type="password"
            autoComplete="current-password"
            value={draft.current}
            onChange={(event) => setDraft({ ...draft, current: event.target.value })}
          />
        </Field>
        <Field label="New password" hint="Ten characters or more." error={at('next')}>
          <input
            type="password"
            autoComplete="new-password"
            value={draft.next}
            onChange={(event) => setDraft({ ...draft, next: event.target.value })}
          />
        </Field>
      </div>
      <ProblemNote problem={problem} fields={['current', 'next']} />
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          Change my password
        </Button>
      </div>
    </form>
  );
}
