import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Metrics } from '../common/metrics.js';
import { Database } from '../database/database.js';
import { IdentityData } from './identity.data.js';
import { IdentityResolver } from './identity.resolver.js';
import { IdentityService } from './identity.service.js';
import { SignInThrottle } from './throttle.js';

@Module({
  providers: [
    IdentityResolver,
    { provide: IdentityData, inject: [Database], useFactory: (database: Database) => new IdentityData(database) },
    {
      provide: IdentityService,
      inject: [IdentityData, Clock, Metrics],
      useFactory: (data: IdentityData, clock: Clock, metrics: Metrics) =>
        new IdentityService(data, new SignInThrottle(), clock, metrics),
    },
  ],
  exports: [IdentityService],
})
export class IdentityModule {}
