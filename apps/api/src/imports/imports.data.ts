import type { EquipmentType } from '@tallywing/rules';
import { AircraftData, dossierOf } from '../aircraft/aircraft.data.js';
import type { AircraftRow } from '../aircraft/aircraft.data.js';
import type { Profile } from '../aircraft/stamp.js';
import { addTypes } from '../catalogue/catalogue.data.js';
import type { Connection, Database } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { defectKey, readingKey, recordKey } from './keys.js';
import type { Known, KnownAircraft } from './plan.js';
import type { ImportMode, ImportProgress, ImportReport, ImportState } from './report.js';

export interface ImportRow {
  readonly id: string;
  readonly mode: ImportMode;
  readonly state: ImportState;
  readonly progress: ImportProgress;
  readonly report: ImportReport | null;
  readonly memberId: string;
  readonly by: string;
  readonly at: Date;
}

interface StoredRow {
  readonly [column: string]: unknown;
  readonly id: string;
  readonly state: string;
  readonly progress: ImportProgress & { readonly mode: ImportMode; readonly heard: string };
  readonly report: ImportReport | { readonly none: true };
  readonly member_id: string;
  readonly member_name: string | null;
  readonly at: Date;
}

/** A run from which nothing was heard for so long was cut off; what it had not finished left nothing. */
const SILENT_MS = 120_000;

export class ImportsData {
  constructor(private readonly database: Database) {}

  /** Everything stored that the files may touch, read in one go. */
  async known(
    actor: Actor,
    registrations: readonly string[],
    now: string,
  ): Promise<{ readonly known: Known; readonly profiles: readonly Profile[] }> {
    return await this.database.withOrganisation(actor, async (connection) => {
      const { organisationId } = actor;
      const own = [organisationId];
      const rows = await connection.query<AircraftRow & { [column: string]: unknown }>(
        'select * from aircraft where organisation_id = $1 and registration = any($2)',
        [organisationId, registrations],
      );
      const ids = await connection.query<{ id: string }>('select id from aircraft where organisation_id = $1', own);
      const types = await connection.query<{ body: EquipmentType; superseded_by: string | null }>(
        'select body, superseded_by from equipment_types where organisation_id = $1 order by superseded_by nulls first, id',
        own,
      );
      const recorded = await recordedKeys(
        connection,
        organisationId,
        rows.map(({ id }) => id),
      );
      const aircraft = new Map(
        rows.map((row): [string, KnownAircraft] => [
          row.registration,
          { dossier: dossierOf(row), recorded: recorded.get(row.id) ?? new Set() },
        ]),
      );
      const known: Known = {
        now,
        aircraft,
        aircraftIds: new Set(ids.map(({ id }) => id)),
        operators: await connection.query('select id, name from operators where organisation_id = $1', own),
        bases: await connection.query('select id, name, zone from bases where organisation_id = $1', own),
        types: types.map(({ body }) => body),
        supersededTypes: new Set(types.flatMap(({ body, superseded_by }) => (superseded_by === null ? [] : [body.id]))),
      };
      return { known, profiles: await new AircraftData(connection, organisationId).profiles() };
    });
  }

  async begin(actor: Actor, id: string, mode: ImportMode, at: Date): Promise<void> {
    await this.database.withOrganisation(actor, (connection) =>
      connection.query(
        `insert into imports (organisation_id, id, state, progress, report, member_id, at)
         values ($1, $2, 'running', $3, '{"none":true}', $4, $5)`,
        [
          actor.organisationId,
          id,
          JSON.stringify({ mode, step: 'reading', done: 0, total: 0, heard: at.toISOString() }),
          actor.memberId,
          at,
        ],
      ),
    );
  }

  async progress(actor: Actor, id: string, progress: ImportProgress, at: Date): Promise<void> {
    await this.database.withOrganisation(actor, (connection) =>
      connection.query(
        `update imports set progress = progress || $3::jsonb where organisation_id = $1 and id = $2 and state = 'running'`,
        [actor.organisationId, id, JSON.stringify({ ...progress, heard: at.toISOString() })],
      ),
    );
  }

