import { Inject } from '@nestjs/common';
import { Args, Context, Query, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import { AuditService } from './audit.service.js';

@Resolver()
export class AuditResolver {
  constructor(@Inject(AuditService) private readonly service: AuditService) {}

  @Query()
  audit(@Args() ask: Parameters<AuditService['list']>[1], @Context() context: RequestContext) {
    return this.service.list(context.actor, ask);
  }
}
