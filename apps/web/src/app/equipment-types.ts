import { useQuery } from '@apollo/client/react';
import type { EquipmentType } from '@tallywing/rules';
import { useEffect } from 'react';
import { graphql } from '../graphql.js';

/** Equipment types to choose from, page by page. */
const TypesQuery = graphql(`
  query TypesToFit($after: String) {
    catalogue(first: 100, after: $after) {
      edges {
        cursor
        node {
          id
          body
        }
      }
      pageInfo {
        hasNextPage
        endCursor
      }
    }
  }
`);

/** All equipment types, by id. Comes in pages; the form waits for the last. */
export function useEquipmentTypes(): { all: Readonly<Record<string, EquipmentType>> | null; error: boolean } {
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
