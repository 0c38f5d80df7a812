import { graphql, type ResultOf } from '../../graphql.js';

export const TakingOnQuery = graphql(`
  query TakingOn($filter: AircraftFilter, $after: String) {
    takingOn(filter: $filter, first: 10, after: $after) {
      edges {
        cursor
        node {
          aircraft {
            id
            registration
            make
            model
          }
          openAnswers
          openFlights
          visits {
            visit
            names
            settles
            opens {
              id
              name
            }
            facts {
              fact
              opens
              settles
            }
          }
        }
      }
      pageInfo {
        hasNextPage
        endCursor
      }
      totalCount
      told
      openAnswers
    }
  }
`);

export const RecordFound = graphql(`
  mutation RecordFound($input: CommitChangesInput!) {
    commitChanges(input: $input) {
      revision
      firstEntry
      lastEntry
    }
  }
`);

export type FleetAnswer = ResultOf<typeof TakingOnQuery>['takingOn'];
export type FleetRow = FleetAnswer['edges'][number]['node'];
export type VisitName = FleetRow['visits'][number]['visit'];
