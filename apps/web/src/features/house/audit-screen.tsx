import { useQuery } from '@apollo/client/react';
import { useHouse, zoneOf } from '../../app/house.js';
import { useParamsState } from '../../app/use-params-state.js';
import { instantAt } from '../../trade/time.js';
import { Field } from '../../ui/field.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { Deeds } from './components/deeds.js';
import { AuditPeopleQuery, AuditQuery } from './query.js';

const topics = [
  { id: 'SIGN_IN', name: 'Signing in and out' },
  { id: 'REFUSED', name: 'What was refused' },
  { id: 'PEOPLE', name: 'People' },
  { id: 'HOUSE', name: 'House' },
  { id: 'WORKSHOP', name: 'Test sets and agencies' },
  { id: 'IMPORT', name: 'Files read in' },
  { id: 'EXPORT', name: 'Data taken away' },
] as const;

/** Who did what in the organisation, work on aircraft aside: that stands in each aircraft's own history. */
export function AuditScreen() {
  const zone = zoneOf(useHouse(), '');
  const [asked, ask] = useParamsState(['person', 'topic', 'day']);
  const people = useQuery(AuditPeopleQuery).data?.people ?? [];
  const filter = {
    personId: asked.person || null,
    topic: topics.find(({ id }) => id === asked.topic)?.id ?? null,
    ...spanOf(asked.day, zone),
  };
  const { data, previousData, loading, error, fetchMore, refetch } = useQuery(AuditQuery, { variables: { filter } });
  return (
    <div className="tw-stack">
      <h1>Who did what</h1>
      <p>
        Signing in, refusals, changes of people and house, files. Work on aircraft stands in their own histories.
        Nothing here can be changed or taken away.
      </p>
      <FilterBar label="Which entries">
        <Pick label="Person" value={asked.person} onPick={(person) => ask({ person })} options={people} />
        <Pick label="Kind" value={asked.topic} onPick={(topic) => ask({ topic })} options={topics} />
        <Field label="Day">
          <input type="date" value={asked.day} onChange={(event) => ask({ day: event.target.value })} />
        </Field>
      </FilterBar>
      <Deeds
        title="Who did what"
        what="the entries"
        answer={(data ?? previousData)?.audit}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        fetchMore={fetchMore}
        zone={zone}
        day={filter.from === null ? null : asked.day}
        empty="No entry answers this."
      />
    </div>
  );
}

/** A day of the calendar at the first base, from midnight to midnight; no day, no bounds. */
function spanOf(day: string, zone: string): { readonly from: string | null; readonly to: string | null } {
  const from = instantAt(`${day}T00:00`, zone);
  if (from === null) return { from: null, to: null };
  const next = new Date(Date.parse(`${day}T00:00Z`) + 86_400_000).toISOString().slice(0, 10);
  return { from, to: instantAt(`${next}T00:00`, zone) };
}
