import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { JobsResolver } from './jobs.resolver.js';
import { JobsService } from './jobs.service.js';

@Module({
  providers: [
    JobsResolver,
    {
      provide: JobsService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new JobsService(database, clock),
    },
  ],
})
export class JobsModule {}
