import { graphql, type ResultOf } from '../../graphql.js';

export const AircraftQuery = graphql(`
  query Aircraft($id: ID!, $at: Instant, $hoursAhead: Float) {
    aircraft(id: $id) {
      id
      registration
      make
      model
      serial
      base {
        id
        name
        zone
      }
      operator {
        id
        name
      }
      revision
      updatedAt
      judgingAgain
      verdicts(at: $at, hoursAhead: $hoursAhead) {
        profile {
          id
          name
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
      findings(at: $at, hoursAhead: $hoursAhead) {
        id
        key
        topic
        subjectName
        outcome
        effect
        text
        opensAt
        closesAt
        remedies {
          kind
          change
          subject
          facts
        }
      }
      findOut {
        fact
        subjects
        settles
      }
      due {
        id
        topic
        what
        subject
        subjectName
        effect
        lastGoodDay
        lapses
        meter
        at
        hoursLeft
        projected
        expected
        readingEnds
      }
      holds {
        id
        reason
        by
        from
        until
        open
        job {
          id
          title
        }
        lifted {
          reason
          by
          at
        }
      }
      wantsSaySo {
        result
        text
        status
        mayGive
      }
      sayings {
        id
        result
        by
        reason
        from
        until
        open
      }
      databases {
        id
        unitName
        database
        slot
        cycle
        effective
        expires
      }
      meters {
        id
        name
        kind
        hours
        asOf
        timeInService
      }
      names
      dossier
      catalogue
    }
  }
`);

export const LineQuery = graphql(`
  query AircraftLine($id: ID!, $profile: ID!) {
    aircraft(id: $id) {
      id
      line(profile: $profile) {
        from
        to
        ready
        standing
        because {
          key
          text
        }
        endsBecause {
          key
          text
        }
        projected
      }
    }
  }
`);

export const ReasonQuery = graphql(`
  query AircraftReason($id: ID!, $key: String!, $profile: ID, $at: Instant, $hoursAhead: Float) {
    aircraft(id: $id) {
      id
      reason(key: $key, profile: $profile, at: $at, hoursAhead: $hoursAhead) {
        key
        ruleId
        asks
        clause
        changesAt
        hoursLeft
        remedies {
          kind
          change
          subject
          facts
        }
      }
    }
  }
`);

export const WayBackQuery = graphql(`
  query AircraftWayBack($id: ID!, $profile: ID!, $at: Instant, $hoursAhead: Float) {
    aircraft(id: $id) {
      id
      wayBack(profile: $profile, at: $at, hoursAhead: $hoursAhead) {
        now
        complete
        currency
        ways {
          steps {
            job
            subjects
            change
            facts
            hours {
              low
              typical
              high
            }
          }
          hours {
            low
            typical
            high
          }
          money {
            low
            typical
            high
          }
          assumes
          hoursRestOn
          partsUnknown
          loses
          changesAt
          hoursLeft
        }
      }
    }
  }
`);

export const LatestEntriesQuery = graphql(`
  query LatestEntries($id: ID!) {
    aircraft(id: $id) {
      id
      latest: history(first: 8) {
        edges {
          cursor
          node {
            number
            kind
            recordedAt
            by
            takenInFrom
            body
            names
          }
        }
        totalCount
      }
    }
  }
`);

export const PlaceHoldMutation = graphql(`
  mutation PlaceHold($input: PlaceHoldInput!) {
    placeHold(input: $input) {
      id
    }
  }
`);

export const BeginWorkMutation = graphql(`
  mutation BeginWork($input: BeginWorkInput!) {
    beginWork(input: $input) {
      id
    }
  }
`);

export const LiftHoldMutation = graphql(`
  mutation LiftHold($input: LiftHoldInput!) {
    liftHold(input: $input) {
      id
    }
  }
`);

export const GiveSaySoMutation = graphql(`
  mutation GiveSaySo($input: GiveSaySoInput!) {
    giveSaySo(input: $input) {
      id
    }
  }
`);

export const EndSaySoMutation = graphql(`
  mutation EndSaySo($input: EndSaySoInput!) {
    endSaySo(input: $input) {
      id
    }
  }
`);

export type Hold = NonNullable<ResultOf<typeof AircraftQuery>['aircraft']>['holds'][number];
export type AircraftAnswer = NonNullable<ResultOf<typeof AircraftQuery>['aircraft']>;
export type LineAnswer = NonNullable<ResultOf<typeof LineQuery>['aircraft']>['line'];
export type EntryAnswer = NonNullable<
  ResultOf<typeof LatestEntriesQuery>['aircraft']
>['latest']['edges'][number]['node'];
export type WayBackAnswer = NonNullable<ResultOf<typeof WayBackQuery>['aircraft']>['wayBack'];
