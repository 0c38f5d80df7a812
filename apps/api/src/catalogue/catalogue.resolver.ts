import { Inject } from '@nestjs/common';
import { Args, Context, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { CatalogueService } from './catalogue.service.js';

@Resolver()
export class CatalogueResolver {
  constructor(@Inject(CatalogueService) private readonly entries: CatalogueService) {}

  @Query()
  catalogue(@Args() ask: Parameters<CatalogueService['list']>[1], @Context() { actor }: RequestContext) {
    return this.entries.list(actor, ask);
  }

  @Query()
  equipmentType(@Args() { id }: { id: string }, @Context() { actor }: RequestContext) {
    return this.entries.find(actor, id);
  }
}