  async end(actor: Actor, id: string, state: ImportState, report: ImportReport | null): Promise<void> {
    await this.database.withOrganisation(actor, (connection) => endOn(connection, actor, id, state, report));
  }

  async find(actor: Actor, id: string, now: Date): Promise<ImportRow | null> {
    const [row] = await this.rows(actor, 'and i.id = $2', [id]);
    return row ? rowOf(row, now) : null;
  }

  async recent(actor: Actor, most: number, now: Date): Promise<readonly ImportRow[]> {
    return (await this.rows(actor, 'order by i.at desc, i.id limit $2', [most])).map((row) => rowOf(row, now));
  }

  private async rows(actor: Actor, rest: string, values: readonly unknown[]): Promise<StoredRow[]> {
    return await this.database.withOrganisation(actor, (connection) =>
      connection.query<StoredRow>(
        `select i.id, i.state, i.progress, i.report, i.member_id, m.name as member_name, i.at
         from imports i left join members m on m.organisation_id = i.organisation_id and m.id = i.member_id
         where i.organisation_id = $1 ${rest}`,
        [actor.organisationId, ...values],
      ),
    );
  }
}

/** What aircraft refer to, written before them and with them. */
export async function writeLists(
  connection: Connection,
  actor: Actor,
  lists: {
    readonly newOperators: readonly { readonly id: string; readonly name: string }[];
    readonly newTypes: readonly EquipmentType[];
  },
  at: Date,
): Promise<void> {
  for (const { id, name } of lists.newOperators) {
    await connection.query(
      'insert into operators (organisation_id, id, name) values ($1, $2, $3) on conflict do nothing',
      [actor.organisationId, id, name],
    );
  }
  await addTypes(connection, actor, lists.newTypes, at);
}

export async function endOn(
  connection: Connection,
  actor: Actor,
  id: string,
  state: ImportState,
  report: ImportReport | null,
): Promise<void> {
  await connection.query(
    `update imports set state = $3, report = coalesce($4::jsonb, report) where organisation_id = $1 and id = $2`,
    [actor.organisationId, id, state, report === null ? null : JSON.stringify(report)],
  );
}

/** Natural keys from the history, where nothing is ever superseded. */
async function recordedKeys(
  connection: Connection,
  organisationId: string,
  aircraftIds: readonly string[],
): Promise<Map<string, ReadonlySet<string>>> {
  const rows = await connection.query<{
    aircraft_id: string;
    kind: string;
    what: string;
    subjects: readonly string[] | null;
    day: string;
  }>(
    `select aircraft_id, kind, body #>> '{record,kind}' as what, body #> '{record,subjects}' as subjects,
            body #>> '{record,done,date}' as day
     from changes where organisation_id = $1 and aircraft_id = any($2) and kind in ('record.add', 'record.correct')
     union all
     select aircraft_id, kind, body ->> 'meter', null, body ->> 'asOf'
     from changes where organisation_id = $1 and aircraft_id = any($2) and kind in ('meter.read', 'meter.correct')
     union all
     select aircraft_id, kind, body #>> '{defect,subject}', null, body #>> '{defect,raised,date}'
     from changes where organisation_id = $1 and aircraft_id = any($2) and kind = 'defect.raise'`,
    [organisationId, aircraftIds],
  );
  const keys = new Map<string, Set<string>>();
  for (const { aircraft_id, kind, what, subjects, day } of rows) {
    const own = keys.get(aircraft_id) ?? new Set<string>();
    keys.set(aircraft_id, own);
    if (kind.startsWith('record')) own.add(recordKey(what, subjects ?? [], day));
    else own.add(kind === 'defect.raise' ? defectKey(what, day) : readingKey(what, day));
  }
  return keys;
}

function rowOf(row: StoredRow, now: Date): ImportRow {
  const { mode, heard, ...progress } = row.progress;
  const silent = row.state === 'running' && now.getTime() - Date.parse(heard) > SILENT_MS;
  return {
    id: row.id,
    mode,
    state: silent ? 'interrupted' : (row.state as ImportState),
    progress: { step: progress.step, done: progress.done, total: progress.total },
    report: 'none' in row.report ? null : row.report,
    memberId: row.member_id,
    by: row.member_name ?? row.member_id,
    at: row.at,
  };
}
