import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { IdentityModule } from '../identity/identity.module.js';
import { SignInThrottle } from '../identity/throttle.js';
import { OwnPasswordService } from './own-password.service.js';
import { PeopleResolver } from './people.resolver.js';
import { PeopleService } from './people.service.js';
import { SessionsService } from './sessions.service.js';

@Module({
  imports: [IdentityModule],
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
    {
      provide: OwnPasswordService,
      inject: [Database, Clock, SignInThrottle],
      useFactory: (database: Database, clock: Clock, throttle: SignInThrottle) =>
        new OwnPasswordService(database, clock, throttle),
    },
  ],
})
export class PeopleModule {}
