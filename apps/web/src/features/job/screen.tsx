import { useQuery } from '@apollo/client/react';
import type { Catalogue, Dossier } from '@tallywing/rules';
import { Link, useParams } from 'react-router';
import { useEquipmentTypes } from '../../app/equipment-types.js';
import { problemOf } from '../../app/problem.js';
import { Empty, Loading, Trouble } from '../../ui/states.js';
import type { Profile } from '../../trade/effect.js';
import { Bench } from './components/bench.js';
import { JobQuery } from './query.js';

/** Plans and records work on one aircraft, with its effect beside it before anything is recorded. */
export function JobScreen() {
  const { id = '' } = useParams();
  const { data, error, refetch } = useQuery(JobQuery, {
    variables: { id },
    fetchPolicy: 'network-only',
    nextFetchPolicy: 'cache-first',
  });
  const types = useEquipmentTypes();
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data || (!types.all && !types.error)) return <Loading what="the aircraft record" />;
  const { aircraft, profiles } = data;
  if (!aircraft?.dossier) {
    return (
      <Empty title="There is no record to work on here.">
        <p>The aircraft does not exist for you, or your role may not see its record.</p>
        <Link to="/">To the ready board</Link>
      </Empty>
    );
  }
  const slice = (aircraft.catalogue ?? { version: '', types: {} }) as Catalogue;
  return (
    <Bench
      key={aircraft.id}
      aircraft={aircraft}
      dossier={aircraft.dossier as Dossier}
      catalogue={{ ...slice, types: { ...types.all, ...slice.types } }}
      profiles={profiles as readonly Profile[]}
      onReload={async () => (await refetch()).data?.aircraft?.revision ?? null}
    />
  );
}
