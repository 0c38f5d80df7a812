import { Inject } from '@nestjs/common';
import { Args, Context, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { AircraftRow } from '../aircraft/aircraft.data.js';
import type { RequestContext } from '../identity/request.js';
import { HistoryService } from './history.service.js';
import type { EntryNode, LookBackAsk } from './history.service.js';

@Resolver('Aircraft')
export class HistoryResolver {
  constructor(@Inject(HistoryService) private readonly past: HistoryService) {}

  @ResolveField()
  history(
    @Parent() row: AircraftRow,
    @Args() ask: { first?: number | null; after?: string | null; from?: number | null },
    @Context() { actor }: RequestContext,
  ) {
    return this.past.history(actor, row, ask);
  }

  @ResolveField()
  shown(@Parent() row: AircraftRow, @Args() { entry }: { entry: number }, @Context() { actor }: RequestContext) {
    return this.past.shown(actor, row, entry);
  }

  @ResolveField()
  asItStood(@Parent() row: AircraftRow, @Args() ask: LookBackAsk, @Context() { actor }: RequestContext) {
    return this.past.asItStood(actor, row, ask);
  }
}

@Resolver('Entry')
export class EntryResolver {
  constructor(@Inject(HistoryService) private readonly past: HistoryService) {}

  @ResolveField()
  async differences(@Parent() entry: EntryNode, @Context() { actor }: RequestContext) {
    return (await this.past.changed(actor, entry)).differences;
  }

  @ResolveField()
  async names(@Parent() entry: EntryNode, @Context() { actor }: RequestContext) {
    return (await this.past.changed(actor, entry)).names;
  }

  @ResolveField()
  effect(@Parent() entry: EntryNode, @Context() { actor }: RequestContext) {
    return this.past.effect(actor, entry);
  }
}
