import { graphql, type ResultOf, type VariablesOf } from '../../graphql.js';

export const MeterSheetQuery = graphql(`
  query MeterSheet($filter: AircraftFilter, $after: String) {
    meterSheet(filter: $filter, first: 100, after: $after) {
      edges {
        cursor
        node {
          aircraft {
            id
            registration
            base {
              id
              name
              zone
            }
          }
          revision
          hoursPerMonth
          readingGoodForDays
          ownReadingAge
          meters {
            id
            name
            kind
            timeInService
            perFlightHour
            offset
            hours
            asOf
            goodBefore
          }
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

export const RecordReadings = graphql(`
  mutation RecordReadings($input: CommitChangesInput!) {
    commitChanges(input: $input) {
      revision
      firstEntry
      lastEntry
    }
  }
`);

export type SheetRow = ResultOf<typeof MeterSheetQuery>['meterSheet']['edges'][number]['node'];
export type SheetMeter = SheetRow['meters'][number];
export type RecordInput = VariablesOf<typeof RecordReadings>['input'];
