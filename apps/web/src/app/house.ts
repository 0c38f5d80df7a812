import { useQuery } from '@apollo/client/react';
import { graphql, type ResultOf } from '../graphql.js';

/** Operators and bases of the house, for filters. */
export const HouseQuery = graphql(`
  query House {
    operators {
      id
      name
    }
    bases {
      id
      name
      zone
    }
  }
`);

export type House = ResultOf<typeof HouseQuery>;

export function useHouse(): House {
  const { data } = useQuery(HouseQuery, { fetchPolicy: 'cache-first' });
  return data ?? { operators: [], bases: [] };
}

/** The zone that times without an aircraft are shown in: of the chosen base, else of the first. */
export function zoneOf(house: Pick<House, 'bases'>, baseId: string): string {
  return (house.bases.find((base) => base.id === baseId) ?? house.bases[0])?.zone ?? 'UTC';
}
