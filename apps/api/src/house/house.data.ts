import type { FlightConditions } from '@tallywing/rules';
import type { Database } from '../database/database.js';

export interface House {
  readonly operators?: readonly { readonly id: string; readonly name: string }[];
  readonly bases?: readonly { readonly id: string; readonly name: string; readonly zone: string }[];
  readonly profiles?: readonly {
    readonly id: string;
    readonly name: string;
    readonly conditions: FlightConditions;
    readonly wanted?: boolean;
  }[];
}

export class HouseData {
  constructor(private readonly database: Database) {}

  async organisations(): Promise<readonly string[]> {
    return (await this.database.askDoor<{ organisation_id: string }>('door_organisations', [])).map(
      (row) => row.organisation_id,
    );
  }

  async create(organisationId: string, name: string): Promise<void> {
    await this.database.withRecords({ organisationId }, (records) =>
      records.organisation.create({ data: { organisationId, name } }),
    );
  }

  async save(organisationId: string, house: House): Promise<void> {
    await this.database.withRecords({ organisationId }, async (records) => {
      for (const { id, name } of house.operators ?? []) {
        await records.operator.upsert({
          where: { organisationId_id: { organisationId, id } },
          create: { organisationId, id, name },
          update: { name },
        });
      }
      for (const { id, name, zone } of house.bases ?? []) {
        await records.base.upsert({
          where: { organisationId_id: { organisationId, id } },
          create: { organisationId, id, name, zone },
          update: { name, zone },
        });
      }
      for (const [sort, { id, name, conditions, wanted = true }] of (house.profiles ?? []).entries()) {
        const fields = {
          name,
          sort,
          wanted,
          conditions: { ...conditions, airspace: [...conditions.airspace], approaches: [...conditions.approaches] },
        };
        await records.flightProfile.upsert({
          where: { organisationId_id: { organisationId, id } },
          create: { organisationId, id, ...fields },
          update: fields,
        });
      }
    });
  }
}
