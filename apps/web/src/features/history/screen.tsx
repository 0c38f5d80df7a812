import { whenWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { useEffect } from 'react';
import { Link, useLocation, useParams, useSearchParams } from 'react-router';
import { ListBody } from '../../app/list-body.js';
import { problemOf } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { Button } from '../../ui/button.js';
import { Caution } from '../../ui/caution.js';
import { Empty, Loading, Trouble } from '../../ui/states.js';
import { countWords } from '../../ui/words.js';
import { EntryCard } from './components/entry-card.js';
import { HistoryQuery } from './query.js';
import './history.css';

/** Everything that was ever written down about one aircraft, newest first. Nothing is ever taken out of it. */
export function HistoryScreen() {
  const { id = '' } = useParams();
  const { viewer } = useSession();
  if (!viewer.may.includes('aircraft.history')) return <NotForThisRole id={id} />;
  return <Entries id={id} />;
}

function Entries({ id }: { id: string }) {
  const [params] = useSearchParams();
  const from = Number(params.get('from') ?? '') || null;
  const { data, previousData, loading, error, fetchMore, refetch } = useQuery(HistoryQuery, {
    variables: { id, from },
  });
  const aircraft = (data ?? previousData)?.aircraft;
  const { hash } = useLocation();
  const loaded = aircraft !== undefined;
  // The browser looks for the place before the entries are there, and not again.
  useEffect(() => {
    if (loaded && hash !== '') document.getElementById(hash.slice(1))?.scrollIntoView({ block: 'start' });
  }, [loaded, hash]);
  if (error && !aircraft) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data && !aircraft) return <Loading what="the entries" />;
  if (!aircraft) return <NoSuchAircraft />;
  const when = (instant: string) => whenWords(instant, aircraft.base.zone);
  const shown = new Set(aircraft.history.edges.map(({ node }) => node.number));
  const linkTo = (entry: number) => (shown.has(entry) ? `#entry-${entry}` : `?from=${entry}#entry-${entry}`);
  return (
    <div className="tw-stack">
      <header className="tw-screen-head">
        <div>
          <h1>
            Entries of <span className="tw-mono">{aircraft.registration}</span>
          </h1>
          <p className="tw-soft">
            {countWords(aircraft.history.totalCount, 'entry', 'entries')}, newest first; times of{' '}
            {aircraft.base.zone.replace(/_/g, ' ')}. Nothing is ever taken out: what was wrong is corrected by a later
            entry.
          </p>
          {from !== null && (
            <p>
              From entry {from} on. <Link to="?">Begin with the newest</Link>
            </p>
          )}
        </div>
        <div className="tw-row tw-no-print">
          <Link to={`/aircraft/${id}`} className="tw-button-link">
            The aircraft now
          </Link>
          <Link to="then" className="tw-button-link">
            As it stood on a day
          </Link>
          <Button onClick={() => window.print()}>Print</Button>
        </div>
      </header>
      <ListBody
        what="the entries"
        answer={aircraft.history}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        onMore={(after) => fetchMore({ variables: { after } })}
      >
        {({ edges }) => (
          <ol className="tw-entries" reversed>
            {edges.map(({ node }) => (
              <EntryCard
                key={node.number}
                entry={node}
                when={when}
                linkTo={linkTo}
                chosen={hash === `#entry-${node.number}`}
              />
            ))}
          </ol>
        )}
      </ListBody>
      <Caution />
    </div>
  );
}

/** Dispatchers see what an aircraft may be used for and why; entries name staff and their certificates. */
export function NotForThisRole({ id }: { id: string }) {
  return (
    <Empty title="The entries are not shown to your role.">
      <p>They name people and their certificates. What the aircraft may be used for, and why, stands on its screen.</p>
      <Link to={`/aircraft/${id}`}>To the aircraft</Link>
    </Empty>
  );
}

export function NoSuchAircraft() {
  return (
    <Empty title="There is no such aircraft here.">
      <p>It may belong to another operator or organisation, or the link may be old.</p>
      <Link to="/">To the ready board</Link>
    </Empty>
  );
}
