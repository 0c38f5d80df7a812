import type { PageRequest } from '../common/connection.js';
import type { Connection } from '../database/database.js';

export const auditTopics = ['sign-in', 'refused', 'people', 'house', 'workshop', 'import', 'export'] as const;
export type AuditTopic = (typeof auditTopics)[number];

/** What has no table of its own. Anything else is read from where it stands. */
export type NoteKind = 'sign-in' | 'sign-in.failed' | 'sign-out' | 'refused' | 'export';

export interface AuditAsked {
  readonly personId?: string | null;
  readonly topic?: AuditTopic | null;
  readonly from?: string | null;
  readonly to?: string | null;
}

export interface AuditRow {
  /** Names the row among those of all tables, and orders those of one moment. */
  readonly ref: string;
  readonly at: Date;
  readonly by: string;
  readonly topic: AuditTopic;
  readonly kind: string;
  readonly subject_kind: string | null;
  readonly subject_id: string | null;
  readonly subject_name: string | null;
  readonly before: unknown;
  readonly after: unknown;
  readonly [column: string]: unknown;
}

/** One list out of three tables. */
const told = `
  select e.at, 'h' || lpad(e.id::text, 19, '0') as ref, e.member_id, e.kind,
    case when e.subject_kind = 'person' then 'people' when e.subject_kind in ('test-set', 'agency') then 'workshop' else 'house' end as topic,
    e.subject_kind, e.subject_id, e.subject_name, e.before, e.after
  from house_entries e where e.organisation_id = $1
  union all
  select i.at, 'i' || i.id, i.member_id, 'import', 'import', null, null, null, null,
    jsonb_build_object('mode', i.progress -> 'mode', 'state', i.state)
  from imports i where i.organisation_id = $1
  union all
  select a.at, 'a' || lpad(a.id::text, 19, '0'), a.member_id, a.kind, split_part(replace(a.kind, 'sign-out', 'sign-in'), '.', 1),
    null, null, null, null, a.detail
  from audit_entries a where a.organisation_id = $1`;

const asked = `($2::text is null or t.member_id = $2) and ($3::text is null or t.topic = $3)
  and ($4::timestamptz is null or t.at >= $4) and ($5::timestamptz is null or t.at < $5)`;

const values = (organisationId: string, { personId, topic, from, to }: AuditAsked): unknown[] => [
  organisationId,
  personId ?? null,
  topic ?? null,
  from ?? null,
  to ?? null,
];

/** Newest first, one more than asked for. */
export async function auditRows(
  connection: Connection,
  organisationId: string,
  filter: AuditAsked,
  page: PageRequest,
): Promise<AuditRow[]> {
  return await connection.query<AuditRow>(
    `select t.ref, t.at, coalesce(m.name, t.member_id) as by, t.topic, t.kind, t.subject_kind, t.subject_id, t.subject_name, t.before, t.after
     from (${told}) t left join members m on m.organisation_id = $1 and m.id = t.member_id
     where ${asked} and ($6::timestamptz is null or (t.at, t.ref) < ($6, $7::text))
     order by t.at desc, t.ref desc limit $8`,
    [...values(organisationId, filter), page.after?.[0] ?? null, page.after?.[1] ?? null, page.first + 1],
  );
}

export async function countAudit(connection: Connection, organisationId: string, filter: AuditAsked): Promise<number> {
  const [row] = await connection.query<{ total: number }>(
    `select count(*)::int as total from (${told}) t where ${asked}`,
    values(organisationId, filter),
  );
  return row?.total ?? 0;
}

export async function addNote(
  connection: Connection,
  organisationId: string,
  note: { readonly memberId: string; readonly kind: NoteKind; readonly detail: object; readonly at: Date },
): Promise<void> {
  await connection.query(
    'insert into audit_entries (organisation_id, at, member_id, kind, detail) values ($1, $2, $3, $4, $5)',
    [organisationId, note.at, note.memberId, note.kind, JSON.stringify(note.detail)],
  );
}
