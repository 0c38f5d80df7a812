import type { Policy } from '@tallywing/rules';
import type { Connection } from '../database/database.js';

export interface PolicyRow {
  readonly kind: Policy['kind'];
  readonly version: number;
  readonly effective_on: string;
  readonly body: Policy['body'];
  readonly reason: string;
  readonly set_by: string;
  readonly set_at: Date;
  readonly [column: string]: unknown;
}

/** Every version of every policy, as the rule library reads them; each alike, so that judging twice gives the same stamp. */
export async function housePolicies(connection: Connection, organisationId: string): Promise<readonly Policy[]> {
  const rows = await policyVersions(connection, organisationId);
  return rows.map(({ kind, version, effective_on: from, body }) => ({ kind, version, from, body }));
}

export async function policyVersions(connection: Connection, organisationId: string): Promise<PolicyRow[]> {
  return await connection.query<PolicyRow>(
    `select p.kind, p.version, p.effective_on, p.body, p.reason, coalesce(m.name, p.set_by) as set_by, p.set_at
     from house_policies p left join members m on m.organisation_id = p.organisation_id and m.id = p.set_by
     where p.organisation_id = $1 order by p.kind collate "C", p.version`,
    [organisationId],
  );
}

export async function addPolicy(
  connection: Connection,
  organisationId: string,
  policy: Policy & { readonly reason: string; readonly memberId: string; readonly at: Date },
): Promise<void> {
  connection.judgeAgain();
  await connection.query(
    `insert into house_policies (organisation_id, kind, version, effective_on, body, reason, set_by, set_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8)`,
    [
      organisationId,
      policy.kind,
      policy.version,
      policy.from,
      JSON.stringify(policy.body),
      policy.reason,
      policy.memberId,
      policy.at,
    ],
  );
}
