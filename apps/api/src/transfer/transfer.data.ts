import type { EquipmentType } from '@tallywing/rules';
import { AircraftData, dossierOf } from '../aircraft/aircraft.data.js';
import type { Connection, Database } from '../database/database.js';
import type { Actor } from '../identity/access.js';

const ENTRIES_AT_ONCE = 500;

/** What leaves the house: aircraft with their entries, one at a time, and what the entries name. */
export class TransferData {
  constructor(private readonly database: Database) {}

  async houseName(actor: Actor): Promise<string> {
    const rows = await this.database.withOrganisation(actor, (connection) =>
      connection.query<{ name: string }>('select name from organisations where organisation_id = $1', [
        actor.organisationId,
      ]),
    );
    return rows[0]?.name ?? actor.organisationId;
  }

  async ids(actor: Actor): Promise<readonly string[]> {
    return await this.database.withOrganisation(actor, (connection) =>
      new AircraftData(connection, actor.organisationId).ids(),
    );
  }

  /** One aircraft as it is at one moment: its record and all entries that led there. Null: not for this actor. */
  async aircraft(actor: Actor, id: string) {
    return await this.database.withOrganisation(actor, async (connection) => {
      const data = new AircraftData(connection, actor.organisationId);
      const row = await data.find(actor, id);
      if (!row) return null;
      const entries = [];
      for (let after = 0; after < row.revision;) {
        const page = await data.changesOf(id, after, Math.min(ENTRIES_AT_ONCE, row.revision - after));
        if (page.length === 0) break;
        for (const { seq, kind, version, body, recorded_at, member_name, member_id } of page) {
          entries.push({
            number: seq,
            recordedAt: recorded_at.toISOString(),
            by: member_name ?? member_id,
            change: { kind, version, ...body },
          });
          after = seq;
        }
      }
      return { registration: row.registration, record: dossierOf(row), entries };
    });
  }

  async operators(actor: Actor, ids: readonly string[]): Promise<readonly { id: string; name: string }[]> {
    return await this.database.withOrganisation(actor, (connection) =>
      connection.query<{ id: string; name: string }>(
        'select id, name from operators where organisation_id = $1 and id = any($2) order by id',
        [actor.organisationId, ids],
      ),
    );
  }

  async types(actor: Actor, ids: readonly string[]) {
    const rows = await this.database.withOrganisation(actor, (connection) =>
      connection.query<{ body: EquipmentType; superseded_by: string | null }>(
        'select body, superseded_by from equipment_types where organisation_id = $1 and id = any($2) order by family, created_at, id',
        [actor.organisationId, ids],
      ),
    );
    return rows.map(({ body, superseded_by }) => ({ type: body, supersededBy: superseded_by }));
  }
}

/** Versions of types that entries taken in from another house name. What this house has in force stays in force. */
export async function keepTypes(
  connection: Connection,
  actor: Actor,
  types: readonly { readonly type: EquipmentType; readonly supersededBy: string | null }[],
  at: Date,
): Promise<void> {
  for (const { type, supersededBy } of types)
    await connection.query(
      `insert into equipment_types (organisation_id, id, family, body, created_at, entered_by, superseded_by)
       values ($1, $2, $3, $4, $5, $6, $7) on conflict do nothing`,
      [actor.organisationId, type.id, type.family, JSON.stringify(type), at, actor.memberId, supersededBy],
    );
}
