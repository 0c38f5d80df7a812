import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { TransferController } from './transfer.controller.js';
import { TransferData } from './transfer.data.js';
import { TransferService } from './transfer.service.js';

@Module({
  controllers: [TransferController],
  providers: [
    {
      provide: TransferService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new TransferService(new TransferData(database), clock),
    },
  ],
})
export class TransferModule {}
