import { Module } from '@nestjs/common';
import { AuditModule } from '../audit/audit.module.js';
import { AuditNotes } from '../audit/notes.js';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { TransferController } from './transfer.controller.js';
import { TransferData } from './transfer.data.js';
import { TransferService } from './transfer.service.js';

@Module({
  imports: [AuditModule],
  controllers: [TransferController],
  providers: [
    {
      provide: TransferService,
      inject: [Database, Clock, AuditNotes],
      useFactory: (database: Database, clock: Clock, notes: AuditNotes) =>
        new TransferService(new TransferData(database), clock, notes),
    },
  ],
})
export class TransferModule {}
