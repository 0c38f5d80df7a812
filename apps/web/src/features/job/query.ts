import { graphql, type ResultOf } from '../../graphql.js';

/** Newest entries, to show what somebody else recorded meanwhile. */
export const NewEntriesQuery = graphql(`
  query NewEntries($id: ID!, $first: Int!) {
    aircraft(id: $id) {
      id
      newest: history(first: $first) {
        edges {
          cursor
          node {
            number
            kind
            recordedAt
            by
            body
            names
          }
        }
      }
    }
  }
`);

export const CommitMutation = graphql(`
  mutation RecordWork($input: CommitChangesInput!) {
    commitChanges(input: $input) {
      revision
      firstEntry
      lastEntry
      opened
      closed
      verdicts {
        profile {
          id
          name
        }
        was
        is
      }
      aircraft {
        id
        revision
      }
    }
  }
`);

export const PlansQuery = graphql(`
  query KeptPlans($aircraftId: ID!) {
    jobs(aircraftId: $aircraftId) {
      id
      title
      revision
      draftSchema
      draft
      createdBy
      updatedAt
      state
      startedAt
      startedBy
      openAtStart
      endedBecause
    }
  }
`);

export const StartJobMutation = graphql(`
  mutation StartJob($input: StartJobInput!) {
    startJob(input: $input) {
      id
      state
    }
  }
`);

export const StopJobMutation = graphql(`
  mutation StopJob($input: StopJobInput!) {
    stopJob(input: $input) {
      id
      state
    }
  }
`);

export const ReleaseJobMutation = graphql(`
  mutation ReleaseJob($input: ReleaseJobInput!) {
    releaseJob(input: $input) {
      id
      state
    }
  }
`);

export const CreatePlanMutation = graphql(`
  mutation CreatePlan($input: CreateJobInput!) {
    createJob(input: $input) {
      id
    }
  }
`);

export const SavePlanMutation = graphql(`
  mutation SavePlan($input: SaveDraftInput!) {
    saveDraft(input: $input) {
      id
      title
      revision
      draftSchema
      draft
      updatedAt
    }
  }
`);

export const DiscardPlanMutation = graphql(`
  mutation DiscardPlan($id: ID!) {
    discardJob(id: $id) {
      id
      state
    }
  }
`);

export type NewEntry = NonNullable<ResultOf<typeof NewEntriesQuery>['aircraft']>['newest']['edges'][number]['node'];
export type Recorded = ResultOf<typeof CommitMutation>['commitChanges'];
export type KeptPlan = ResultOf<typeof PlansQuery>['jobs'][number];
