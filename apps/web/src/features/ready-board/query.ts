import { graphql, type ResultOf, type VariablesOf } from '../../graphql.js';

export const ReadyBoardQuery = graphql(`
  query ReadyBoard($profile: ID, $at: Instant, $hoursAhead: Float, $filter: AircraftFilter, $after: String) {
    readyBoard(profile: $profile, at: $at, hoursAhead: $hoursAhead, filter: $filter, first: 60, after: $after) {
      at
      hoursAhead
      profiles {
        id
        name
      }
      counts {
        profile {
          id
          name
        }
        yes
        no
        cannotTell
        judgingAgain
      }
      edges {
        cursor
        node {
          aircraft {
            id
            registration
            make
            model
            operator {
              id
              name
            }
            base {
              id
              name
              zone
            }
          }
          verdicts {
            profile {
              id
            }
            ready
            standing
            by
            because {
              key
              text
            }
            topFt
            changesAt
            hoursLeft
            weakestSource
            judgingAgain
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

/** What stands around the board: the lists for its filter, the news, and the charts. Slower, and not in its way. */
export const AroundTheBoardQuery = graphql(`
  query AroundTheBoard {
    profiles {
      id
      name
    }
    operators {
      id
      name
    }
    bases {
      id
      name
      zone
    }
    changesSince {
      since
      recorded
      aircraft {
        id
        registration
      }
      lapsed {
        id
        text
        aircraft {
          id
          registration
        }
      }
      byTime {
        at
        aircraft {
          id
          registration
          base {
            zone
          }
        }
        text
        profile {
          id
          name
        }
        was
        is
      }
      verdicts {
        aircraft {
          id
          registration
        }
        profile {
          id
          name
        }
        was
        is
      }
    }
    openFindings(weeksBack: 12, weeksAhead: 4) {
      week
      effect
      open
      ahead
    }
    dueByWeek {
      week
      topic
      certain
      projected
    }
  }
`);

export type BoardAnswer = ResultOf<typeof ReadyBoardQuery>['readyBoard'];
export type Around = ResultOf<typeof AroundTheBoardQuery>;
export type BoardAsked = VariablesOf<typeof ReadyBoardQuery>;
