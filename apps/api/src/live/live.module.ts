import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { AppLog } from '../common/logging.js';
import { Metrics } from '../common/metrics.js';
import { Database } from '../database/database.js';
import { HouseListener } from '../database/listener.js';
import { LiveData } from './live.data.js';
import { LiveResolver } from './live.resolver.js';
import { LiveService } from './live.service.js';

@Module({
  providers: [
    LiveResolver,
    {
      provide: LiveService,
      inject: [Database, HouseListener, Clock, Metrics, AppLog],
      useFactory: (database: Database, listener: HouseListener, clock: Clock, metrics: Metrics, log: AppLog) =>
        new LiveService(new LiveData(database), listener, clock, metrics, log),
    },
  ],
  exports: [LiveService],
})
export class LiveModule {}
