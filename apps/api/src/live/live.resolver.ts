import { Inject } from '@nestjs/common';
import { Context, ResolveField, Resolver, Subscription } from '@nestjs/graphql';
import { badInput } from '../common/errors.js';
import type { RequestContext } from '../identity/request.js';
import { LiveService } from './live.service.js';
import type { SocketContext } from './live.socket.js';

@Resolver('Organisation')
export class LiveResolver {
  constructor(@Inject(LiveService) private readonly live: LiveService) {}

  @ResolveField()
  counter(@Context() context: RequestContext): Promise<number> {
    return this.live.counter(context.actor);
  }

  @Subscription('houseChanged', { resolve: changedTo })
  houseChanged(@Context() context: SocketContext) {
    return this.live.follow(context.actor, context.follower);
  }
}

/** What came over the stream, in the form of the schema; by POST there is no stream. */
function changedTo(counter: number | undefined): { counter: number } {
  if (counter === undefined)
    throw badInput('query', 'A subscription is not answered by POST.', 'Open a web socket at the same address.');
  return { counter };
}
