import { useQuery } from '@apollo/client/react';
import { problemOf } from '../../../app/problem.js';
import { codeWords } from '../../../trade/words.js';
import { Button } from '../../../ui/button.js';
import { Loading, Trouble } from '../../../ui/states.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { entryWords } from '../../../trade/entry-words.js';
import { HistoryQuery, type EntryAnswer } from '../query.js';

/** Entries of the record, newest first. Nothing is ever taken out of it. */
export function History({ aircraftId, when }: { aircraftId: string; when: (instant: string) => string }) {
  const { data, error, loading, fetchMore, refetch } = useQuery(HistoryQuery, { variables: { id: aircraftId } });
  if (error) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  const history = data?.aircraft?.history;
  if (!history) return <Loading what="the entries" />;
  const columns: readonly Column<EntryAnswer>[] = [
    { key: 'number', head: 'Entry number', rowHead: true, cell: (entry) => entry.number },
    { key: 'kind', head: 'What', cell: (entry) => codeWords(entry.kind.replace('.', ' ')) },
    { key: 'about', head: 'About', cell: (entry) => entryWords(entry.body) },
    { key: 'by', head: 'Recorded by', cell: (entry) => entry.by },
    { key: 'at', head: 'Recorded', cell: (entry) => when(entry.recordedAt) },
  ];
  return (
    <div className="tw-stack">
      <DataTable
        caption="Entries of the aircraft record"
        captionHidden
        columns={columns}
        rows={history.edges.map((edge) => edge.node)}
        rowKey={(entry) => String(entry.number)}
        empty="Nothing is recorded yet."
      />
      {history.pageInfo.hasNextPage && (
        <Button busy={loading} onClick={() => void fetchMore({ variables: { after: history.pageInfo.endCursor } })}>
          Show older entries ({history.totalCount} in all)
        </Button>
      )}
    </div>
  );
}
