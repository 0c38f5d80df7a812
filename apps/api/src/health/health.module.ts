import { Module } from '@nestjs/common';
import { Metrics } from '../common/metrics.js';
import { Database } from '../database/database.js';
import { Disk } from '../database/disk.js';
import { HealthController } from './health.controller.js';
import { HealthService } from './health.service.js';

@Module({
  controllers: [HealthController],
  providers: [
    {
      provide: HealthService,
      inject: [Database, Disk, Metrics],
      useFactory: (database: Database, disk: Disk, metrics: Metrics) => new HealthService(database, disk, metrics),
    },
  ],
})
export class HealthModule {}
