import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { RulesResolver } from './rules.resolver.js';
import { RulesService } from './rules.service.js';

@Module({
  providers: [
    RulesResolver,
    {
      provide: RulesService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new RulesService(database, clock),
    },
  ],
})
export class RulesModule {}
