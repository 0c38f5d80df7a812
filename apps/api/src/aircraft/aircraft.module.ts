import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Metrics } from '../common/metrics.js';
import { Database } from '../database/database.js';
import { AircraftResolver } from './aircraft.resolver.js';
import { AircraftService } from './aircraft.service.js';
import { HoldsResolver } from './holds.resolver.js';
import { HoldsService } from './holds.service.js';
import { RecordService } from './record.service.js';
import { SaySoService } from './say-so.service.js';

@Module({
  providers: [
    AircraftResolver,
    HoldsResolver,
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
    {
      provide: HoldsService,
      inject: [Database, Clock, RecordService],
      useFactory: (database: Database, clock: Clock, records: RecordService) =>
        new HoldsService(database, clock, records),
    },
    {
      provide: SaySoService,
      inject: [Database, Clock, RecordService],
      useFactory: (database: Database, clock: Clock, records: RecordService) =>
        new SaySoService(database, clock, records),
    },
  ],
  exports: [AircraftService, RecordService],
})
export class AircraftModule {}
