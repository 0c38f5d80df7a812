import { useQuery } from '@apollo/client/react';
import { ListBody } from '../../../app/list-body.js';
import { whenWords } from '../../../trade/time.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { countWords } from '../../../ui/words.js';
import { deedWords } from '../entry-words.js';
import { HouseEntriesQuery, type HouseEntry } from '../query.js';
import { Values } from './values.js';

/** What was changed about the organisation. Nothing here can be taken away. */
export function Entries({ zone }: { zone: string }) {
  const { data, previousData, loading, error, fetchMore, refetch } = useQuery(HouseEntriesQuery, {
    variables: {},
    fetchPolicy: 'cache-and-network',
  });
  return (
    <section className="tw-stack" aria-labelledby="entries">
      <h2 id="entries">What was changed, by whom</h2>
      <ListBody
        what="what was changed"
        answer={(data ?? previousData)?.houseEntries}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        onMore={(after) => void fetchMore({ variables: { after } })}
      >
        {(answer) => (
          <>
            <p className="tw-soft">
              {countWords(answer.totalCount, 'entry', 'entries')}, newest first; times are those of{' '}
              {zone.replace(/_/g, ' ')}.
            </p>
            <DataTable
              caption="What was changed, by whom"
              captionHidden
              columns={columnsFor(zone)}
              rows={answer.edges.map(({ node }) => node)}
              rowKey={({ id }) => id}
              empty="Nothing was changed yet."
            />
          </>
        )}
      </ListBody>
    </section>
  );
}

function columnsFor(zone: string): readonly Column<HouseEntry>[] {
  return [
    { key: 'what', head: 'What', rowHead: true, cell: (entry) => deedWords(entry) },
    { key: 'when', head: 'When', cell: ({ at }) => whenWords(at, zone) },
    { key: 'by', head: 'By', cell: ({ by }) => by },
    { key: 'values', head: 'From and to', cell: (entry) => <Values entry={entry} /> },
  ];
}
