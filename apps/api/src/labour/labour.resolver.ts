import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { LabourService } from './labour.service.js';
import type { SetLabour } from './labour.service.js';

@Resolver()
export class LabourResolver {
  constructor(@Inject(LabourService) private readonly hours: LabourService) {}

  @Query()
  labour(@Context() { actor }: RequestContext) {
    return this.hours.table(actor);
  }

  @Mutation()
  setLabour(@Args() { input }: { input: SetLabour }, @Context() { actor }: RequestContext) {
    return this.hours.set(actor, input);
  }
}
