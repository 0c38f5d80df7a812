import { Inject } from '@nestjs/common';
import { Args, Context, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../identity/request.js';
import type { AircraftRow } from './aircraft.data.js';
import { AircraftService } from './aircraft.service.js';
import { HoldsService } from './holds.service.js';
import { SaySoService } from './say-so.service.js';

type Input<Service, Method extends keyof Service> = Service[Method] extends (actor: never, input: infer I) => unknown
  ? I
  : never;

@Resolver('Aircraft')
export class HoldsResolver {
  constructor(
    @Inject(AircraftService) private readonly aircraft: AircraftService,
    @Inject(HoldsService) private readonly service: HoldsService,
    @Inject(SaySoService) private readonly saySos: SaySoService,
  ) {}

  @Mutation()
  async placeHold(@Args() { input }: { input: Input<HoldsService, 'place'> }, @Context() { actor }: RequestContext) {
    return this.aircraft.find(actor, await this.service.place(actor, input));
  }

  @Mutation()
  async liftHold(@Args() { input }: { input: Input<HoldsService, 'lift'> }, @Context() { actor }: RequestContext) {
    return this.aircraft.find(actor, await this.service.lift(actor, input));
  }

  @Mutation()
  async giveSaySo(@Args() { input }: { input: Input<SaySoService, 'give'> }, @Context() { actor }: RequestContext) {
    return this.aircraft.find(actor, await this.saySos.give(actor, input));
  }

  @Mutation()
  async endSaySo(@Args() { input }: { input: Input<SaySoService, 'end'> }, @Context() { actor }: RequestContext) {
    return this.aircraft.find(actor, await this.saySos.end(actor, input));
  }

  @ResolveField()
  holds(@Parent() row: AircraftRow, @Context() { actor }: RequestContext) {
    return this.service.of(actor, row);
  }

  @ResolveField()
  sayings(@Parent() row: AircraftRow, @Context() { actor }: RequestContext) {
    return this.saySos.of(actor, row);
  }

  @ResolveField()
  wantsSaySo(@Parent() row: AircraftRow, @Context() { actor }: RequestContext) {
    return this.saySos.wanted(actor, row);
  }
}
