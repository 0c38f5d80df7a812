import { useApolloClient } from '@apollo/client/react';
import { useEffect, useState, useSyncExternalStore } from 'react';
import { signedOutEvent } from '../client.js';
import { lastAnswer, onAnswer } from './last-answer.js';

/** A break that is over sooner is not worth a word. */
const PATIENCE_MS = 3000;

/**
 * Follows the house, and says when it cannot: quietly, in words and with a sign. The place where it speaks is always there, so
 * that a screen reader hears what is put into it.
 * @param shown how far the house had come before anything on the screen was asked for
 */
export function LiveStrip({ shown, ended }: { readonly shown: number; readonly ended: boolean }) {
  const live = useFollowing(shown);
  const online = useOnline();
  const at = useSyncExternalStore(onAnswer, lastAnswer);
  return (
    <p className="tw-strip tw-live-strip tw-no-print" role="status">
      {!ended && (!online || !live) && (
        <>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d="M2 8a6 6 0 0 1 9.5-4.9M14 8a6 6 0 0 1-9.5 4.9M3 14 13 2" />
          </svg>
          {online
            ? `Not live: last answer at ${at}. It goes on by itself when the connection is back.`
            : `No network. Not live: last answer at ${at}. What you type is kept on this device.`}
        </>
      )}
    </p>
  );
}

/** False when the connection has been gone for a while. */
function useFollowing(shown: number): boolean {
  const client = useApolloClient();
  const [from] = useState(shown); // Later answers carry later numbers; what counts is the one before everything else.
  const [live, setLive] = useState(true);
  useEffect(() => {
    let stop: (() => void) | null = null;
    let left = false;
    let patience: ReturnType<typeof setTimeout> | undefined;
    const onLive = (now: boolean) => {
      clearTimeout(patience);
      if (now) setLive(true);
      else patience = setTimeout(() => setLive(false), PATIENCE_MS);
    };
    const onSignedOut = () => window.dispatchEvent(new Event(signedOutEvent));
    onLive(false);
    import('./follow-house.js').then(
      ({ followHouse }) => {
        if (!left) stop = followHouse(client, { shown: from, onLive, onSignedOut });
      },
      () => setLive(false), // The board was updated under this page: it works, but follows nothing until it is loaded again.
    );
    return () => {
      left = true;
      clearTimeout(patience);
      stop?.();
    };
  }, [client, from]);
  return live;
}

function useOnline(): boolean {
  return useSyncExternalStore(
    (tell) => {
      window.addEventListener('online', tell);
      window.addEventListener('offline', tell);
      return () => {
        window.removeEventListener('online', tell);
        window.removeEventListener('offline', tell);
      };
    },
    () => navigator.onLine,
  );
}
