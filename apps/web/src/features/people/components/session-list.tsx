import { whenWords } from '@tallywing/rules';
import { useMutation } from '@apollo/client/react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { browserWords } from '../browser-words.js';
import { EndSessionMutation, type Session } from '../query.js';

export interface SessionListProps {
  readonly caption: string;
  readonly sessions: readonly Session[];
  readonly zone: string;
  readonly onEnded: () => Promise<unknown>;
}

/** Where somebody is signed in, each with the way to end it. The one that asks is ended by signing out. */
export function SessionList({ caption, sessions, zone, onEnded }: SessionListProps) {
  const { run, problem, busy } = useAct();
  const [end] = useMutation(EndSessionMutation);
  const endOne = (session: Session) =>
    run(
      async () => {
        await end({ variables: { id: session.id } });
        await onEnded();
      },
      `The session in ${browserWords(session.userAgent)} is ended.`,
    );
  return (
    <>
      <DataTable
        caption={caption}
        captionHidden
        columns={columnsFor(zone, busy, (session) => void endOne(session))}
        rows={sessions}
        rowKey={(session) => session.id}
        empty="Nowhere signed in."
      />
      <ProblemNote problem={problem} />
    </>
  );
}

function columnsFor(zone: string, busy: boolean, onEnd: (session: Session) => void): readonly Column<Session>[] {
  return [
    { key: 'where', head: 'Where', rowHead: true, cell: (session) => browserWords(session.userAgent) },
    { key: 'since', head: 'Since', sort: ({ since }) => since, cell: ({ since }) => whenWords(since, zone) },
    {
      key: 'seen',
      head: 'Last seen',
      sort: ({ lastSeen }) => lastSeen,
      cell: ({ lastSeen }) => whenWords(lastSeen, zone),
    },
    {
      key: 'end',
      head: 'End it',
      cell: (session) =>
        session.here ? (
          'This one: sign out'
        ) : (
          <Button
            look="quiet"
            busy={busy}
            aria-label={`End the session in ${browserWords(session.userAgent)} since ${whenWords(session.since, zone)}`}
            onClick={() => onEnd(session)}
          >
            End
          </Button>
        ),
    },
  ];
}
