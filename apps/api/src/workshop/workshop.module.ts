import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { AgenciesService } from './agencies.service.js';
import { TestSetsService } from './test-sets.service.js';
import { WorkshopResolver } from './workshop.resolver.js';

@Module({
  providers: [
    WorkshopResolver,
    {
      provide: TestSetsService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new TestSetsService(database, clock),
    },
    {
      provide: AgenciesService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new AgenciesService(database, clock),
    },
  ],
})
export class WorkshopModule {}
