import { useQuery } from '@apollo/client/react';
import { Link } from 'react-router';
import { problemOf } from '../../../app/problem.js';
import { entryWords } from '../../../trade/entry-words.js';
import { Loading, Trouble } from '../../../ui/states.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { LatestEntriesQuery, type EntryAnswer } from '../query.js';

/** The newest entries of the record; the others are one step away. Nothing is ever taken out of it. */
export function History({ aircraftId, when }: { aircraftId: string; when: (instant: string) => string }) {
  const { data, error, refetch } = useQuery(LatestEntriesQuery, { variables: { id: aircraftId } });
  if (error) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  const latest = data?.aircraft?.latest;
  if (!latest) return <Loading what="the entries" />;
  const columns: readonly Column<EntryAnswer>[] = [
    { key: 'number', head: 'Entry number', rowHead: true, cell: (entry) => entry.number },
    { key: 'what', head: 'What', cell: (entry) => entryWords(entry, when) },
    {
      key: 'by',
      head: 'Recorded by',
      cell: ({ by, takenInFrom }) => (takenInFrom === null ? by : `${by}, from a file`),
    },
    { key: 'at', head: 'Recorded', cell: (entry) => when(entry.recordedAt) },
  ];
  return (
    <div className="tw-stack">
      <DataTable
        caption="Newest entries of the aircraft record"
        captionHidden
        columns={columns}
        rows={latest.edges.map((edge) => edge.node)}
        rowKey={(entry) => String(entry.number)}
        empty="Nothing is recorded yet."
      />
      <p className="tw-row tw-no-print">
        <Link to="history">All {latest.totalCount} entries, with what each changed</Link>
        <Link to="history/then">As it stood on a day</Link>
      </p>
    </div>
  );
}
