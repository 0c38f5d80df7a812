import { Inject } from '@nestjs/common';
import { Args, Context, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { RulesService } from './rules.service.js';

@Resolver()
export class RulesResolver {
  constructor(@Inject(RulesService) private readonly rules: RulesService) {}

  @Query()
  ruleBook(@Context() { actor }: RequestContext) {
    return this.rules.ruleBook(actor);
  }

  @Query()
  rule(@Args() { id }: { id: string }, @Context() { actor }: RequestContext) {
    return this.rules.rule(actor, id);
  }
}
