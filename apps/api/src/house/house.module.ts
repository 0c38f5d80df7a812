import { Module } from '@nestjs/common';
import { Database } from '../database/database.js';
import { IdentityData } from '../identity/identity.data.js';
import { HouseData } from './house.data.js';
import { HouseService } from './house.service.js';

@Module({
  providers: [
    {
      provide: HouseService,
      inject: [Database],
      useFactory: (database: Database) => new HouseService(new HouseData(database), new IdentityData(database)),
    },
  ],
  exports: [HouseService],
})
export class HouseModule {}
