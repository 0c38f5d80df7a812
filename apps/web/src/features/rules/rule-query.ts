import { graphql, type ResultOf } from '../../graphql.js';

export const RuleQuery = graphql(`
  query Rule($id: ID!, $ruleId: String!) {
    rule(id: $id) {
      entry {
        id
        topic
        asks
        binds
        establishes
        sources {
          document
          paragraph
          edition
          status
        }
      }
      messages {
        id
        text
      }
      costs {
        stops
        capability
        ofUnit
        kind
      }
      values {
        label
        amount
        unit
        source {
          document
          paragraph
          edition
          status
        }
      }
      cases {
        name
        outcome
        text
      }
    }
    findings(filter: { ruleId: $ruleId }, first: 100) {
      totalCount
      edges {
        node {
          id
          outcome
          effect
          text
          subjectName
          opensAt
          aircraft {
            id
            registration
            base {
              zone
            }
          }
        }
      }
    }
  }
`);

type Answer = ResultOf<typeof RuleQuery>;
export type RuleDetail = NonNullable<Answer['rule']>;
export type Bitten = Answer['findings'];
