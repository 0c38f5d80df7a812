import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { CatalogueService } from './catalogue.service.js';
import { MovesService } from './moves.service.js';

interface Family {
  readonly family: string;
}

@Resolver('EquipmentType')
export class CatalogueResolver {
  constructor(
    @Inject(CatalogueService) private readonly entries: CatalogueService,
    @Inject(MovesService) private readonly moves: MovesService,
  ) {}

  @Query()
  catalogue(@Args() ask: Parameters<CatalogueService['list']>[1], @Context() { actor }: RequestContext) {
    return this.entries.list(actor, ask);
  }

  @Query()
  equipmentType(@Args() { id }: { id: string }, @Context() { actor }: RequestContext) {
    return this.entries.find(actor, id);
  }

  @Query()
  previewType(
    @Args() { input }: { input: Parameters<MovesService['preview']>[1] },
    @Context() { actor }: RequestContext,
  ) {
    return this.moves.preview(actor, input);
  }

  @Query()
  movingTo(@Args() { typeId }: { typeId: string }, @Context() { actor }: RequestContext) {
    return this.moves.movingTo(actor, typeId);
  }

  @Mutation()
  enterType(
    @Args() { input }: { input: Parameters<CatalogueService['enter']>[1] },
    @Context() { actor }: RequestContext,
  ) {
    return this.entries.enter(actor, input);
  }

  @Mutation()
  reviseType(
    @Args() { input }: { input: Parameters<CatalogueService['revise']>[1] },
    @Context() { actor }: RequestContext,
  ) {
    return this.entries.revise(actor, input);
  }

  @ResolveField()
  versions(@Parent() { family }: Family, @Context() { actor }: RequestContext) {
    return this.entries.versions(actor, family);
  }

  @ResolveField()
  fitted(@Parent() { family }: Family, @Context() { actor }: RequestContext) {
    return this.entries.fitted(actor, family);
  }
}
