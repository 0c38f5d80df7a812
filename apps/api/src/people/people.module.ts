import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { PeopleResolver } from './people.resolver.js';
import { PeopleService } from './people.service.js';
import { SessionsService } from './sessions.service.js';

@Module({
  providers: [
    PeopleResolver,
    {
      provide: PeopleService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new PeopleService(database, clock),
    },
    {
      provide: SessionsService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new SessionsService(database, clock),
    },
  ],
})
export class PeopleModule {}
