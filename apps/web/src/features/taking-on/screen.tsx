import { useQuery } from '@apollo/client/react';
import { Link } from 'react-router';
import { useHouse } from '../../app/house.js';
import { ListBody } from '../../app/list-body.js';
import { NoAircraftYet } from '../../app/no-aircraft-yet.js';
import { useParamsState } from '../../app/use-params-state.js';
import { Caution } from '../../ui/caution.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { countWords } from '../../ui/words.js';
import { FleetVisits } from './components/fleet-visits.js';
import { TakingOnQuery, type FleetAnswer, type FleetRow } from './query.js';
import './taking-on.css';

/** The first hour with a fleet: what cannot be told of each aircraft yet, and the visits that settle most of it. */
export function TakingOnScreen() {
  const house = useHouse();
  const [asked, ask] = useParamsState(['operator', 'base']);
  const filter = { operatorId: asked.operator || null, baseId: asked.base || null };
  const list = useQuery(TakingOnQuery, { variables: { filter } });
  return (
    <div className="tw-stack-wide">
      <header className="tw-stack">
        <h1>Taking on</h1>
        <p>
          What nobody has recorded cannot be told, and never counts as met. Here is what is missing, aircraft by
          aircraft, put together by where one has to go for it. What a visit would settle supposes that all of it turns
          out well.
        </p>
      </header>
      <FilterBar label="Which aircraft">
        <Pick
          label="Operator"
          value={asked.operator}
          onPick={(operator) => ask({ operator })}
          options={house.operators}
        />
        <Pick label="Base" value={asked.base} onPick={(base) => ask({ base })} options={house.bases} />
      </FilterBar>
      <ListBody
        what="what is missing"
        answer={list.data?.takingOn ?? list.previousData?.takingOn}
        loading={list.loading}
        error={list.error}
        onRetry={() => void list.refetch()}
        onMore={(after) => list.fetchMore({ variables: { after } })}
      >
        {(answer) => <Fleet answer={answer} />}
      </ListBody>
      <Caution />
    </div>
  );
}

function Fleet({ answer }: { answer: FleetAnswer }) {
  if (answer.totalCount === 0) return <NoAircraftYet />;
  const { told, totalCount, openAnswers } = answer;
  return (
    <>
      <p>
        <label htmlFor="told">
          Of {told} of {countWords(totalCount, 'aircraft', 'aircraft')} every flight can be told;{' '}
          {countWords(openAnswers, 'answer')} cannot be told yet, over all of them.
        </label>{' '}
        <progress id="told" max={totalCount} value={told} />
      </p>
      <ol className="tw-taking-on" aria-label="Aircraft, the most open first">
        {answer.edges.map(({ node }) => (
          <li key={node.aircraft.id} className="tw-sheet tw-stack">
            <Row row={node} />
          </li>
        ))}
      </ol>
    </>
  );
}

function Row({ row }: { row: FleetRow }) {
  const { aircraft, openAnswers, openFlights } = row;
  return (
    <>
      <div className="tw-taking-on-head">
        <h2>
          <Link
            to={`/aircraft/${aircraft.id}/taking-on`}
            className="tw-mono"
            aria-label={`${aircraft.registration}, what is missing`}
          >
            {aircraft.registration}
          </Link>{' '}
          <span className="tw-soft">
            {aircraft.make} {aircraft.model}
          </span>
        </h2>
        <p>
          {openFlights === 0 ? 'Every flight can be told' : `${countWords(openFlights, 'flight')} cannot be told`};{' '}
          {openAnswers === 0 ? 'no answer is open' : `${countWords(openAnswers, 'answer')} open`}.
        </p>
      </div>
      <FleetVisits visits={row.visits} />
    </>
  );
}
