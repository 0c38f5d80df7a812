import { Module } from '@nestjs/common';
import { AircraftModule } from '../aircraft/aircraft.module.js';
import { RecordService } from '../aircraft/record.service.js';
import { Clock } from '../common/clock.js';
import { AppLog } from '../common/logging.js';
import { Database } from '../database/database.js';
import { ImportsController } from './imports.controller.js';
import { ImportsData } from './imports.data.js';
import { ImportsResolver } from './imports.resolver.js';
import { ImportsService } from './imports.service.js';

@Module({
  imports: [AircraftModule],
  controllers: [ImportsController],
  providers: [
    ImportsResolver,
    {
      provide: ImportsService,
      inject: [Database, RecordService, Clock, AppLog],
      useFactory: (database: Database, records: RecordService, clock: Clock, log: AppLog) =>
        new ImportsService(new ImportsData(database), records, clock, log),
    },
  ],
})
export class ImportsModule {}
