import type { Connection } from '../database/database.js';
import { summaryColumns, summaryJoins } from '../fleet/summaries.js';
import type { SummaryRow } from '../fleet/summaries.js';
import type { Actor } from '../identity/access.js';

export interface JobRow extends SummaryRow {
  readonly job_id: string;
  readonly title: string;
  readonly state: 'open' | 'in-work' | 'stopped' | 'released' | 'recorded' | 'discarded';
  readonly draft: { readonly text: string };
  readonly draft_schema: number;
  readonly job_revision: number;
  readonly created_by_name: string;
  readonly updated_at: Date;
  readonly started_at: Date | null;
  readonly started_by_name: string | null;
  readonly hold_id: string | null;
  readonly open_at_start: readonly string[] | null;
  readonly ended_because: string | null;
}

const columns = `j.id as job_id, j.title, j.state, j.draft, j.draft_schema, j.revision as job_revision,
  coalesce(m.name, j.created_by) as created_by_name, j.updated_at,
  j.started_at, coalesce(s.name, j.started_by) as started_by_name, j.hold_id, j.open_at_start, j.ended_because, ${summaryColumns}`;
const source = `from jobs j join aircraft a on a.organisation_id = j.organisation_id and a.id = j.aircraft_id ${summaryJoins}
  left join members m on m.organisation_id = j.organisation_id and m.id = j.created_by
  left join members s on s.organisation_id = j.organisation_id and s.id = j.started_by`;

export async function openJobs(connection: Connection, actor: Actor, aircraftId: string | null): Promise<JobRow[]> {
  return await connection.query<JobRow>(
    `select ${columns} ${source} where j.organisation_id = $1 and j.state in ('open', 'in-work', 'stopped') and ($2::text is null or j.aircraft_id = $2)
     and ($3::text is null or a.operator_id = $3) order by j.updated_at desc, j.id limit 500`,
    [actor.organisationId, aircraftId, actor.operatorId ?? null],
  );
}

export async function jobById(connection: Connection, actor: Actor, id: string): Promise<JobRow | null> {
  const rows = await connection.query<JobRow>(
    `select ${columns} ${source} where j.organisation_id = $1 and j.id = $2 and ($3::text is null or a.operator_id = $3)`,
    [actor.organisationId, id, actor.operatorId ?? null],
  );
  return rows[0] ?? null;
}

export async function createJob(
  connection: Connection,
  actor: Actor,
  job: { readonly id: string; readonly aircraftId: string; readonly title: string; readonly at: Date },
): Promise<boolean> {
  connection.houseChanged();
  const rows = await connection.query(
    `insert into jobs (organisation_id, id, aircraft_id, title, state, draft, draft_schema, revision, created_by, created_at, updated_at)
     select $1, $2, a.id, $4, 'open', '{"text":""}', 0, a.revision, $5, $6, $6 from aircraft a
     where a.organisation_id = $1 and a.id = $3 and ($7::text is null or a.operator_id = $7) returning 1`,
    [actor.organisationId, job.id, job.aircraftId, job.title, actor.memberId, job.at, actor.operatorId ?? null],
  );
  return rows.length > 0;
}

export async function saveDraft(
  connection: Connection,
  actor: Actor,
  draft: {
    readonly jobId: string;
    readonly revision: number;
    readonly draftSchema: number;
    readonly text: string;
    readonly at: Date;
  },
): Promise<boolean> {
  connection.houseChanged();
  const rows = await connection.query(
    `update jobs set draft = $3, draft_schema = $4, revision = $5, updated_at = $6
     where organisation_id = $1 and id = $2 and state in ('open', 'in-work', 'stopped') returning 1`,
    [
      actor.organisationId,
      draft.jobId,
      JSON.stringify({ text: draft.text }),
      draft.draftSchema,
      draft.revision,
      draft.at,
    ],
  );
  return rows.length > 0;
}

export async function discard(connection: Connection, actor: Actor, id: string, at: Date): Promise<boolean> {
  connection.houseChanged();
  const rows = await connection.query(
    `update jobs set state = 'discarded', updated_at = $3
     where organisation_id = $1 and id = $2 and state in ('open', 'stopped') returning 1`,
    [actor.organisationId, id, at],
  );
  return rows.length > 0;
}

/** A job that was stopped goes on under what was open when it first began. */
export async function putInWork(
  connection: Connection,
  actor: Actor,
  job: { readonly id: string; readonly holdId: string; readonly open: readonly string[]; readonly at: Date },
): Promise<boolean> {
  connection.houseChanged();
  const rows = await connection.query(
    `update jobs set state = 'in-work', hold_id = $3, open_at_start = coalesce(open_at_start, $4::text[]),
       started_at = coalesce(started_at, $5), started_by = coalesce(started_by, $6), ended_at = null, ended_because = null,
       updated_at = $5
     where organisation_id = $1 and id = $2 and state in ('open', 'stopped') returning 1`,
    [actor.organisationId, job.id, job.holdId, job.open, job.at, actor.memberId],
  );
  return rows.length > 0;
}

export async function endWork(
  connection: Connection,
  actor: Actor,
  job: { readonly id: string; readonly state: 'stopped' | 'released'; readonly because: string; readonly at: Date },
): Promise<boolean> {
  connection.houseChanged();
  const rows = await connection.query(
    `update jobs set state = $3, ended_at = $5, ended_because = $4, updated_at = $5
     where organisation_id = $1 and id = $2 and state = 'in-work' returning 1`,
    [actor.organisationId, job.id, job.state, job.because, job.at],
  );
  return rows.length > 0;
}
