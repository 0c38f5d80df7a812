import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { HouseResolver } from './house.resolver.js';
import { HouseService } from './house.service.js';
import { PoliciesResolver } from './policies.resolver.js';
import { PoliciesService } from './policies.service.js';

@Module({
  providers: [
    HouseResolver,
    PoliciesResolver,
    {
      provide: HouseService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new HouseService(database, clock),
    },
    {
      provide: PoliciesService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new PoliciesService(database, clock),
    },
  ],
})
export class HouseModule {}
