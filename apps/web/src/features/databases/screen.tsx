import { useQuery } from '@apollo/client/react';
import { codeWords, databaseCycleAt, whenWords } from '@tallywing/rules';
import { Link } from 'react-router';
import { useHouse, zoneOf } from '../../app/house.js';
import { ListBody } from '../../app/list-body.js';
import { useParamsState } from '../../app/use-params-state.js';
import { graphql, type ResultOf } from '../../graphql.js';
import { clockNow, instantAt } from '../../trade/time.js';
import { Button } from '../../ui/button.js';
import { Caution } from '../../ui/caution.js';
import { DateTimeField } from '../../ui/date-time-field.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { StatusMark } from '../../ui/status-mark.js';
import type { Status } from '../../ui/status-words.js';
import { DataTable, type Column } from '../../ui/table.js';
import { localTimeAt } from '@tallywing/rules';

const DatabasesQuery = graphql(`
  query Databases($at: Instant, $filter: AircraftFilter, $after: String) {
    databaseCurrency(at: $at, filter: $filter, first: 100, after: $after) {
      edges {
        cursor
        node {
          aircraft {
            id
            registration
            base {
              id
              zone
            }
          }
          unitId
          unitName
          database
          state
          loaded {
            id
            cycle
            effective
            expires
          }
          next {
            id
            cycle
            effective
            expires
          }
        }
      }
      pageInfo {
        hasNextPage
        endCursor
      }
      totalCount
    }
  }
`);

type Row = ResultOf<typeof DatabasesQuery>['databaseCurrency']['edges'][number]['node'];

const states: Readonly<Record<Row['state'], readonly [Status, string]>> = {
  CURRENT: ['yes', 'Current'],
  EXPIRED: ['no', 'Expired'],
  NOT_YET: ['not-judged', 'Not yet in force'],
  CANNOT_TELL: ['cannot-tell', 'Cannot tell'],
};

/** Which cycle each unit carries, and how it stands at a moment: now, or at the next change of cycle. */
export function DatabasesScreen() {
  const house = useHouse();
  const [asked, ask] = useParamsState(['at', 'operator', 'base']);
  const zone = zoneOf(house, asked.base);
  const cycle = databaseCycleAt(clockNow());
  const change = `${cycle.next}T09:01Z`;
  const variables = {
    at: asked.at === '' ? null : instantAt(asked.at, zone),
    filter: { operatorId: asked.operator || null, baseId: asked.base || null },
  };
  const { data, previousData, loading, error, fetchMore, refetch } = useQuery(DatabasesQuery, { variables });
  return (
    <div className="tw-stack">
      <h1>Databases</h1>
      <p className="tw-news">
        Cycle {cycle.id} is in force; the next begins on {whenWords(change, zone)} ({zone.replace(/_/g, ' ')} time).
      </p>
      <FilterBar label="Which databases, and when">
        <DateTimeField label="Judged for" value={asked.at} zone={zone} onChange={(at) => ask({ at })} />
        <Pick
          label="Operator"
          value={asked.operator}
          onPick={(next) => ask({ operator: next })}
          options={house.operators}
        />
        <Pick label="Base" value={asked.base} onPick={(next) => ask({ base: next })} options={house.bases} />
      </FilterBar>
      <div className="tw-row tw-no-print">
        <Button onClick={() => ask({ at: localTimeAt(change, zone) })}>What the next cycle does</Button>
        {asked.at !== '' && <Button onClick={() => ask({ at: '' })}>Now</Button>}
      </div>
      <ListBody
        what="the databases"
        answer={(data ?? previousData)?.databaseCurrency}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        onMore={(after) => fetchMore({ variables: { after } })}
      >
        {(answer) => (
          <DataTable
            caption="Databases by unit"
            captionHidden
            columns={columns}
            rows={answer.edges.map((edge) => edge.node)}
            rowKey={(row) => `${row.aircraft.id} ${row.unitId} ${row.database}`}
            empty="No unit with a database answers this."
          />
        )}
      </ListBody>
      <Caution />
    </div>
  );
}

const stateOrder: readonly Row['state'][] = ['EXPIRED', 'CANNOT_TELL', 'NOT_YET', 'CURRENT'];

const columns: readonly Column<Row>[] = [
  {
    key: 'aircraft',
    head: 'Aircraft',
    rowHead: true,
    sort: (row) => row.aircraft.registration,
    cell: (row) => (
      <Link className="tw-mono" to={`/aircraft/${row.aircraft.id}#databases`}>
        {row.aircraft.registration}
      </Link>
    ),
  },
  { key: 'unit', head: 'Unit', sort: (row) => row.unitName, cell: (row) => row.unitName },
  { key: 'database', head: 'Database', sort: (row) => row.database, cell: (row) => codeWords(row.database) },
  {
    key: 'state',
    head: 'State',
    sort: (row) => stateOrder.indexOf(row.state),
    cell: (row) => <StatusMark status={states[row.state][0]} word={states[row.state][1]} />,
  },
  {
    key: 'loaded',
    head: 'Loaded',
    sort: (row) => row.loaded?.cycle ?? null,
    cell: (row) => row.loaded?.cycle ?? 'not recorded',
  },
  {
    key: 'expires',
    head: 'Expires',
    sort: (row) => row.loaded?.expires ?? null,
    cell: (row) => (row.loaded?.expires ? whenWords(row.loaded.expires, row.aircraft.base.zone) : ''),
  },
  { key: 'next', head: 'Next cycle', cell: (row) => row.next?.cycle ?? 'not loaded' },
];
