import type { Database } from '../database/database.js';
import type { Role } from '../identity/access.js';

/** A session that is good at the moment of asking, whose it is, and how far its house has come. */
export interface FollowerRow {
  readonly session_id: string;
  readonly organisation_id: string;
  readonly member_id: string;
  readonly name: string;
  readonly role: Role;
  readonly operator_id: string | null;
  readonly counter: number;
}

export class LiveData {
  constructor(private readonly database: Database) {}

  async followers(sessionIds: readonly string[], at: Date): Promise<FollowerRow[]> {
    return await this.database.askDoor<FollowerRow & { [column: string]: unknown }>('door_followers', [sessionIds, at]);
  }

  async counter(organisationId: string): Promise<number> {
    const rows = await this.database.withOrganisation({ organisationId }, (connection) =>
      connection.query<{ counter: number }>('select counter from house_counters where organisation_id = $1', [
        organisationId,
      ]),
    );
    return rows[0]?.counter ?? 0;
  }
}
