import { useQuery } from '@apollo/client/react';
import type { Catalogue, Dossier } from '@tallywing/rules';
import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { graphql, type ResultOf } from '../graphql.js';
import type { Profile } from '../trade/effect.js';
import { Empty, Loading, Trouble } from '../ui/states.js';
import { useEquipmentTypes } from './equipment-types.js';
import { problemOf } from './problem.js';

const AircraftRecordQuery = graphql(`
  query AircraftRecord($id: ID!) {
    aircraft(id: $id) {
      id
      registration
      make
      model
      base {
        id
        name
        zone
      }
      revision
      dossier
      catalogue
    }
    profiles {
      id
      name
      conditions
    }
  }
`);

/** All that judging a change in this browser takes. */
export interface AircraftRecord {
  readonly aircraft: NonNullable<ResultOf<typeof AircraftRecordQuery>['aircraft']>;
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly profiles: readonly Profile[];
  /** Loads the record again and gives its entry number. */
  readonly reload: () => Promise<number | null>;
}

export interface WithAircraftRecordProps {
  readonly id: string;
  /** What one cannot do where there is no record to see: 'work on'. */
  readonly doing: string;
  /** Where to go then. */
  readonly back: { readonly to: string; readonly words: string };
  readonly children: (record: AircraftRecord) => ReactNode;
}

/** Shows what needs the whole record of an aircraft and the catalogue, once both are here. */
export function WithAircraftRecord({ id, doing, back, children }: WithAircraftRecordProps) {
  const { data, error, refetch } = useQuery(AircraftRecordQuery, {
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
      <Empty title={`There is no record to ${doing} here.`}>
        <p>The aircraft does not exist for you, or your role may not see its record.</p>
        <Link to={back.to}>{back.words}</Link>
      </Empty>
    );
  }
  const slice = (aircraft.catalogue ?? { version: '', types: {} }) as Catalogue;
  return children({
    aircraft,
    dossier: aircraft.dossier as Dossier,
    catalogue: { ...slice, types: { ...types.all, ...slice.types } },
    profiles: profiles as readonly Profile[],
    reload: async () => (await refetch()).data?.aircraft?.revision ?? null,
  });
}
