import { useQuery } from '@apollo/client/react';
import { useHouse, zoneOf } from '../../app/house.js';
import { ListBody } from '../../app/list-body.js';
import { useParamsState } from '../../app/use-params-state.js';
import { instantAt, whenWords } from '../../trade/time.js';
import { Field } from '../../ui/field.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { DataTable, type Column } from '../../ui/table.js';
import { countWords, dateWords } from '../../ui/words.js';
import { Values } from './components/values.js';
import { deedWords } from './entry-words.js';
import { AuditPeopleQuery, AuditQuery, type AuditEntry } from './query.js';

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
      <ListBody
        what="the entries"
        answer={(data ?? previousData)?.audit}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        onMore={(after) => void fetchMore({ variables: { after } })}
      >
        {(answer) => (
          <>
            <p className="tw-soft">
              {countWords(answer.totalCount, 'entry', 'entries')}
              {filter.from === null ? '' : ` of ${dateWords(asked.day)}`}, newest first; times are those of{' '}
              {zone.replace(/_/g, ' ')}.
            </p>
            <DataTable
              caption="Who did what"
              captionHidden
              columns={columnsFor(zone)}
              rows={answer.edges.map(({ node }) => node)}
              rowKey={({ id }) => id}
              empty="No entry answers this."
            />
          </>
        )}
      </ListBody>
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

function columnsFor(zone: string): readonly Column<AuditEntry>[] {
  return [
    { key: 'what', head: 'What', rowHead: true, cell: (entry) => deedWords(entry) },
    { key: 'when', head: 'When', cell: ({ at }) => whenWords(at, zone) },
    { key: 'by', head: 'By', cell: ({ kind, by }) => (kind === 'sign-in.failed' ? `somebody, as ${by}` : by) },
    { key: 'values', head: 'More', cell: (entry) => <Values entry={entry} /> },
  ];
}
