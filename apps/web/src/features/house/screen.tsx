import { useApolloClient, useQuery } from '@apollo/client/react';
import { HouseQuery, useHouse, zoneOf } from '../../app/house.js';
import { still } from '../../app/live/refresh.js';
import { problemOf } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { Loading, Trouble } from '../../ui/states.js';
import { Bases } from './components/bases.js';
import { Entries } from './components/entries.js';
import { Operators } from './components/operators.js';
import { Policies } from './components/policies.js';
import { Profiles } from './components/profiles.js';
import { HouseEntriesQuery, HouseListsQuery } from './query.js';

/** The organisation: operators, bases, the flights it asks about, and what was changed by whom. */
export function HouseScreen() {
  const { viewer } = useSession();
  const client = useApolloClient();
  const zone = zoneOf(useHouse(), '');
  const mayWrite = viewer.may.includes('organisation.write');
  const { data, error, refetch } = useQuery(HouseListsQuery, still);
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the house" />;
  const { operators, bases, profiles } = data.house;
  const reload = () => Promise.all([refetch(), client.refetchQueries({ include: [HouseEntriesQuery, HouseQuery] })]);
  return (
    <div className="tw-stack-wide">
      <h1>{viewer.organisation.name}</h1>
      <Profiles {...{ profiles, mayWrite, reload }} />
      <Policies {...{ zone, mayWrite, reload }} />
      <Operators {...{ operators, mayWrite, reload }} />
      <Bases {...{ bases, mayWrite, reload }} />
      <Entries zone={zone} />
    </div>
  );
}
