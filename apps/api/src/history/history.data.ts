import type { Change } from '@tallywing/rules';
import type { Connection } from '../database/database.js';
import type { Recorded } from '../aircraft/recorder.js';

export interface EntryRow {
  readonly seq: number;
  readonly kind: string;
  readonly version: number;
  readonly body: Readonly<Record<string, unknown>>;
  readonly member_id: string;
  readonly member_name: string | null;
  readonly certificate: unknown;
  readonly recorded_at: Date;
  readonly job_title: string | null;
  /** Names of the files that it was taken in from; empty while they are being read in, null where no file brought it. */
  readonly files: readonly string[] | null;
  readonly first_together: number;
  readonly last_together: number;
  /** What the work it belongs to was answered; null where that was not kept. */
  readonly answer: Recorded | null;
  readonly [column: string]: unknown;
}

export interface LogRow {
  readonly seq: number;
  readonly kind: string;
  readonly version: number;
  readonly body: Readonly<Record<string, unknown>>;
  readonly commit_key: string;
  readonly recorded_at: Date;
  readonly [column: string]: unknown;
}

export interface KeptRow {
  readonly body: Buffer;
  readonly revision: number;
  readonly created_at: Date;
  readonly [column: string]: unknown;
}

/** What is kept of the past of one aircraft, over one open connection. Whoever has it has been authorised already. */
export class HistoryData {
  constructor(
    private readonly connection: Connection,
    private readonly organisationId: string,
    private readonly aircraftId: string,
  ) {}

  /** Newest first, only entries older than `before` when it is given. */
  async entriesBefore(before: number | null, limit: number): Promise<EntryRow[]> {
    return await this.connection.query<EntryRow>(
      `select c.seq, c.kind, c.version, c.body, c.member_id, m.name as member_name, m.certificate, c.recorded_at, j.title as job_title,
         case when i.id is not null then array(select jsonb_array_elements(coalesce(i.report -> 'files', '[]')) ->> 'name') end as files,
         coalesce((k.answer ->> 'firstEntry')::int, c.seq) as first_together,
         coalesce((k.answer ->> 'lastEntry')::int, c.seq) as last_together, k.answer
       from changes c
       left join members m on m.organisation_id = c.organisation_id and m.id = c.member_id
       left join jobs j on j.organisation_id = c.organisation_id and j.id = c.job_id
       left join imports i on i.organisation_id = c.organisation_id and i.member_id = c.member_id
         and c.commit_key = 'import:' || i.id || ':' || c.aircraft_id
       left join commits k on k.organisation_id = c.organisation_id and k.key = c.commit_key and k.aircraft_id = c.aircraft_id
       where c.organisation_id = $1 and c.aircraft_id = $2 and ($3::int is null or c.seq < $3) order by c.seq desc limit $4`,
      [this.organisationId, this.aircraftId, before, limit],
    );
  }

  /** All entries up to one, oldest first, without who wrote them. */
  async log(upTo: number): Promise<LogRow[]> {
    return await this.connection.query<LogRow>(
      `select seq, kind, version, body, commit_key, recorded_at from changes
       where organisation_id = $1 and aircraft_id = $2 and seq <= $3 order by seq`,
      [this.organisationId, this.aircraftId, upTo],
    );
  }

  /** Entries about anything that was ever corrected, of the kinds that correct or are corrected, with what each is about. */
  async correctable(
    kinds: readonly string[],
    correcting: readonly string[],
  ): Promise<{ number: number; kind: string; about: string | null }[]> {
    return await this.connection.query<{ number: number; kind: string; about: string | null }>(
      `with told as materialized (
         select seq, kind, coalesce(body #>> '{record,id}', body #>> '{unit,id}', body ->> 'meter') as about from changes
         where organisation_id = $1 and aircraft_id = $2 and kind = any($3))
       select seq as number, kind, about from told where about in (select about from told where kind = any($4)) order by seq`,
      [this.organisationId, this.aircraftId, kinds, correcting],
    );
  }

  /** Names and certificates of people that were changed later, oldest first: each value as it was before. */
  async laterChangesOf(memberIds: readonly string[]) {
    return await this.connection.query<{ member_id: string; at: Date; before: Readonly<Record<string, unknown>> }>(
      `select subject_id as member_id, at, before from house_entries
       where organisation_id = $1 and subject_kind = 'person' and subject_id = any($2) and before is not null order by id`,
      [this.organisationId, memberIds],
    );
  }

  async operatorNames(): Promise<{ id: string; name: string }[]> {
    return await this.connection.query<{ id: string; name: string }>(
      'select id, name from operators where organisation_id = $1',
      [this.organisationId],
    );
  }

  async profileNames(): Promise<ReadonlyMap<string, string>> {
    const rows = await this.connection.query<{ id: string; name: string }>(
      'select id, name from flight_profiles where organisation_id = $1',
      [this.organisationId],
    );
    return new Map(rows.map(({ id, name }) => [id, name]));
  }

  /** What was shown when this entry, or the work it belongs to, was recorded. */
  async shownWith(entry: number): Promise<KeptRow | null> {
    const rows = await this.connection.query<KeptRow>(
      `select body, revision, created_at from assessments
       where organisation_id = $1 and aircraft_id = $2 and revision >= $3 order by revision, created_at limit 1`,
      [this.organisationId, this.aircraftId, entry],
    );
    return rows[0] ?? null;
  }

  /** What was shown last before a moment. */
  async shownBefore(moment: Date): Promise<KeptRow | null> {
    const rows = await this.connection.query<KeptRow>(
      `select body, revision, created_at from assessments
       where organisation_id = $1 and aircraft_id = $2 and created_at < $3 order by revision desc, created_at desc limit 1`,
      [this.organisationId, this.aircraftId, moment],
    );
    return rows[0] ?? null;
  }

  /** The last that was shown of each of these records. */
  async lastShown(revisions: readonly number[]): Promise<KeptRow[]> {
    return await this.connection.query<KeptRow>(
      `select distinct on (revision) body, revision, created_at from assessments
       where organisation_id = $1 and aircraft_id = $2 and revision = any($3) order by revision, created_at desc`,
      [this.organisationId, this.aircraftId, revisions],
    );
  }
}

/** A stored row as the core reads it. */
export function changeOf({ kind, version, body }: Pick<LogRow, 'kind' | 'version' | 'body'>): Change {
  return { kind, version, ...body } as unknown as Change;
}
