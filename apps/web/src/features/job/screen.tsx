import { useQuery } from '@apollo/client/react';
import type { Catalogue, Dossier, EquipmentType } from '@tallywing/rules';
import { useEffect } from 'react';
import { Link, useParams } from 'react-router';
import { problemOf } from '../../app/problem.js';
import { Empty, Loading, Trouble } from '../../ui/states.js';
import type { Profile } from './effect.js';
import { Bench } from './components/bench.js';
import { JobQuery, TypesQuery } from './query.js';

/** Plans and records work on one aircraft, with its effect beside it before anything is recorded. */
export function JobScreen() {
  const { id = '' } = useParams();
  const { data, error, refetch } = useQuery(JobQuery, {
    variables: { id },
    fetchPolicy: 'network-only',
    nextFetchPolicy: 'cache-first',
  });
  const types = useTypes();
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

/** All equipment types, by id. Comes in pages; the form waits for the last. */
function useTypes(): { all: Readonly<Record<string, EquipmentType>> | null; error: boolean } {
  const { data, error, fetchMore } = useQuery(TypesQuery, { variables: { after: null } });
  const next = data?.catalogue.pageInfo;
  useEffect(() => {
    if (next?.hasNextPage) void fetchMore({ variables: { after: next.endCursor } });
  }, [next?.hasNextPage, next?.endCursor, fetchMore]);
  if (!data || next?.hasNextPage) return { all: null, error: error !== undefined };
  return {
    all: Object.fromEntries(data.catalogue.edges.map(({ node }) => [node.id, node.body as EquipmentType])),
    error: false,
  };
}
