import { graphql, type ResultOf } from '../../graphql.js';

export const HouseListsQuery = graphql(`
  query HouseLists {
    house {
      operators {
        id
        name
        revision
        aircraft
      }
      bases {
        id
        name
        zone
        revision
        aircraft
        otherZone
      }
      profiles {
        id
        name
        wanted
        conditions
        revision
      }
    }
  }
`);

type Lists = ResultOf<typeof HouseListsQuery>['house'];
export type Operator = Lists['operators'][number];
export type Base = Lists['bases'][number];
export type Profile = Lists['profiles'][number];

export const HousePoliciesQuery = graphql(`
  query HousePolicies {
    housePolicies {
      kind
      version
      inForce
      versions {
        version
        from
        body
        reason
        setBy
        setAt
      }
    }
  }
`);

export type HousePolicy = ResultOf<typeof HousePoliciesQuery>['housePolicies'][number];

export const SetHousePolicyMutation = graphql(`
  mutation SetHousePolicy($input: SetHousePolicyInput!) {
    setHousePolicy(input: $input) {
      kind
      version
    }
  }
`);

export const HouseEntriesQuery = graphql(`
  query HouseEntries($after: String) {
    houseEntries(first: 30, after: $after) {
      edges {
        cursor
        node {
          id
          at
          by
          kind
          subject {
            kind
            id
            name
          }
          before
          after
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

export const AddOperatorMutation = graphql(`
  mutation AddOperator($name: String!) {
    addOperator(name: $name) {
      id
    }
  }
`);

export const RenameOperatorMutation = graphql(`
  mutation RenameOperator($input: RenameOperatorInput!) {
    renameOperator(input: $input) {
      id
    }
  }
`);

export const AddBaseMutation = graphql(`
  mutation AddBase($name: String!, $zone: String!) {
    addBase(name: $name, zone: $zone) {
      id
    }
  }
`);

export const AmendBaseMutation = graphql(`
  mutation AmendBase($input: AmendBaseInput!) {
    amendBase(input: $input) {
      id
    }
  }
`);

export const AddFlightProfileMutation = graphql(`
  mutation AddFlightProfile($input: NewFlightProfileInput!) {
    addFlightProfile(input: $input) {
      id
    }
  }
`);

export const AmendFlightProfileMutation = graphql(`
  mutation AmendFlightProfile($input: AmendFlightProfileInput!) {
    amendFlightProfile(input: $input) {
      id
    }
  }
`);

export const OrderFlightProfilesMutation = graphql(`
  mutation OrderFlightProfiles($ids: [ID!]!) {
    orderFlightProfiles(ids: $ids) {
      id
    }
  }
`);

export const AuditQuery = graphql(`
  query Audit($filter: AuditFilter, $after: String) {
    audit(filter: $filter, first: 50, after: $after) {
      edges {
        cursor
        node {
          id
          at
          by
          kind
          subject {
            kind
            id
            name
          }
          before
          after
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

export type AuditEntry = ResultOf<typeof AuditQuery>['audit']['edges'][number]['node'];

export const AuditPeopleQuery = graphql(`
  query AuditPeople {
    people {
      id
      name
    }
  }
`);
