import { graphql, type ResultOf } from '../../graphql.js';

export const WorkshopQuery = graphql(`
  query Workshop {
    testSets {
      id
      serial
      name
      inUse
      revision
      calibratedUntil
      calibrations {
        id
        checkedOn
        asFound
        goodUntil
        certificate
        struck
      }
    }
    agencies {
      id
      kind
      name
      certificate
      ratings
      heldFrom
      heldUntil
      inUse
      revision
    }
  }
`);

export type TestSet = ResultOf<typeof WorkshopQuery>['testSets'][number];
export type Calibration = TestSet['calibrations'][number];
export type Agency = ResultOf<typeof WorkshopQuery>['agencies'][number];

export const TraceQuery = graphql(`
  query ReverseTrace($calibrationId: ID!, $after: String) {
    reverseTrace(calibrationId: $calibrationId, first: 50, after: $after) {
      from
      to
      totalCount
      testSet {
        id
        name
        serial
      }
      calibration {
        id
        checkedOn
        goodUntil
      }
      pageInfo {
        hasNextPage
        endCursor
      }
      edges {
        cursor
        node {
          number
          kind
          done
          outcome
          signer
          aircraft {
            id
            registration
          }
        }
      }
    }
  }
`);

export type Trace = ResultOf<typeof TraceQuery>['reverseTrace'];

export const AddTestSetMutation = graphql(`
  mutation AddTestSet($serial: String!, $name: String!) {
    addTestSet(serial: $serial, name: $name) {
      id
    }
  }
`);

export const AmendTestSetMutation = graphql(`
  mutation AmendTestSet($input: AmendTestSetInput!) {
    amendTestSet(input: $input) {
      id
    }
  }
`);

export const AddCalibrationMutation = graphql(`
  mutation AddCalibration($input: NewCalibrationInput!) {
    addCalibration(input: $input) {
      id
    }
  }
`);

export const StrikeCalibrationMutation = graphql(`
  mutation StrikeCalibration($input: StrikeCalibrationInput!) {
    strikeCalibration(input: $input) {
      id
    }
  }
`);

export const AddAgencyMutation = graphql(`
  mutation AddAgency($input: NewAgencyInput!) {
    addAgency(input: $input) {
      id
    }
  }
`);

export const AmendAgencyMutation = graphql(`
  mutation AmendAgency($input: AmendAgencyInput!) {
    amendAgency(input: $input) {
      id
    }
  }
`);
