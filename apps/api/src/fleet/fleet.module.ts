import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { FleetResolver } from './fleet.resolver.js';
import { FleetService } from './fleet.service.js';

@Module({
  providers: [
    FleetResolver,
    {
      provide: FleetService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new FleetService(database, clock),
    },
  ],
  exports: [FleetService],
})
export class FleetModule {}
