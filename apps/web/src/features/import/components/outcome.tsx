import { useApolloClient, useMutation, useQuery } from '@apollo/client/react';
import { useEffect, useState } from 'react';
import { Link } from 'react-router';
import { problemOf } from '../../../app/problem.js';
import { Button } from '../../../ui/button.js';
import { Loading, Trouble } from '../../../ui/states.js';
import { decisionOf, outcomeWords, progressWords } from '../outcome-words.js';
import { ImportQuery, StopImport } from '../query.js';
import { Differences } from './differences.js';
import { ReportView } from './report-view.js';

export interface OutcomeProps {
  readonly id: string;
  readonly mayLoad: boolean;
  readonly sending: boolean;
  /** Loads the same files, with what was decided about differences. */
  readonly onLoad: (differences: string) => void;
}

const kept = new Set(['__typename', 'viewer', 'import', 'importFormat']);

/** How far an import is, and what came of it. */
export function Outcome({ id, mayLoad, sending, onLoad }: OutcomeProps) {
  const client = useApolloClient();
  const [taken, setTaken] = useState<ReadonlySet<string>>(new Set());
  const { data, error, stopPolling, refetch } = useQuery(ImportQuery, {
    variables: { id },
    pollInterval: 700,
    fetchPolicy: 'network-only',
  });
  const state = data?.import.state;
  const loading = data?.import.mode === 'LOAD';
  useEffect(() => {
    if (!state || state === 'RUNNING') return;
    stopPolling();
    // The fleet is another one now: nothing that was read before may be shown as today's.
    // Who is signed in and this screen's own answers stay: without them the screen would begin anew.
    if (loading)
      client.cache.modify({
        fields: (value: unknown, { fieldName, DELETE }) => (kept.has(fieldName) ? value : DELETE),
      });
  }, [state, loading, stopPolling, client]);
  if (error) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the import" />;
  const { report, progress, mode } = data.import;
  const mayGoOn = mode === 'DRY_RUN' ? state === 'CHECKED' && report?.badCount === 0 : state === 'INTERRUPTED';
  return (
    <section aria-label="What came of it" className="tw-stack" aria-live="polite">
      {state === 'RUNNING' ? (
        <Running id={id} progress={progress} mayStop={mayLoad && mode === 'LOAD'} />
      ) : (
        <h2>{outcomeWords(data.import)}</h2>
      )}
      {state === 'LOADED' && (
        <p>
          <Link to="/taking-on">Go on with what cannot be told yet, most useful first</Link>
        </p>
      )}
      {report && <ReportView report={report} />}
      {report && report.differences.length > 0 && (
        <Differences report={report} taken={mode === 'DRY_RUN' ? taken : null} onTake={setTaken} />
      )}
      {mayGoOn && mayLoad && report && (
        <Button look="main" busy={sending} onClick={() => onLoad(decisionOf(report, taken))}>
          {sending ? 'Sending…' : state === 'INTERRUPTED' ? 'Go on with the rest' : 'Load it'}
        </Button>
      )}
    </section>
  );
}

function Running(props: { id: string; progress: Parameters<typeof progressWords>[0]; mayStop: boolean }) {
  const { id, progress, mayStop } = props;
  const [stop, { loading, called }] = useMutation(StopImport, { variables: { id } });
  return (
    <div className="tw-stack">
      <div>
        <label htmlFor="import-progress">{progressWords(progress)}</label>
        <div>
          <progress id="import-progress" max={Math.max(progress.total, 1)} value={progress.done} />
        </div>
      </div>
      {mayStop && (
        <div className="tw-row">
          <Button look="stop" busy={loading || called} onClick={() => void stop().catch(() => undefined)}>
            {called ? 'Stopping…' : 'Stop after these aircraft'}
          </Button>
        </div>
      )}
    </div>
  );
}
