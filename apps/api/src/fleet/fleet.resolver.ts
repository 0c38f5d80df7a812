import { Inject } from '@nestjs/common';
import { Args, Context, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { FleetService } from './fleet.service.js';

type Ask<Method extends 'board' | 'findings' | 'dueAhead' | 'dueByWeek' | 'databaseCurrency' | 'meterSheet'> =
  Parameters<FleetService[Method]>[1];

@Resolver()
export class FleetResolver {
  constructor(@Inject(FleetService) private readonly fleet: FleetService) {}

  @Query()
  readyBoard(@Args() ask: Ask<'board'>, @Context() context: RequestContext) {
    return this.fleet.board(context.actor, ask);
  }

  @Query()
  findings(@Args() ask: Ask<'findings'>, @Context() context: RequestContext) {
    return this.fleet.findings(context.actor, ask);
  }

  @Query()
  dueAhead(@Args() ask: Ask<'dueAhead'>, @Context() context: RequestContext) {
    return this.fleet.dueAhead(context.actor, ask);
  }

  @Query()
  dueByWeek(@Args() ask: Ask<'dueByWeek'>, @Context() context: RequestContext) {
    return this.fleet.dueByWeek(context.actor, ask);
  }

  @Query()
  databaseCurrency(@Args() ask: Ask<'databaseCurrency'>, @Context() context: RequestContext) {
    return this.fleet.databaseCurrency(context.actor, ask);
  }

  @Query()
  meterSheet(@Args() ask: Ask<'meterSheet'>, @Context() context: RequestContext) {
    return this.fleet.meterSheet(context.actor, ask);
  }

  @Query()
  openFindings(
    @Args() ask: { weeksBack?: number | null; weeksAhead?: number | null },
    @Context() context: RequestContext,
  ) {
    return this.fleet.openFindings(context.actor, ask.weeksBack ?? 12, ask.weeksAhead ?? 12);
  }

  @Query()
  changesSince(@Args() ask: { since?: string | null }, @Context() context: RequestContext) {
    return this.fleet.changesSince(context.actor, ask.since ?? null);
  }

  @Query()
  judging(@Context() context: RequestContext) {
    return this.fleet.judging(context.actor);
  }

  @Query()
  profiles(@Context() context: RequestContext) {
    return this.fleet.profiles(context.actor);
  }

  @Query()
  operators(@Context() context: RequestContext) {
    return this.fleet.operators(context.actor);
  }

  @Query()
  bases(@Context() context: RequestContext) {
    return this.fleet.bases(context.actor);
  }
}
