import { useState } from 'react';
import type { Problem } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { Button } from '../../ui/button.js';
import { Caution } from '../../ui/caution.js';
import { Field } from '../../ui/field.js';
import { Trouble } from '../../ui/states.js';
import { countWords } from '../../ui/words.js';
import { Format } from './components/format.js';
import { Outcome } from './components/outcome.js';
import { WriteOut } from './components/write-out.js';
import { sendFiles } from './send.js';

/** Files in: a dry run first, every bad row named and every difference decided; then aircraft by aircraft, each whole. */
export function ImportScreen() {
  const { viewer } = useSession();
  const [files, setFiles] = useState<readonly File[]>([]);
  const [running, setRunning] = useState<string | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [sending, setSending] = useState(false);

  async function send(mode: 'dry-run' | 'load', differences = '') {
    setSending(true);
    setProblem(null);
    const answer = await sendFiles(files, mode, differences);
    setSending(false);
    if ('id' in answer) setRunning(answer.id);
    else setProblem(answer.problem);
  }

  return (
    <div className="tw-stack">
      <h1>Import</h1>
      <p>
        Choose all files of the fleet at once. The dry run names every bad row, every row that says otherwise than what
        is recorded, and what the board would show; nothing is loaded by it.
      </p>
      <form
        className="tw-sheet tw-stack"
        onSubmit={(event) => {
          event.preventDefault();
          if (files.length > 0) void send('dry-run');
        }}
      >
        <Field label="Files" hint="CSV with a header, or aircraft records in JSON; several at once.">
          <input
            type="file"
            multiple
            accept=".csv,.txt,.json,text/csv,application/json"
            onChange={(event) => {
              setFiles([...(event.target.files ?? [])]);
              setRunning(null);
            }}
          />
        </Field>
        <div className="tw-row">
          <Button type="submit" look={running ? 'plain' : 'main'} busy={sending} disabled={files.length === 0}>
            {sending ? 'Sending…' : files.length === 0 ? 'Dry run' : `Dry run of ${countWords(files.length, 'file')}`}
          </Button>
        </div>
      </form>
      {problem && <Trouble title={problem.title} wayOut={problem.wayOut} />}
      {running && (
        <Outcome
          id={running}
          mayLoad={viewer.may.includes('import.load') && files.length > 0}
          sending={sending}
          onLoad={(differences) => void send('load', differences)}
        />
      )}
      <WriteOut />
      <Format />
      <Caution />
    </div>
  );
}
