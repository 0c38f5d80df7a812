import { codeWords, dateWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { Link } from 'react-router';
import { ListBody } from '../../../app/list-body.js';
import { Sheet } from '../../../ui/sheet.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { countWords } from '../../../ui/words.js';
import { TraceQuery, type Trace } from '../query.js';
import { spanWords } from '../standing.js';

type Entry = Trace['edges'][number]['node'];

/** Every entry of every aircraft that leans on a test set found out of tolerance. */
export function TraceView({ calibrationId, onClose }: { calibrationId: string; onClose: () => void }) {
  const { data, loading, error, fetchMore, refetch } = useQuery(TraceQuery, {
    variables: { calibrationId },
    fetchPolicy: 'network-only',
    nextFetchPolicy: 'cache-first',
  });
  const trace = data?.reverseTrace;
  const title = trace ? `Entries that lean on ${trace.testSet.name}, serial ${trace.testSet.serial}` : 'Entries';
  return (
    <Sheet title={title} onClose={onClose}>
      <ListBody
        what="the entries"
        answer={trace}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        onMore={(after) => fetchMore({ variables: { after } })}
      >
        {(answer) => (
          <>
            <p>
              Found out of tolerance on {dateWords(answer.calibration.checkedOn)}. {spanWords(answer)}
            </p>
            <p className="tw-soft">
              {countWords(answer.totalCount, 'entry', 'entries')} by this serial number, newest work first. What each is
              still worth is for whoever signs to decide; nothing here changes a record.
            </p>
            <DataTable
              caption={title}
              captionHidden
              columns={columns}
              rows={answer.edges.map(({ node }) => node)}
              rowKey={({ aircraft, number }) => `${aircraft.id} ${number}`}
              empty="No entry names this set in those days."
            />
          </>
        )}
      </ListBody>
    </Sheet>
  );
}

const columns: readonly Column<Entry>[] = [
  {
    key: 'aircraft',
    head: 'Aircraft',
    rowHead: true,
    cell: ({ aircraft }) => (
      <Link className="tw-mono" to={`/aircraft/${aircraft.id}#history`}>
        {aircraft.registration}
      </Link>
    ),
  },
  { key: 'number', head: 'Entry number', align: 'end', cell: ({ number }) => number },
  { key: 'kind', head: 'Work', cell: ({ kind }) => codeWords(kind.toLowerCase().replace(/_/g, '-')) },
  { key: 'done', head: 'Done', cell: ({ done }) => dateWords(done) },
  { key: 'outcome', head: 'Outcome', cell: ({ outcome }) => (outcome ? codeWords(outcome) : 'not recorded') },
  { key: 'signer', head: 'Signed by', cell: ({ signer }) => signer ?? 'not recorded' },
];
