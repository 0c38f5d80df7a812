import type { HouseLabour } from '@tallywing/rules';
import type { Connection } from '../database/database.js';

export interface LabourVersion {
  /** 0 where the house has entered nothing. */
  readonly version: number;
  readonly body: HouseLabour;
  readonly setBy: string | null;
  readonly setAt: Date | null;
}

const nothingEntered: LabourVersion = {
  version: 0,
  body: { hourly: null, currency: null, jobs: {} },
  setBy: null,
  setAt: null,
};

export async function currentLabour(connection: Connection, organisationId: string): Promise<LabourVersion> {
  const [row] = await connection.query<{ version: number; body: HouseLabour; set_by: string; set_at: Date }>(
    `select l.version, l.body, coalesce(m.name, l.set_by) as set_by, l.set_at
     from house_labour l left join members m on m.organisation_id = l.organisation_id and m.id = l.set_by
     where l.organisation_id = $1 order by l.version desc limit 1`,
    [organisationId],
  );
  return row === undefined
    ? nothingEntered
    : { version: row.version, body: row.body, setBy: row.set_by, setAt: row.set_at };
}

/** @returns false where another version took this number meanwhile */
export async function addLabour(
  connection: Connection,
  organisationId: string,
  next: { readonly version: number; readonly body: HouseLabour; readonly memberId: string; readonly at: Date },
): Promise<boolean> {
  const rows = await connection.query(
    `insert into house_labour (organisation_id, version, body, set_by, set_at) values ($1, $2, $3, $4, $5)
     on conflict do nothing returning 1`,
    [organisationId, next.version, JSON.stringify(next.body), next.memberId, next.at],
  );
  if (rows.length > 0) connection.houseChanged();
  return rows.length > 0;
}
