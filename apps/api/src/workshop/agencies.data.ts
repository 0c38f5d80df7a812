import type { Agency as SigningAgency } from '@tallywing/rules';
import type { Connection } from '../database/database.js';

export interface Agency {
  readonly id: string;
  readonly kind: SigningAgency['kind'];
  readonly name: string;
  readonly certificate: string | null;
  readonly ratings: SigningAgency['ratings'];
  readonly heldFrom: string | null;
  readonly heldUntil: string | null;
  readonly inUse: boolean;
  readonly revision: number;
  readonly [column: string]: unknown;
}

export type AgencyFacts = Pick<
  Agency,
  'kind' | 'name' | 'certificate' | 'ratings' | 'heldFrom' | 'heldUntil' | 'inUse'
>;

export async function agencies(connection: Connection, organisationId: string): Promise<Agency[]> {
  return await connection.query<Agency>(
    `select id, kind, name, certificate, ratings, held_from as "heldFrom", held_until as "heldUntil", in_use as "inUse", revision
     from agencies where organisation_id = $1 order by in_use desc, name, id`,
    [organisationId],
  );
}

export async function insertAgency(
  connection: Connection,
  organisationId: string,
  id: string,
  facts: AgencyFacts,
): Promise<void> {
  await connection.query(
    `insert into agencies (organisation_id, id, kind, name, certificate, ratings, held_from, held_until, in_use)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
    [organisationId, id, ...columnsOf(facts)],
  );
}

export async function updateAgency(
  connection: Connection,
  organisationId: string,
  id: string,
  facts: AgencyFacts,
): Promise<void> {
  await connection.query(
    `update agencies set kind = $3, name = $4, certificate = $5, ratings = $6, held_from = $7, held_until = $8, in_use = $9,
       revision = revision + 1 where organisation_id = $1 and id = $2`,
    [organisationId, id, ...columnsOf(facts)],
  );
}

function columnsOf(facts: AgencyFacts): readonly unknown[] {
  return [facts.kind, facts.name, facts.certificate, facts.ratings, facts.heldFrom, facts.heldUntil, facts.inUse];
}
