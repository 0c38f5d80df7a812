import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { AppLog } from '../common/logging.js';
import { Database } from '../database/database.js';
import { AuditResolver } from './audit.resolver.js';
import { AuditService } from './audit.service.js';
import { AuditNotes } from './notes.js';
import { RefusalsPlugin } from './refusals.plugin.js';

@Module({
  providers: [
    AuditResolver,
    RefusalsPlugin,
    { provide: AuditService, inject: [Database], useFactory: (database: Database) => new AuditService(database) },
    {
      provide: AuditNotes,
      inject: [Database, Clock, AppLog],
      useFactory: (database: Database, clock: Clock, log: AppLog) => new AuditNotes(database, clock, log),
    },
  ],
  exports: [AuditNotes],
})
export class AuditModule {}
