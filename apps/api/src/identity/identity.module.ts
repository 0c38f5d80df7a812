import { Module } from '@nestjs/common';
import { AuditModule } from '../audit/audit.module.js';
import { AuditNotes } from '../audit/notes.js';
import { Clock } from '../common/clock.js';
import { Metrics } from '../common/metrics.js';
import { Database } from '../database/database.js';
import { IdentityData } from './identity.data.js';
import { IdentityResolver } from './identity.resolver.js';
import { IdentityService } from './identity.service.js';
import { ThrottleData } from './throttle.data.js';
import { SignInThrottle } from './throttle.js';

@Module({
  imports: [AuditModule],
  providers: [
    IdentityResolver,
    { provide: IdentityData, inject: [Database], useFactory: (database: Database) => new IdentityData(database) },
    {
      provide: IdentityService,
      inject: [IdentityData, SignInThrottle, Clock, Metrics, AuditNotes],
      useFactory: (data: IdentityData, throttle: SignInThrottle, clock: Clock, metrics: Metrics, notes: AuditNotes) =>
        new IdentityService(data, throttle, clock, metrics, notes),
    },
    {
      provide: SignInThrottle,
      inject: [Database],
      useFactory: (database: Database) => new SignInThrottle(new ThrottleData(database)),
    },
  ],
  exports: [IdentityService, SignInThrottle],
})
export class IdentityModule {}
