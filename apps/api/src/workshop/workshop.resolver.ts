import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { AgenciesService } from './agencies.service.js';
import { TestSetsService } from './test-sets.service.js';

type SetInput<Method extends 'trace' | 'add' | 'amend' | 'addCalibration' | 'strikeCalibration'> = Parameters<
  TestSetsService[Method]
>[1];
type AgencyInput<Method extends 'add' | 'amend'> = Parameters<AgenciesService[Method]>[1];

@Resolver()
export class WorkshopResolver {
  constructor(
    @Inject(TestSetsService) private readonly sets: TestSetsService,
    @Inject(AgenciesService) private readonly outside: AgenciesService,
  ) {}

  @Query()
  testSets(@Context() context: RequestContext) {
    return this.sets.list(context.actor);
  }

  @Query()
  agencies(@Context() context: RequestContext) {
    return this.outside.list(context.actor);
  }

  @Query()
  workChoices(@Context() context: RequestContext) {
    return this.outside.choices(context.actor);
  }

  @Query()
  reverseTrace(@Args() ask: SetInput<'trace'>, @Context() context: RequestContext) {
    return this.sets.trace(context.actor, ask);
  }

  @Mutation()
  addTestSet(@Args() input: SetInput<'add'>, @Context() context: RequestContext) {
    return this.sets.add(context.actor, input);
  }

  @Mutation()
  amendTestSet(@Args('input') input: SetInput<'amend'>, @Context() context: RequestContext) {
    return this.sets.amend(context.actor, input);
  }

  @Mutation()
  addCalibration(@Args('input') input: SetInput<'addCalibration'>, @Context() context: RequestContext) {
    return this.sets.addCalibration(context.actor, input);
  }

  @Mutation()
  strikeCalibration(@Args('input') input: SetInput<'strikeCalibration'>, @Context() context: RequestContext) {
    return this.sets.strikeCalibration(context.actor, input);
  }

  @Mutation()
  addAgency(@Args('input') input: AgencyInput<'add'>, @Context() context: RequestContext) {
    return this.outside.add(context.actor, input);
  }

  @Mutation()
  amendAgency(@Args('input') input: AgencyInput<'amend'>, @Context() context: RequestContext) {
    return this.outside.amend(context.actor, input);
  }
}
