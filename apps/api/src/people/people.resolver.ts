import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { OwnPasswordService } from './own-password.service.js';
import { PeopleService } from './people.service.js';
import type { Seen } from './people.service.js';
import { SessionsService } from './sessions.service.js';

type Input<Method extends 'add' | 'amend' | 'setPassword'> = Parameters<PeopleService[Method]>[1];

@Resolver()
export class PeopleResolver {
  constructor(
    @Inject(PeopleService) private readonly service: PeopleService,
    @Inject(SessionsService) private readonly signedIn: SessionsService,
    @Inject(OwnPasswordService) private readonly ownPassword: OwnPasswordService,
  ) {}

  @Query()
  people(@Context() context: RequestContext) {
    return this.service.list(context.actor);
  }

  @Query()
  mySessions(@Context() context: RequestContext) {
    return this.signedIn.mine(context.signedIn);
  }

  @Query()
  sessions(@Context() context: RequestContext) {
    return this.signedIn.all(context.signedIn);
  }

  @Mutation()
  addPerson(@Args('input') input: Input<'add'>, @Context() context: RequestContext) {
    return this.service.add(context.actor, input);
  }

  @Mutation()
  amendPerson(@Args('input') input: Input<'amend'>, @Context() context: RequestContext) {
    return this.service.amend(context.actor, input);
  }

  @Mutation()
  setPassword(@Args('input') input: Input<'setPassword'>, @Context() context: RequestContext) {
    return this.service.setPassword(context.actor, input);
  }

  @Mutation()
  deactivatePerson(@Args('input') input: Seen, @Context() context: RequestContext) {
    return this.service.setActive(context.actor, input, false);
  }

  @Mutation()
  reactivatePerson(@Args('input') input: Seen, @Context() context: RequestContext) {
    return this.service.setActive(context.actor, input, true);
  }

  @Mutation()
  endSession(@Args('id') id: string, @Context() context: RequestContext) {
    return this.signedIn.end(context.actor, id);
  }

  @Mutation()
  changeMyPassword(@Args('input') input: { current: string; next: string }, @Context() context: RequestContext) {
    return this.ownPassword.change(context.signedIn, input, context.request.ip ?? 'unknown');
  }

  @Mutation()
  endOtherSessions(@Context() context: RequestContext) {
    return this.signedIn.endOthers(context.signedIn);
  }

  @Mutation()
  endSessionsOf(@Args('personId') personId: string, @Context() context: RequestContext) {
    return this.signedIn.endAllOf(context.actor, personId);
  }
}
