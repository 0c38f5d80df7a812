import { useMutation, useQuery } from '@apollo/client/react';
import { useHouse, zoneOf } from '../../app/house.js';
import { problemOf } from '../../app/problem.js';
import { ProblemNote } from '../../app/problem-note.js';
import { useAct } from '../../app/use-act.js';
import { Button } from '../../ui/button.js';
import { Loading, Trouble } from '../../ui/states.js';
import { OwnPassword } from './components/own-password.js';
import { SessionList } from './components/session-list.js';
import { EndOtherSessionsMutation, MySessionsQuery } from './query.js';

/** Where one is signed in oneself. */
export function SessionsScreen() {
  const zone = zoneOf(useHouse(), '');
  const { data, error, refetch } = useQuery(MySessionsQuery, { fetchPolicy: 'network-only' });
  const { run, busy, problem } = useAct();
  const [endOthers] = useMutation(EndOtherSessionsMutation);
  const others = data?.mySessions.filter(({ here }) => !here) ?? [];
  return (
    <div className="tw-stack">
      <h1>Where you are signed in</h1>
      <p>
        Times are those of {zone.replace(/_/g, ' ')}. A session ends by itself after twelve hours without use. End what
        you do not know, and change your password.
      </p>
      {error && !data && (
        <Trouble title={problemOf(error).title} wayOut={problemOf(error).wayOut} onRetry={() => void refetch()} />
      )}
      {!data && !error && <Loading what="your sessions" />}
      {data && <SessionList caption="Your sessions" sessions={data.mySessions} zone={zone} onEnded={() => refetch()} />}
      <ProblemNote problem={problem} />
      {others.length > 0 && (
        <div className="tw-row">
          <Button
            look="stop"
            busy={busy}
            onClick={() =>
              void run(async () => {
                await endOthers();
                await refetch();
              }, 'All other sessions are ended.')
            }
          >
            End all others
          </Button>
        </div>
      )}
      <h2>Your password</h2>
      <OwnPassword onChanged={refetch} />
    </div>
  );
}
