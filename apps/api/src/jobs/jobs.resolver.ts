import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { JobsService } from './jobs.service.js';

@Resolver()
export class JobsResolver {
  constructor(@Inject(JobsService) private readonly planned: JobsService) {}

  @Query()
  jobs(@Args() { aircraftId }: { aircraftId?: string | null }, @Context() { actor }: RequestContext) {
    return this.planned.list(actor, aircraftId ?? null);
  }

  @Query()
  job(@Args() { id }: { id: string }, @Context() { actor }: RequestContext) {
    return this.planned.find(actor, id);
  }

  @Mutation()
  createJob(@Args() { input }: { input: Parameters<JobsService['create']>[1] }, @Context() { actor }: RequestContext) {
    return this.planned.create(actor, input);
  }

  @Mutation()
  saveDraft(@Args() { input }: { input: Parameters<JobsService['save']>[1] }, @Context() { actor }: RequestContext) {
    return this.planned.save(actor, input);
  }

  @Mutation()
  discardJob(@Args() { id }: { id: string }, @Context() { actor }: RequestContext) {
    return this.planned.discard(actor, id);
  }
}
