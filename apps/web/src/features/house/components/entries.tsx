import { useQuery } from '@apollo/client/react';
import { HouseEntriesQuery } from '../query.js';
import { Deeds } from './deeds.js';

/** What was changed about the organisation. */
export function Entries({ zone }: { zone: string }) {
  const { data, previousData, loading, error, fetchMore, refetch } = useQuery(HouseEntriesQuery, {
    variables: {},
    fetchPolicy: 'cache-and-network',
  });
  return (
    <section className="tw-stack" aria-labelledby="entries">
      <h2 id="entries">What was changed, by whom</h2>
      <Deeds
        title="What was changed, by whom"
        what="what was changed"
        answer={(data ?? previousData)?.houseEntries}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        fetchMore={fetchMore}
        zone={zone}
        empty="Nothing was changed yet."
      />
    </section>
  );
}
