import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { HouseService } from './house.service.js';

type Input<Method extends 'entries' | 'addBase' | 'renameOperator' | 'amendBase' | 'addProfile' | 'amendProfile'> =
  Parameters<HouseService[Method]>[1];

@Resolver()
export class HouseResolver {
  constructor(@Inject(HouseService) private readonly service: HouseService) {}

  @Query()
  house(@Context() context: RequestContext) {
    return this.service.lists(context.actor);
  }

  @Query()
  houseEntries(@Args() ask: Input<'entries'>, @Context() context: RequestContext) {
    return this.service.entries(context.actor, ask);
  }

  @Mutation()
  addOperator(@Args('name') name: string, @Context() context: RequestContext) {
    return this.service.addOperator(context.actor, { name });
  }

  @Mutation()
  renameOperator(@Args('input') input: Input<'renameOperator'>, @Context() context: RequestContext) {
    return this.service.renameOperator(context.actor, input);
  }

  @Mutation()
  addBase(@Args() input: Input<'addBase'>, @Context() context: RequestContext) {
    return this.service.addBase(context.actor, input);
  }

  @Mutation()
  amendBase(@Args('input') input: Input<'amendBase'>, @Context() context: RequestContext) {
    return this.service.amendBase(context.actor, input);
  }

  @Mutation()
  addFlightProfile(@Args('input') input: Input<'addProfile'>, @Context() context: RequestContext) {
    return this.service.addProfile(context.actor, input);
  }

  @Mutation()
  amendFlightProfile(@Args('input') input: Input<'amendProfile'>, @Context() context: RequestContext) {
    return this.service.amendProfile(context.actor, input);
  }

  @Mutation()
  orderFlightProfiles(@Args('ids') ids: readonly string[], @Context() context: RequestContext) {
    return this.service.orderProfiles(context.actor, ids);
  }
}
