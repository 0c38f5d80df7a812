import { graphql, type ResultOf } from '../../graphql.js';

export const CatalogueQuery = graphql(`
  query Catalogue($filter: CatalogueFilter, $after: String) {
    catalogue(filter: $filter, first: 50, after: $after) {
      edges {
        cursor
        node {
          id
          maker
          name
          partNumber
          document
          revision
          functions
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

/** One version with all there is to say of its product. */
export const TypeQuery = graphql(`
  query EquipmentTypePage($id: ID!) {
    equipmentType(id: $id) {
      id
      family
      maker
      name
      partNumber
      document
      revision
      supersededBy
      enteredAt
      enteredBy
      body
      versions {
        id
        document
        revision
        enteredAt
        enteredBy
        current
      }
      fitted {
        total
        units {
          aircraft {
            id
            registration
          }
          unitId
          name
          serial
          typeId
        }
      }
    }
  }
`);

/** A version as the editor takes it up. Versions never change, but which is in force does. */
export const EntryQuery = graphql(`
  query EntryToEdit($id: ID!) {
    equipmentType(id: $id) {
      id
      family
      maker
      name
      body
      versions {
        id
        document
        revision
        enteredAt
        enteredBy
        current
      }
    }
  }
`);

/** Products that a pair may name. */
export const FamiliesQuery = graphql(`
  query Families {
    catalogue(first: 500) {
      edges {
        cursor
        node {
          id
          family
          maker
          name
        }
      }
    }
  }
`);

const MoveParts = graphql(`
  fragment MoveParts on MoveEffect @_unmask {
    total
    aircraft {
      aircraft {
        id
        registration
      }
      units {
        unitId
        name
        typeId
      }
      verdicts {
        profile {
          id
          name
        }
        was
        is
      }
      capabilities {
        capability
        was
        is
      }
      opened {
        key
        outcome
        text
      }
      closed {
        key
        outcome
        text
      }
      refused
    }
  }
`);

export const PreviewQuery = graphql(
  `
    query PreviewEntry($input: PreviewTypeInput!) {
      previewType(input: $input) {
        remarks {
          field
          text
        }
        effect {
          ...MoveParts
        }
      }
    }
  `,
  [MoveParts],
);

export const MovingQuery = graphql(
  `
    query MovingTo($typeId: ID!) {
      movingTo(typeId: $typeId) {
        ...MoveParts
      }
    }
  `,
  [MoveParts],
);

export const EnterMutation = graphql(`
  mutation EnterEntry($input: EnterTypeInput!) {
    enterType(input: $input) {
      id
    }
  }
`);

export const ReviseMutation = graphql(`
  mutation ReviseEntry($input: ReviseTypeInput!) {
    reviseType(input: $input) {
      id
    }
  }
`);

export type ListedType = ResultOf<typeof CatalogueQuery>['catalogue']['edges'][number]['node'];
export type TypePage = NonNullable<ResultOf<typeof TypeQuery>['equipmentType']>;
export type EntryToEdit = NonNullable<ResultOf<typeof EntryQuery>['equipmentType']>;
export type Preview = ResultOf<typeof PreviewQuery>['previewType'];
export type MoveEffect = ResultOf<typeof MovingQuery>['movingTo'];
export type AircraftMove = MoveEffect['aircraft'][number];
