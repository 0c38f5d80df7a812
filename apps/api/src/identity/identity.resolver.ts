import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { AppError } from '../common/errors.js';
import { permissions } from './access.js';
import { IdentityService } from './identity.service.js';
import type { SignedIn } from './identity.service.js';
import { clearSessionCookie, setSessionCookie } from './request.js';
import type { RequestContext } from './request.js';

@Resolver('Viewer')
export class IdentityResolver {
  constructor(@Inject(IdentityService) private readonly identity: IdentityService) {}

  @Query()
  viewer(@Context() context: RequestContext): SignedIn | null {
    return context.signedIn;
  }

  @Mutation()
  async signIn(
    @Args() { email, password, organisation }: { email: string; password: string; organisation?: string | null },
    @Context() context: RequestContext,
  ): Promise<SignedIn> {
    const { token, signedIn } = await this.identity.signIn({
      email,
      password,
      organisationId: organisation ?? null,
      address: context.request.ip ?? 'unknown',
      userAgent: context.request.get('user-agent') ?? '',
    });
    setSessionCookie(context, token);
    return signedIn;
  }

  @Mutation()
  async signOut(@Context() context: RequestContext): Promise<boolean> {
    await this.identity.signOut(context.signedIn);
    clearSessionCookie(context);
    return true;
  }

  @ResolveField()
  id(@Parent() viewer: SignedIn): string {
    return viewer.actor.memberId;
  }

  @ResolveField()
  name(@Parent() viewer: SignedIn): string {
    return viewer.actor.name;
  }

  @ResolveField()
  role(@Parent() viewer: SignedIn): string {
    return viewer.actor.role;
  }

  @ResolveField()
  may(@Parent() viewer: SignedIn): readonly string[] {
    return permissions(viewer.actor);
  }

  @ResolveField()
  organisation(@Parent() viewer: SignedIn): { id: string; name: string } {
    return { id: viewer.actor.organisationId, name: viewer.organisationName };
  }

  @ResolveField()
  async operator(@Parent() viewer: SignedIn): Promise<{ id: string; name: string } | null> {
    const id = viewer.actor.operatorId;
    if (id === undefined) return null;
    const name = await this.identity.operatorName(viewer.actor);
    if (name === null) throw new AppError({ code: 'NOT_FOUND', what: 'operator' });
    return { id, name };
  }
}
