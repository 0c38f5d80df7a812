import { graphql, type ResultOf } from '../../graphql.js';

export const PeopleQuery = graphql(`
  query People {
    people {
      id
      name
      email
      role
      active
      revision
      operator {
        id
        name
      }
      certificate {
        kind
        number
        ratings
      }
    }
  }
`);

export type Person = ResultOf<typeof PeopleQuery>['people'][number];

export const EverySessionQuery = graphql(`
  query EverySession {
    sessions {
      id
      userAgent
      since
      lastSeen
      here
      person {
        id
        name
      }
    }
  }
`);

export type Session = ResultOf<typeof EverySessionQuery>['sessions'][number];

export const MySessionsQuery = graphql(`
  query MySessions {
    mySessions {
      id
      userAgent
      since
      lastSeen
      here
      person {
        id
        name
      }
    }
  }
`);

export const AddPersonMutation = graphql(`
  mutation AddPerson($input: NewPersonInput!) {
    addPerson(input: $input) {
      id
    }
  }
`);

export const AmendPersonMutation = graphql(`
  mutation AmendPerson($input: AmendPersonInput!) {
    amendPerson(input: $input) {
      id
    }
  }
`);

export const SetPasswordMutation = graphql(`
  mutation SetPassword($input: NewPasswordInput!) {
    setPassword(input: $input) {
      id
    }
  }
`);

export const DeactivatePersonMutation = graphql(`
  mutation DeactivatePerson($input: PersonSeenInput!) {
    deactivatePerson(input: $input) {
      id
    }
  }
`);

export const ReactivatePersonMutation = graphql(`
  mutation ReactivatePerson($input: PersonSeenInput!) {
    reactivatePerson(input: $input) {
      id
    }
  }
`);

export const EndSessionMutation = graphql(`
  mutation EndSession($id: ID!) {
    endSession(id: $id)
  }
`);

export const EndOtherSessionsMutation = graphql(`
  mutation EndOtherSessions {
    endOtherSessions
  }
`);

export const EndSessionsOfMutation = graphql(`
  mutation EndSessionsOf($personId: ID!) {
    endSessionsOf(personId: $personId)
  }
`);

export const ChangeMyPasswordMutation = graphql(`
  mutation ChangeMyPassword($input: MyPasswordInput!) {
    changeMyPassword(input: $input)
  }
`);
