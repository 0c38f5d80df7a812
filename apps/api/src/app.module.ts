import { Module } from '@nestjs/common';
import type { DynamicModule } from '@nestjs/common';
import { APP_FILTER } from '@nestjs/core';
import { GraphQLModule } from '@nestjs/graphql';
import { ApolloDriver } from '@nestjs/apollo';
import type { ApolloDriverConfig } from '@nestjs/apollo';
import { Clock } from './common/clock.js';
import { formatGraphQLError } from './common/errors.js';
import { boundedOperation } from './common/limits.js';
import { AppLog, correlationId } from './common/logging.js';
import { Metrics } from './common/metrics.js';
import { ProblemFilter } from './common/problem.filter.js';
import { enumValues, scalars } from './common/scalars.js';
import { Database } from './database/database.js';
import { HealthController } from './health/health.controller.js';
import { roles } from './identity/access.js';
import { IdentityModule } from './identity/identity.module.js';
import { contextOf } from './identity/request.js';
import { sdlPattern } from './settings.js';

/** What is made before the framework starts and lent to it. */
export interface Foundation {
  readonly database: Database;
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
            { provide: AppLog, useValue: log },
            { provide: Clock, useValue: foundation.clock },
            { provide: Metrics, useValue: foundation.metrics },
          ],
          exports: [Database, AppLog, Clock, Metrics],
        },
        GraphQLModule.forRoot<ApolloDriverConfig>({
          driver: ApolloDriver,
          typePaths: [sdlPattern],
          resolvers: { ...scalars, Role: enumValues(roles) },
          context: contextOf,
          validationRules: [boundedOperation],
          formatError: (formatted, error) => formatGraphQLError(formatted, error, correlationId(), log),
          csrfPrevention: true,
          introspection: true,
          graphiql: false,
          autoTransformHttpErrors: false,
          includeStacktraceInErrorResponses: false,
        }),
        IdentityModule,
      ],
      controllers: [HealthController],
      providers: [{ provide: APP_FILTER, useValue: new ProblemFilter(log) }],
    };
  }
}

@Module({})
class FoundationModule {}
