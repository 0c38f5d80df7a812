import { graphql, type ResultOf } from '../../graphql.js';

const importFields = graphql(`
  fragment ImportFields on Import @_unmask {
    id
    mode
    state
    by
    at
    progress {
      step
      done
      total
    }
    report {
      files {
        name
        kind
        rows
        good
        bad
        unchanged
      }
      aircraft {
        added
        changed
        unchanged
      }
      changes
      badCount
      bad {
        file
        line
        column
        value
        reason
        wayOut
      }
      differenceCount
      differences {
        file
        line
        registration
        field
        was
        is
        taken
      }
      remarks {
        file
        line
        text
      }
      newOperators
      newTypes
      uncatalogued {
        type
        units
      }
      board {
        profileId
        profile
        yes
        no
        cannotTell
      }
      problem {
        reason
        wayOut
      }
    }
  }
`);

export const ImportQuery = graphql(
  `
    query Import($id: ID!) {
      import(id: $id) {
        ...ImportFields
      }
    }
  `,
  [importFields],
);

export const StopImport = graphql(`
  mutation StopImport($id: ID!) {
    stopImport(id: $id) {
      id
    }
  }
`);

export const ImportFormatQuery = graphql(`
  query ImportFormat {
    importFormat {
      kind
      says
      sameRow
      columns {
        name
        required
        says
        written
      }
    }
  }
`);

export type ImportAnswer = ResultOf<typeof ImportQuery>['import'];
export type Report = NonNullable<ImportAnswer['report']>;
export type Difference = Report['differences'][number];
export type FileKind = ResultOf<typeof ImportFormatQuery>['importFormat'][number];
