import { Inject } from '@nestjs/common';
import { installedNames } from '@tallywing/rules';
import { Args, Context, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { AppError } from '../common/errors.js';
import { instantOf } from '../common/clock.js';
import type { RequestContext } from '../identity/request.js';
import type { AircraftRow } from './aircraft.data.js';
import { dossierOf } from './aircraft.data.js';
import { AircraftService } from './aircraft.service.js';
import { readChangeInput } from './change-inputs.js';
import { RecordService } from './record.service.js';

interface CommitInput {
  readonly aircraftId: string;
  readonly expectedRevision: number;
  readonly key: string;
  readonly changes: readonly Readonly<Record<string, unknown>>[];
  readonly jobId?: string | null;
}

interface Moment {
  readonly at?: string | null;
  readonly hoursAhead?: number | null;
}

@Resolver('Aircraft')
export class AircraftResolver {
  constructor(
    @Inject(AircraftService) private readonly aircraftService: AircraftService,
    @Inject(RecordService) private readonly records: RecordService,
  ) {}

  @Query()
  aircraft(@Args() { id }: { id: string }, @Context() { actor }: RequestContext) {
    return this.aircraftService.find(actor, id);
  }

  @Mutation()
  async commitChanges(@Args() { input }: { input: CommitInput }, @Context() { actor }: RequestContext) {
    const recorded = await this.records.commit(actor, { ...input, changes: input.changes.map(readChangeInput) });
    const aircraft = await this.aircraftService.find(actor, recorded.aircraftId);
    if (aircraft === null) throw new AppError({ code: 'NOT_FOUND', what: 'aircraft', field: 'input.aircraftId' });
    const profiles = await this.aircraftService.profiles(actor);
    return {
      ...recorded,
      aircraft,
      verdicts: recorded.verdicts.flatMap(({ profileId, was, is }) => {
        const profile = profiles.find((each) => each.id === profileId);
        return profile ? [{ profile, was, is }] : [];
      }),
    };
  }

  @ResolveField()
  serial(@Parent() row: AircraftRow) {
    return row.configuration.aircraft.serial;
  }

  @ResolveField()
  base(@Parent() row: AircraftRow) {
    return row.configuration.aircraft.base;
  }

  @ResolveField()
  operator(@Parent() row: AircraftRow, @Context() { actor }: RequestContext) {
    return row.operator_id === null ? null : this.aircraftService.house(actor, row);
  }

  @ResolveField()
  updatedAt(@Parent() row: AircraftRow) {
    return instantOf(row.updated_at);
  }

  @ResolveField()
  judgingAgain(@Parent() row: AircraftRow, @Context() { actor }: RequestContext) {
    return this.aircraftService.judgingAgain(actor, row);
  }

  @ResolveField()
  verdicts(@Parent() row: AircraftRow, @Args() ask: Moment, @Context() { actor }: RequestContext) {
    return this.aircraftService.verdicts(actor, row, ask.at, ask.hoursAhead);
  }

  @ResolveField()
  line(@Parent() row: AircraftRow, @Args() { profile }: { profile: string }, @Context() { actor }: RequestContext) {
    return this.aircraftService.line(actor, row, profile);
  }

  @ResolveField()
  findings(@Parent() row: AircraftRow, @Args() ask: Moment, @Context() { actor }: RequestContext) {
    return this.aircraftService.findings(actor, row, ask.at, ask.hoursAhead);
  }

  @ResolveField()
  reason(
    @Parent() row: AircraftRow,
    @Args() ask: { key: string; profile?: string | null } & Moment,
    @Context() { actor }: RequestContext,
  ) {
    return this.aircraftService.reason(actor, row, ask.key, ask.profile, ask.at, ask.hoursAhead);
  }

  @ResolveField()
  findOut(
    @Parent() row: AircraftRow,
    @Args() { profile }: { profile?: string | null },
    @Context() { actor }: RequestContext,
  ) {
    return this.aircraftService.findOut(actor, row, profile);
  }

  @ResolveField()
  wayBack(@Parent() row: AircraftRow, @Args() ask: { profile: string } & Moment, @Context() { actor }: RequestContext) {
    return this.aircraftService.wayBack(actor, row, ask.profile, ask.at, ask.hoursAhead);
  }

  @ResolveField()
  due(@Parent() row: AircraftRow, @Context() { actor }: RequestContext) {
    return this.aircraftService.due(actor, row);
  }

  @ResolveField()
  databases(@Parent() row: AircraftRow, @Context() { actor }: RequestContext) {
    return this.aircraftService.databases(actor, row);
  }

  @ResolveField()
  names(@Parent() row: AircraftRow) {
    return installedNames(dossierOf(row).configuration);
  }

  @ResolveField()
  meters(@Parent() row: AircraftRow) {
    const { meters } = dossierOf(row);
    return meters.definitions.map(({ id, name, kind }) => ({
      id,
      name,
      kind,
      hours: meters.readings[id] === undefined ? null : meters.readings[id].value / 100,
      asOf: meters.readings[id]?.asOf ?? null,
      timeInService: meters.timeInService === id,
    }));
  }

  @ResolveField()
  dossier(@Parent() row: AircraftRow, @Context() { actor }: RequestContext) {
    return this.aircraftService.dossier(actor, row);
  }

  @ResolveField()
  catalogue(@Parent() row: AircraftRow, @Context() { actor }: RequestContext) {
    return this.aircraftService.catalogue(actor, row);
  }
}
