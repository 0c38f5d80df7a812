import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { HouseResolver } from './house.resolver.js';
import { HouseService } from './house.service.js';

@Module({
  providers: [
    HouseResolver,
    {
      provide: HouseService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new HouseService(database, clock),
    },
  ],
})
export class HouseModule {}
