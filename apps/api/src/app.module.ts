import { Module } from '@nestjs/common';
import type { DynamicModule } from '@nestjs/common';
import { APP_FILTER, APP_GUARD } from '@nestjs/core';
import { GraphQLModule } from '@nestjs/graphql';
import { ApolloDriver } from '@nestjs/apollo';
import type { ApolloDriverConfig } from '@nestjs/apollo';
import { airspaces, approaches, errands, purposes, topics, visits } from '@tallywing/rules';
import { AircraftModule } from './aircraft/aircraft.module.js';
import { changeEnums } from './aircraft/changes.generated.js';
import { auditTopics } from './audit/audit.data.js';
import { AuditModule } from './audit/audit.module.js';
import { AuditNotes } from './audit/notes.js';
import { CatalogueModule } from './catalogue/catalogue.module.js';
import { Clock } from './common/clock.js';
import { boundedAnswer } from './common/cost.js';
import { formatGraphQLError } from './common/errors.js';
import { statusByContentType } from './common/graphql-over-http.js';
import { boundedOperation, limits } from './common/limits.js';
import { AppLog, correlationId } from './common/logging.js';
import { Metrics } from './common/metrics.js';
import { ProblemFilter } from './common/problem.filter.js';
import { enumValues, scalars } from './common/scalars.js';
import { Database } from './database/database.js';
import { Disk } from './database/disk.js';
import { HouseListener } from './database/listener.js';
import { FleetModule } from './fleet/fleet.module.js';
import { HealthModule } from './health/health.module.js';
import { HistoryModule } from './history/history.module.js';
import { HouseModule } from './house/house.module.js';
import { roles } from './identity/access.js';
import { IdentityModule } from './identity/identity.module.js';
import { OperationsGuard } from './identity/operations.guard.js';
import { contextOf } from './identity/request.js';
import { ImportsModule } from './imports/imports.module.js';
import { importModes, importStates } from './imports/report.js';
import { JobsModule } from './jobs/jobs.module.js';
import { LabourModule } from './labour/labour.module.js';
import { LiveModule } from './live/live.module.js';
import { RulesModule } from './rules/rules.module.js';
import { TakingOnModule } from './taking-on/taking-on.module.js';
import { TransferModule } from './transfer/transfer.module.js';
import { PeopleModule } from './people/people.module.js';
import { sdlPattern } from './settings.js';
import { WorkshopModule } from './workshop/workshop.module.js';

/** What is made before the framework starts and lent to it. */
export interface Foundation {
  readonly database: Database;
  readonly disk: Disk;
  readonly listener: HouseListener;
  readonly log: AppLog;
  readonly clock: Clock;
  readonly metrics: Metrics;
}

@Module({})
export class AppModule {
  static on(foundation: Foundation): DynamicModule {
    const { log } = foundation;
    return {
      module: AppModule,
      imports: [
        {
          module: FoundationModule,
          global: true,
          providers: [
            { provide: Database, useValue: foundation.database },
            { provide: Disk, useValue: foundation.disk },
            { provide: HouseListener, useValue: foundation.listener },
            { provide: AppLog, useValue: log },
            { provide: Clock, useValue: foundation.clock },
            { provide: Metrics, useValue: foundation.metrics },
          ],
          exports: [Database, Disk, HouseListener, AppLog, Clock, Metrics],
        },
        GraphQLModule.forRoot<ApolloDriverConfig>({
          driver: ApolloDriver,
          typePaths: [sdlPattern],
          resolvers: { ...scalars, ...enums },
          context: contextOf,
          validationRules: [boundedOperation],
          plugins: [boundedAnswer, statusByContentType],
          parseOptions: { maxTokens: limits.tokens },
          allowBatchedHttpRequests: false,
          formatError: (formatted, error) => {
            const told = formatGraphQLError(formatted, error, correlationId(), log);
            foundation.metrics.problems.inc({ code: String(told.extensions?.['code']) });
            return told;
          },
          csrfPrevention: true,
          // The schema stands in the open repository; hiding it would keep nobody out.
          introspection: true,
          graphiql: false,
          autoTransformHttpErrors: false,
          includeStacktraceInErrorResponses: false,
        }),
        HealthModule,
        AuditModule,
        IdentityModule,
        PeopleModule,
        HouseModule,
        WorkshopModule,
        AircraftModule,
        FleetModule,
        HistoryModule,
        CatalogueModule,
        JobsModule,
        LabourModule,
        ImportsModule,
        TransferModule,
        TakingOnModule,
        LiveModule,
        RulesModule,
      ],
      providers: [
        { provide: APP_GUARD, useClass: OperationsGuard },
        { provide: APP_FILTER, inject: [AuditNotes], useFactory: (notes: AuditNotes) => new ProblemFilter(log, notes) },
      ],
    };
  }
}

@Module({})
class FoundationModule {}

/** GraphQL spells the core's words in capitals; inside, everything stays in the core's own spelling. */
const enums = Object.fromEntries(
  Object.entries<readonly string[]>({
    ...changeEnums,
    Role: roles,
    AuditTopic: auditTopics,
    Knowledge: ['then', 'now'],
    Topic: topics,
    Ready: ['yes', 'no', 'cannot-tell'],
    Standing: ['judged', 'not-fitted', 'not-wanted', 'not-judged', 'held', 'in-work', 'say-so'],
    Outcome: ['met', 'not-met', 'cannot-tell', 'not-applicable'],
    FindingEffect: ['stops-aircraft', 'stops-operation', 'stops-release', 'record', 'advice'],
    CurrencyState: ['current', 'expired', 'not-yet', 'cannot-tell'],
    ImportMode: importModes,
    ImportState: importStates,
    JobState: ['open', 'in-work', 'stopped', 'released', 'recorded', 'discarded'],
    AsFound: ['in-tolerance', 'out-of-tolerance'],
    FlightRules: ['vfr', 'ifr'],
    FlightLight: ['day', 'night'],
    FlightPurpose: purposes,
    FlightErrand: errands,
    Airspace: airspaces,
    Approach: approaches,
    Visit: visits,
  }).map(([name, values]) => [name, enumValues(values)]),
);
