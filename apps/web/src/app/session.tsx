import { useQuery } from '@apollo/client/react';
import { createContext, useContext, useEffect, useState, type ReactNode } from 'react';
import { graphql, type ResultOf } from '../graphql.js';
import { Loading, Trouble } from '../ui/states.js';
import { signedOutEvent } from './client.js';
import { problemOf } from './problem.js';

export const ViewerQuery = graphql(`
  query Viewer {
    viewer {
      id
      name
      role
      may
      organisation {
        id
        name
        counter
      }
      operator {
        id
        name
      }
    }
  }
`);

export type Viewer = NonNullable<ResultOf<typeof ViewerQuery>['viewer']>;

interface Session {
  readonly viewer: Viewer;
  /** The server said that the session ended while the page was open; what is on the screen stays readable. */
  readonly ended: boolean;
}

const SessionContext = createContext<Session | null>(null);

/** Who is signed in. Only inside `SessionGate`. */
export function useSession(): Session {
  const session = useContext(SessionContext);
  if (!session) throw new Error('useSession is used outside SessionGate');
  return session;
}

/** Renders its children for a person who is signed in, else what `signIn` gives; that calls `again` when it is done. */
export function SessionGate(props: { signIn: (again: () => Promise<unknown>) => ReactNode; children: ReactNode }) {
  const { data, error, refetch } = useQuery(ViewerQuery, { fetchPolicy: 'cache-first' });
  const viewer = data?.viewer;
  const ended = useEnded(viewer?.id);
  if (viewer) return <SessionContext value={{ viewer, ended }}>{props.children}</SessionContext>;
  if (!data && !error) return <Loading what="the board" />;
  const problem = error ? problemOf(error) : null;
  if (!problem || problem.code === 'SIGNED_OUT') return props.signIn(() => refetch());
  return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
}

/** True once an answer said that this person's session is over. */
function useEnded(viewerId: string | undefined): boolean {
  const [endedFor, setEndedFor] = useState<string | null>(null);
  useEffect(() => {
    if (viewerId === undefined) return;
    const onEnd = () => setEndedFor(viewerId);
    window.addEventListener(signedOutEvent, onEnd);
    return () => window.removeEventListener(signedOutEvent, onEnd);
  }, [viewerId]);
  return endedFor !== null && endedFor === viewerId;
}
