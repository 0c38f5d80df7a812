import { graphql, type ResultOf } from '../../graphql.js';

export const HistoryQuery = graphql(`
  query History($id: ID!, $from: Int, $after: String) {
    aircraft(id: $id) {
      id
      registration
      make
      model
      base {
        id
        zone
      }
      history(first: 25, after: $after, from: $from) {
        edges {
          cursor
          node {
            number
            kind
            recordedAt
            by
            certificate {
              kind
              number
              ratings
            }
            day
            dayAt
            job
            takenInFrom
            firstTogether
            lastTogether
            corrects
            correctedBy
            body
            names
            differences {
              place
              was
              is
            }
            effect {
              flights {
                flight
                was
                is
              }
              opened {
                subject
                subjectName
                text
              }
              closed {
                subject
                subjectName
                text
              }
              rules
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
  }
`);

export const LookBackQuery = graphql(`
  query LookBack($id: ID!, $at: Instant, $entry: Int, $knowledge: Knowledge) {
    aircraft(id: $id) {
      id
      registration
      make
      model
      base {
        id
        zone
      }
      asItStood(at: $at, entry: $entry, knowledge: $knowledge) {
        at
        knowledge
        entry
        entries
        later
        undated
        dossier
        today {
          rules
          flights {
            flight
            ready
          }
          open {
            ...OpenParts
          }
        }
        shown {
          entry
          at
          rules
          zones
          flights {
            flight
            ready
          }
          open {
            ...OpenParts
          }
          rulesNow
          zonesNow
          flightsDiffer {
            flight
            was
            is
          }
          operationsDiffer {
            flight
            was
            is
          }
          capabilitiesDiffer {
            capability
            was
            is
          }
          opened {
            ...OpenParts
          }
          closed {
            ...OpenParts
          }
          changed {
            was {
              ...OpenParts
            }
            is {
              ...OpenParts
            }
          }
        }
      }
    }
  }

  fragment OpenParts on OpenFinding {
    ruleId
    subject
    subjectName
    outcome
    text
  }
`);

export const ZoneQuery = graphql(`
  query HistoryZone($id: ID!) {
    aircraft(id: $id) {
      id
      base {
        id
        zone
      }
    }
  }
`);

type HistoryAnswer = NonNullable<ResultOf<typeof HistoryQuery>['aircraft']>;
export type EntryAnswer = HistoryAnswer['history']['edges'][number]['node'];
export type LookBackAnswer = NonNullable<NonNullable<ResultOf<typeof LookBackQuery>['aircraft']>['asItStood']>;
export type ShownAnswer = NonNullable<LookBackAnswer['shown']>;
