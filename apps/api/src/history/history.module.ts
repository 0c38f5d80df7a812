import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { EntryResolver, HistoryResolver } from './history.resolver.js';
import { HistoryService } from './history.service.js';

@Module({
  providers: [
    HistoryResolver,
    EntryResolver,
    {
      provide: HistoryService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new HistoryService(database, clock),
    },
  ],
})
export class HistoryModule {}
