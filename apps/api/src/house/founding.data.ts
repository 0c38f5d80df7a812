import type { FlightConditions } from '@tallywing/rules';
import type { Connection, Database } from '../database/database.js';

/** The lists that an organisation is founded with. */
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

export async function organisations(database: Database): Promise<readonly string[]> {
  return (await database.askDoor<{ organisation_id: string }>('door_organisations', [])).map(
    (row) => row.organisation_id,
  );
}

export async function createOrganisation(database: Database, organisationId: string, name: string): Promise<void> {
  await database.withOrganisation({ organisationId }, (connection) =>
    connection.query('insert into organisations (organisation_id, name) values ($1, $2) on conflict do nothing', [
      organisationId,
      name,
    ]),
  );
}

/** What is there from a founding that was cut off stays. */
export async function saveLists(connection: Connection, organisationId: string, house: House): Promise<void> {
  for (const { id, name } of house.operators ?? []) {
    await connection.query(
      'insert into operators (organisation_id, id, name) values ($1, $2, $3) on conflict do nothing',
      [organisationId, id, name],
    );
  }
  for (const { id, name, zone } of house.bases ?? []) {
    await connection.query(
      'insert into bases (organisation_id, id, name, zone) values ($1, $2, $3, $4) on conflict do nothing',
      [organisationId, id, name, zone],
    );
  }
  for (const [sort, { id, name, conditions, wanted = true }] of (house.profiles ?? []).entries()) {
    await connection.query(
      'insert into flight_profiles (organisation_id, id, name, sort, conditions, wanted) values ($1, $2, $3, $4, $5, $6) on conflict do nothing',
      [organisationId, id, name, sort, JSON.stringify(conditions), wanted],
    );
  }
}
