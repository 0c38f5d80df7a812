import { useQuery } from '@apollo/client/react';
import { entryWords } from '../../../trade/entry-words.js';
import { Button } from '../../../ui/button.js';
import { Loading } from '../../../ui/states.js';
import { countWords } from '../../../ui/words.js';
import { NewEntriesQuery } from '../query.js';

export interface MeanwhileProps {
  readonly aircraftId: string;
  /** Entry number the plan was made on, and the last one now. */
  readonly since: number;
  readonly now: number;
  readonly when: (instant: string) => string;
  readonly onSeen: () => void;
}

/** Somebody else changed the aircraft: who, what, when. The plan below is kept and already judged on the new record. */
export function Meanwhile({ aircraftId, since, now, when, onSeen }: MeanwhileProps) {
  const count = now - since;
  const { data } = useQuery(NewEntriesQuery, {
    variables: { id: aircraftId, first: Math.min(count, 50) },
    fetchPolicy: 'network-only',
  });
  const entries = data?.aircraft?.newest.edges.map((edge) => edge.node).filter((entry) => entry.number > since);
  return (
    <section className="tw-state" data-kind="trouble" role="alert">
      <p className="tw-state-title">The aircraft record was changed meanwhile. Nothing of yours is lost.</p>
      <p>
        {countWords(count, 'entry', 'entries')} since entry number {since}, on which you planned. Your plan is below,
        judged on the record as it is now.
      </p>
      {entries ? (
        <ul>
          {entries.map((entry) => (
            <li key={entry.number}>
              <strong>{entry.number}</strong> {entryWords(entry, when)} {entry.by}, {when(entry.recordedAt)}
            </li>
          ))}
        </ul>
      ) : (
        <Loading what="what changed" />
      )}
      <Button onClick={onSeen}>I have seen it: go on with my plan</Button>
    </section>
  );
}
