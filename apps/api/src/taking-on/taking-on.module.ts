import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { TakingOnResolver } from './taking-on.resolver.js';
import { TakingOnService } from './taking-on.service.js';

@Module({
  providers: [
    TakingOnResolver,
    {
      provide: TakingOnService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new TakingOnService(database, clock),
    },
  ],
})
export class TakingOnModule {}
