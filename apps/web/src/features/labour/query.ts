import { graphql, type ResultOf } from '../../graphql.js';

const fields = graphql(`
  fragment LabourFields on LabourTable @_unmask {
    version
    setAt
    setBy
    hourly
    currency
    jobs {
      job
      own
      hours {
        low
        typical
        high
      }
      parts
      usual {
        low
        typical
        high
      }
      usualStatus
    }
  }
`);

export const LabourQuery = graphql(
  `
    query Labour {
      labour {
        ...LabourFields
      }
    }
  `,
  [fields],
);

export const SetLabour = graphql(
  `
    mutation SetLabour($input: SetLabourInput!) {
      setLabour(input: $input) {
        ...LabourFields
      }
    }
  `,
  [fields],
);

export type LabourAnswer = ResultOf<typeof fields>;
