import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { LabourResolver } from './labour.resolver.js';
import { LabourService } from './labour.service.js';

@Module({
  providers: [
    LabourResolver,
    {
      provide: LabourService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new LabourService(database, clock),
    },
  ],
})
export class LabourModule {}
