import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Metrics } from '../common/metrics.js';
import { Database } from '../database/database.js';
import { AircraftResolver } from './aircraft.resolver.js';
import { AircraftService } from './aircraft.service.js';
import { RecordService } from './record.service.js';

@Module({
  providers: [
    AircraftResolver,
    {
      provide: AircraftService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new AircraftService(database, clock),
    },
    {
      provide: RecordService,
      inject: [Database, Clock, Metrics],
      useFactory: (database: Database, clock: Clock, metrics: Metrics) => new RecordService(database, clock, metrics),
    },
  ],
  exports: [AircraftService, RecordService],
})
export class AircraftModule {}
