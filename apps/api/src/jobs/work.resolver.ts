import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { WorkService } from './work.service.js';

type Input<Method extends 'start' | 'begin' | 'stop' | 'release'> = Parameters<WorkService[Method]>[1];

@Resolver('Job')
export class WorkResolver {
  constructor(@Inject(WorkService) private readonly work: WorkService) {}

  @ResolveField()
  openAtRelease(@Parent() { id }: { id: string }, @Context() { actor }: RequestContext) {
    return this.work.open(actor, id);
  }

  @Mutation()
  startJob(@Args() { input }: { input: Input<'start'> }, @Context() { actor }: RequestContext) {
    return this.work.start(actor, input);
  }

  @Mutation()
  beginWork(@Args() { input }: { input: Input<'begin'> }, @Context() { actor }: RequestContext) {
    return this.work.begin(actor, input);
  }

  @Mutation()
  stopJob(@Args() { input }: { input: Input<'stop'> }, @Context() { actor }: RequestContext) {
    return this.work.stop(actor, input);
  }

  @Mutation()
  releaseJob(@Args() { input }: { input: Input<'release'> }, @Context() { actor }: RequestContext) {
    return this.work.release(actor, input);
  }
}
