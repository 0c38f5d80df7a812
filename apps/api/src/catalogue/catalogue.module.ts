import { Module } from '@nestjs/common';
import { Clock } from '../common/clock.js';
import { Database } from '../database/database.js';
import { CatalogueResolver } from './catalogue.resolver.js';
import { CatalogueService } from './catalogue.service.js';
import { MovesService } from './moves.service.js';

@Module({
  providers: [
    CatalogueResolver,
    {
      provide: CatalogueService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new CatalogueService(database, clock),
    },
    {
      provide: MovesService,
      inject: [Database, Clock],
      useFactory: (database: Database, clock: Clock) => new MovesService(database, clock),
    },
  ],
  exports: [CatalogueService],
})
export class CatalogueModule {}
