import { initGraphQLTada } from 'gql.tada';
import type { introspection } from './graphql-schema.js';

/** Documents typed from the API's SDL. Run `npm run generate` after the SDL has changed. */
export const graphql = initGraphQLTada<{
  introspection: introspection;
  scalars: {
    ID: string;
    /** UTC minute, 'YYYY-MM-DDTHH:MMZ'. */
    Instant: string;
    /** 'YYYY-MM-DD'. */
    CivilDate: string;
    /** Anything: the dossier and the catalogue slice, typed where they are read. */
    JSON: unknown;
  };
}>();

export type { FragmentOf, ResultOf, VariablesOf } from 'gql.tada';
