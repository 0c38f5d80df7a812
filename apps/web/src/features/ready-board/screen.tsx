import { whenWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { useDeferredValue } from 'react';
import { useSearchParams } from 'react-router';
import { ListBody } from '../../app/list-body.js';
import { NoAircraftYet } from '../../app/no-aircraft-yet.js';
import { dueByWeekChart, mondayOf } from '../../trade/due-chart.js';
import { clockNow, untilWords } from '../../trade/time.js';
import { Button } from '../../ui/button.js';
import { Caution } from '../../ui/caution.js';
import { Chart } from '../../ui/chart.js';
import { Empty } from '../../ui/states.js';
import { countWords } from '../../ui/words.js';
import { readAsked, variablesOf, writeAsked, type Asked } from './asked.js';
import { AskBar } from './components/ask-bar.js';
import { BoardTable } from './components/board-table.js';
import { ByTime } from './components/by-time.js';
import { AroundTheBoardQuery, ReadyBoardQuery, type Around } from './query.js';
import { findingsChart, newsOf, readinessChart, rowsOf } from './view-model.js';
import './ready-board.css';

/** Which aircraft may fly what, at a moment, with so many hours flown: the whole fleet in one look. */
export function ReadyBoardScreen() {
  const [params, setParams] = useSearchParams();
  const asked = readAsked(params);
  const settled = useDeferredValue(asked);
  const around = useQuery(AroundTheBoardQuery);
  const zone = zoneOf(around.data, asked);
  const board = useQuery(ReadyBoardQuery, { variables: variablesOf(settled, zone), fetchPolicy: 'cache-and-network' });
  const answer = board.data?.readyBoard ?? board.previousData?.readyBoard;
  const ask = (next: Partial<Asked>) => setParams(writeAsked({ ...asked, ...next }), { replace: true });

  return (
    <div className="tw-stack-wide">
      <div className="tw-stack">
        <div className="tw-screen-head">
          <h1>Ready board</h1>
          {answer && (
            <p className="tw-soft">
              {countWords(answer.totalCount, 'aircraft', 'aircraft')}, judged for {whenWords(answer.at, zone)}
              {answer.hoursAhead > 0 && ` and ${answer.hoursAhead} flight hours from the last reading`}
            </p>
          )}
        </div>
        {around.data && (
          <p className="tw-news">{newsOf(around.data.changesSince, (instant) => whenWords(instant, zone))}</p>
        )}
        {around.data && <ByTime notices={around.data.changesSince.byTime} />}
        <AskBar asked={asked} onAsk={ask} zone={zone} lists={around.data} />
        <BoardBody board={board} asked={settled} onAsk={ask} />
        <Caution />
      </div>
      {answer && around.data && answer.totalCount > 0 && (
        <section aria-label="The fleet in figures" className="tw-board-charts">
          <Chart data={readinessChart(answer)} kind="rows" />
          <Chart data={findingsChart(around.data)} kind="line" />
          <Chart data={dueByWeekChart(around.data.dueByWeek, mondayOf(clockNow().slice(0, 10)))} kind="columns" />
        </section>
      )}
    </div>
  );
}

type BoardResult = ReturnType<typeof useQuery<import('../../graphql.js').ResultOf<typeof ReadyBoardQuery>>>;

function BoardBody({
  board,
  asked,
  onAsk,
}: {
  board: Pick<BoardResult, 'data' | 'previousData' | 'error' | 'loading' | 'fetchMore' | 'refetch'>;
  asked: Asked;
  onAsk: (next: Partial<Asked>) => void;
}) {
  return (
    <ListBody
      what="the board"
      answer={board.data?.readyBoard ?? board.previousData?.readyBoard}
      loading={board.loading}
      error={board.error}
      onRetry={() => void board.refetch()}
      onMore={(after) => board.fetchMore({ variables: { after } })}
    >
      {(answer) =>
        answer.totalCount === 0 ? (
          <NoAircraft asked={asked} onAsk={onAsk} />
        ) : (
          <BoardTable
            rows={rowsOf(answer, (instant, zone) => untilWords(instant, zone, answer.at))}
            profiles={answer.profiles}
            asked={asked}
          />
        )
      }
    </ListBody>
  );
}

function NoAircraft({ asked, onAsk }: { asked: Asked; onAsk: (next: Partial<Asked>) => void }) {
  const filtered = asked.operator || asked.base || asked.text || asked.ready;
  return filtered ? (
    <Empty title="No aircraft answers this.">
      <Button onClick={() => onAsk({ operator: '', base: '', text: '', ready: '' })}>Show all aircraft</Button>
    </Empty>
  ) : (
    <NoAircraftYet />
  );
}

/** Times are those of the chosen base, else of the first one. */
function zoneOf(around: Around | undefined, asked: Asked): string {
  const bases = around?.bases ?? [];
  return (bases.find((base) => base.id === asked.base) ?? bases[0])?.zone ?? 'UTC';
}
