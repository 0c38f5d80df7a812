import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { instantOf } from '../common/clock.js';
import type { RequestContext } from '../identity/request.js';
import type { ImportRow } from './imports.data.js';
import { ImportsService } from './imports.service.js';
import { allKinds } from './kinds/all.js';

@Resolver('Import')
export class ImportsResolver {
  constructor(@Inject(ImportsService) private readonly imports: ImportsService) {}

  @Query()
  import(@Args('id') id: string, @Context() context: RequestContext): Promise<ImportRow> {
    return this.imports.find(context.actor, id);
  }

  @Query()
  recentImports(@Context() context: RequestContext): Promise<readonly ImportRow[]> {
    return this.imports.recent(context.actor);
  }

  @Query()
  importFormat() {
    return allKinds.map(({ kind, says, keySays, columns }) => ({
      kind,
      says,
      sameRow: keySays,
      columns: Object.entries(columns).map(([name, { form, required, says: meaning }]) => ({
        name,
        required,
        says: meaning,
        written: form.written,
      })),
    }));
  }

  @Mutation()
  stopImport(@Args('id') id: string, @Context() context: RequestContext): Promise<ImportRow> {
    return this.imports.stop(context.actor, id);
  }

  @ResolveField()
  at(@Parent() row: ImportRow): string {
    return instantOf(row.at);
  }
}
