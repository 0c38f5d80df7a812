import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { PoliciesService } from './policies.service.js';
import type { SetPolicy } from './policies.service.js';

@Resolver()
export class PoliciesResolver {
  constructor(@Inject(PoliciesService) private readonly policies: PoliciesService) {}

  @Query()
  housePolicies(@Context() { actor }: RequestContext) {
    return this.policies.list(actor);
  }

  @Mutation()
  setHousePolicy(@Args() { input }: { input: SetPolicy }, @Context() { actor }: RequestContext) {
    return this.policies.set(actor, input);
  }
}
