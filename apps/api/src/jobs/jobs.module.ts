import { Module } from '@nestjs/common';
import { AircraftModule } from '../aircraft/aircraft.module.js';
import { RecordService } from '../aircraft/record.service.js';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { JobsResolver } from './jobs.resolver.js';
import { JobsService } from './jobs.service.js';
import { WorkResolver } from './work.resolver.js';
import { WorkService } from './work.service.js';

@Module({
  imports: [AircraftModule],
  providers: [
    JobsResolver,
    WorkResolver,
    {
      provide: JobsService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new JobsService(database, clock),
    },
    {
      provide: WorkService,
      inject: [Database, Clock, RecordService],
      useFactory: (database: Database, clock: Clock, records: RecordService) =>
        new WorkService(database, clock, records),
    },
  ],
})
export class JobsModule {}
