import { dateWords, whenWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { Link } from 'react-router';
import { ListBody } from '../../app/list-body.js';
import { useHouse } from '../../app/house.js';
import { useParamsState } from '../../app/use-params-state.js';
import { graphql, type ResultOf } from '../../graphql.js';
import { dueByWeekChart, mondayOf } from '../../trade/due-chart.js';
import { topicOf, topicOptions } from '../../trade/topics.js';
import { clockNow } from '../../trade/time.js';
import { dueWords, effectWords, oldReadingWords } from '../../trade/words.js';
import { Caution } from '../../ui/caution.js';
import { Chart } from '../../ui/chart.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { DataTable, type Column } from '../../ui/table.js';
import { countWords } from '../../ui/words.js';

const DueAheadQuery = graphql(`
  query DueAhead($filter: DueFilter, $after: String) {
    dueAhead(filter: $filter, first: 100, after: $after) {
      edges {
        cursor
        node {
          id
          topic
          what
          subject
          subjectName
          effect
          lastGoodDay
          lapses
          meter
          at
          hoursLeft
          readingEnds
          projected
          expected
          aircraft {
            id
            registration
            operator {
              id
              name
            }
            base {
              id
              name
              zone
            }
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

const DueWeeksQuery = graphql(`
  query DueWeeks($filter: DueFilter) {
    dueByWeek(filter: $filter) {
      week
      topic
      certain
      projected
    }
  }
`);

type Due = ResultOf<typeof DueAheadQuery>['dueAhead']['edges'][number]['node'];

/** What falls due in the coming weeks, over the fleet: calendar dates certain, dates from hours marked as projected. */
export function DueScreen() {
  const house = useHouse();
  const [asked, ask] = useParamsState(['topic', 'operator', 'base']);
  const topic = topicOf(asked.topic);
  const filter = { topic: topic ? [topic] : null, operatorId: asked.operator || null, baseId: asked.base || null };
  const list = useQuery(DueAheadQuery, { variables: { filter } });
  const weeks = useQuery(DueWeeksQuery, { variables: { filter } });
  const chart = weeks.data ?? weeks.previousData;
  return (
    <div className="tw-stack">
      <h1>Due ahead</h1>
      <FilterBar label="What falls due">
        <Pick label="Topic" value={asked.topic} onPick={(next) => ask({ topic: next })} options={topicOptions} />
        <Pick
          label="Operator"
          value={asked.operator}
          onPick={(next) => ask({ operator: next })}
          options={house.operators}
        />
        <Pick label="Base" value={asked.base} onPick={(next) => ask({ base: next })} options={house.bases} />
      </FilterBar>
      {chart && <Chart data={dueByWeekChart(chart.dueByWeek, mondayOf(clockNow().slice(0, 10)))} kind="columns" />}
      <ListBody
        what="the due list"
        answer={(list.data ?? list.previousData)?.dueAhead}
        loading={list.loading}
        error={list.error}
        onRetry={() => void list.refetch()}
        onMore={(after) => list.fetchMore({ variables: { after } })}
      >
        {(answer) => (
          <>
            <p className="tw-soft">{countWords(answer.totalCount, 'item')}, soonest first.</p>
            <DataTable
              caption="What falls due"
              captionHidden
              columns={columns}
              rows={answer.edges.map((edge) => edge.node)}
              rowKey={(item) => item.id}
              empty="Nothing falls due in this stretch by what is recorded."
            />
          </>
        )}
      </ListBody>
      <Caution />
    </div>
  );
}

const columns: readonly Column<Due>[] = [
  {
    key: 'aircraft',
    head: 'Aircraft',
    rowHead: true,
    sort: (item) => item.aircraft.registration,
    cell: (item) => (
      <Link className="tw-mono" to={`/aircraft/${item.aircraft.id}#due`}>
        {item.aircraft.registration}
      </Link>
    ),
  },
  {
    key: 'what',
    head: 'What',
    sort: dueWords,
    cell: dueWords,
  },
  { key: 'day', head: 'Last good day', sort: (item) => item.lastGoodDay ?? item.lapses, cell: dayWords },
  {
    key: 'hours',
    head: 'Hours left',
    sort: (item) => item.hoursLeft,
    align: 'end',
    cell: (item) =>
      item.at == null
        ? ''
        : item.hoursLeft == null
          ? 'cannot tell'
          : `${item.hoursLeft} h${oldReadingWords(item, clockNow())}`,
  },
  { key: 'expected', head: 'Expected', sort: (item) => item.expected, cell: expectedWords },
  {
    key: 'effect',
    head: 'If it lapses',
    sort: (item) => item.effect,
    cell: (item) => effectWords(item.effect.toLowerCase().replace(/_/g, '-')),
  },
  {
    key: 'operator',
    head: 'Operator',
    sort: (item) => item.aircraft.operator?.name ?? null,
    cell: (item) => item.aircraft.operator?.name ?? '',
  },
];

function dayWords(item: Due): string {
  if (item.lastGoodDay) return dateWords(item.lastGoodDay);
  return item.lapses ? `until ${whenWords(item.lapses, item.aircraft.base.zone)}` : '';
}

function expectedWords(item: Due): string {
  if (!item.expected) return '';
  const words = whenWords(item.expected, item.aircraft.base.zone);
  return item.expected === item.projected ? `${words} (projected)` : words;
}
