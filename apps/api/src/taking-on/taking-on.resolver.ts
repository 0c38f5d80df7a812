import { Inject } from '@nestjs/common';
import { Args, Context, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { AircraftSummary } from '../fleet/summaries.js';
import type { RequestContext } from '../identity/request.js';
import { TakingOnService } from './taking-on.service.js';

@Resolver('AircraftGaps')
export class TakingOnResolver {
  constructor(@Inject(TakingOnService) private readonly takingOn: TakingOnService) {}

  @Query('takingOn')
  fleet(@Args() ask: Parameters<TakingOnService['fleet']>[1], @Context() context: RequestContext) {
    return this.takingOn.fleet(context.actor, ask);
  }

  @ResolveField()
  visits(@Parent() { aircraft }: { readonly aircraft: AircraftSummary }, @Context() context: RequestContext) {
    return this.takingOn.visits(context.actor, aircraft.id);
  }
}
