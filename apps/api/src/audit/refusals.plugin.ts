import type { ApolloServerPlugin } from '@apollo/server';
import { Inject } from '@nestjs/common';
import { Plugin } from '@nestjs/apollo';
import { AppError } from '../common/errors.js';
import type { RequestContext } from '../identity/request.js';
import { AuditNotes } from './notes.js';

/** Sees every refusal that GraphQL gives, wherever it was decided. */
@Plugin()
export class RefusalsPlugin implements ApolloServerPlugin<RequestContext> {
  constructor(@Inject(AuditNotes) private readonly notes: AuditNotes) {}

  requestDidStart() {
    return Promise.resolve({
      didEncounterErrors: ({ contextValue: { actor }, errors }: Encountered) => {
        for (const { originalError, path } of errors) {
          const problem = originalError instanceof AppError ? originalError.problem : null;
          if (actor !== null && problem?.code === 'FORBIDDEN')
            this.notes.refused(actor, problem.action, path?.filter((part) => typeof part === 'string').join('.') ?? '');
        }
        return Promise.resolve();
      },
    });
  }
}

interface Encountered {
  readonly contextValue: RequestContext;
  readonly errors: readonly {
    readonly originalError?: Error | undefined;
    readonly path?: readonly (string | number)[] | undefined;
  }[];
}
