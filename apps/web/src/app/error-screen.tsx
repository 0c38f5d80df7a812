import { isRouteErrorResponse, Link, useRouteError } from 'react-router';
import { Trouble } from '../ui/states.js';
import { problemOf } from './problem.js';

/** Catches what a screen throws, a chunk that no longer exists after an update among it. */
export function ErrorScreen() {
  const error = useRouteError();
  if (isRouteErrorResponse(error) && error.status === 404) return <NoSuchScreen />;
  if (error instanceof TypeError && /dynamically imported module|module script/i.test(error.message)) {
    return (
      <Trouble
        title="The board has been updated."
        wayOut="Load the page again; what you typed is kept on this device."
        onRetry={() => window.location.reload()}
      />
    );
  }
  const problem = problemOf(error);
  return (
    <Trouble
      title={error instanceof Error && problem.code === 'INTERNAL' ? 'This screen failed.' : problem.title}
      wayOut="Load the page again. If it stays, tell whoever runs the server the time and the aircraft."
      onRetry={() => window.location.reload()}
    />
  );
}

export function NoSuchScreen() {
  return (
    <Trouble title="There is no such screen." wayOut="The link may be old or cut short.">
      <Link to="/">To the ready board</Link>
    </Trouble>
  );
}
