import { useApolloClient, useQuery } from '@apollo/client/react';
import { useEffect, useState } from 'react';
import { problemOf, type Problem } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { Button } from '../../ui/button.js';
import { Caution } from '../../ui/caution.js';
import { Field } from '../../ui/field.js';
import { Loading, Trouble } from '../../ui/states.js';
import { countWords } from '../../ui/words.js';
import { Format } from './components/format.js';
import { ReportView } from './components/report-view.js';
import { ImportQuery, type ImportAnswer } from './query.js';
import { sendFiles } from './send.js';

/** Files in: a dry run first, every bad row named; then all of it or nothing. */
export function ImportScreen() {
  const { viewer } = useSession();
  const [files, setFiles] = useState<readonly File[]>([]);
  const [running, setRunning] = useState<string | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [sending, setSending] = useState(false);

  async function send(mode: 'dry-run' | 'load') {
    setSending(true);
    setProblem(null);
    const answer = await sendFiles(files, mode);
    setSending(false);
    if ('id' in answer) setRunning(answer.id);
    else setProblem(answer.problem);
  }

  return (
    <div className="tw-stack">
      <h1>Import</h1>
      <p>
        Choose all files of the fleet at once. The dry run names every bad row and says what the board would show;
        nothing is loaded by it.
      </p>
      <form
        className="tw-sheet tw-stack"
        onSubmit={(event) => {
          event.preventDefault();
          if (files.length > 0) void send('dry-run');
        }}
      >
        <Field label="Files" hint="CSV with a header, or JSON; several at once.">
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
          onLoad={() => void send('load')}
        />
      )}
      <Format />
      <Caution />
    </div>
  );
}

function Outcome(props: { id: string; mayLoad: boolean; sending: boolean; onLoad: () => void }) {
  const { id, mayLoad, sending, onLoad } = props;
  const client = useApolloClient();
  const { data, error, stopPolling, refetch } = useQuery(ImportQuery, {
    variables: { id },
    pollInterval: 700,
    fetchPolicy: 'network-only',
  });
  const state = data?.import.state;
  useEffect(() => {
    if (!state || state === 'RUNNING') return;
    stopPolling();
    // The fleet is another one now: nothing that was read before may be shown as today's.
    if (state === 'LOADED') void client.resetStore();
  }, [state, stopPolling, client]);
  if (error) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the import" />;
  return (
    <section aria-label="What came of it" className="tw-stack" aria-live="polite">
      <State answer={data.import} />
      {data.import.report && <ReportView report={data.import.report} />}
      {state === 'CHECKED' && data.import.report?.badCount === 0 && mayLoad && (
        <Button look="main" busy={sending} onClick={onLoad}>
          {sending ? 'Sending…' : 'Load it: all of it or nothing'}
        </Button>
      )}
    </section>
  );
}

const stateWords: Readonly<Record<Exclude<ImportAnswer['state'], 'RUNNING'>, string>> = {
  CHECKED: 'Dry run done. Nothing was loaded.',
  LOADED: 'Loaded, all of it.',
  REFUSED: 'Nothing was loaded: something in the files is bad.',
  FAILED: 'Nothing was loaded: something went wrong on our side. Start it again.',
  INTERRUPTED: 'It was cut off; nothing was loaded. Start it again.',
};

function State({ answer }: { answer: ImportAnswer }) {
  if (answer.state !== 'RUNNING') return <h2>{stateWords[answer.state]}</h2>;
  const { step, done, total } = answer.progress;
  return (
    <div>
      <label htmlFor="import-progress">
        {step.charAt(0).toUpperCase() + step.slice(1)}
        {total > 0 && `: ${done} of ${total}`}
      </label>
      <div>
        <progress id="import-progress" max={Math.max(total, 1)} value={done} />
      </div>
    </div>
  );
}
