import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { useRequestKey } from '../../../app/use-request-key.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';

export interface WordFormProps {
  /** The field of the request that the words go into. */
  readonly field: string;
  readonly label: string;
  readonly button: string;
  readonly said: string;
  readonly send: (words: string, key: string) => Promise<unknown>;
  readonly onDone: () => void;
}

/** An act that wants a few words; sent again after a lost answer it is done once. */
export function WordForm({ field, label, button, said, send, onDone }: WordFormProps) {
  const [words, setWords] = useState('');
  const key = useRequestKey(words);
  const { run, busy, problem, at } = useAct();
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run(() => send(words, key), said).then((done) => {
          if (done) onDone();
        });
      }}
    >
      <Field label={label} error={at(field)}>
        <input value={words} maxLength={500} onChange={(event) => setWords(event.target.value)} />
      </Field>
      <ProblemNote problem={problem} fields={[field]} />
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          {button}
        </Button>
        <Button look="quiet" onClick={onDone}>
          Leave it
        </Button>
      </div>
    </form>
  );
}
