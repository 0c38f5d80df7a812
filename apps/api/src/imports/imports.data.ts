import type { EquipmentType } from '@tallywing/rules';
import { AircraftData, dossierOf } from '../aircraft/aircraft.data.js';
import type { AircraftRow } from '../aircraft/aircraft.data.js';
import type { Profile } from '../aircraft/stamp.js';
import { addTypes } from '../catalogue/catalogue.data.js';
import type { Connection, Database } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { keepTypes } from '../transfer/transfer.data.js';
import type { Carried } from './aircraft-records.js';
import { defectKey, readingContent, readingKey, recordContent, recordKey } from './keys.js';
import type { KnownHouse } from './plan.js';
import type { KnownAircraft } from './planner.js';
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

  /** The house apart from its aircraft, and its flight profiles. */
  async house(
    actor: Actor,
    now: string,
  ): Promise<{ readonly house: KnownHouse; readonly profiles: readonly Profile[] }> {
    return await this.database.withOrganisation(actor, async (connection) => {
      const own = [actor.organisationId];
      const ids = await connection.query<{ id: string }>('select id from aircraft where organisation_id = $1', own);
      const types = await connection.query<{ body: EquipmentType; superseded_by: string | null }>(
        'select body, superseded_by from equipment_types where organisation_id = $1 order by superseded_by nulls first, id',
        own,
      );
      const house: KnownHouse = {
        now,
        aircraftIds: new Set(ids.map(({ id }) => id)),
        operators: await connection.query('select id, name from operators where organisation_id = $1', own),
        bases: await connection.query('select id, name, zone from bases where organisation_id = $1', own),
        types: types.map(({ body }) => body),
        supersededTypes: new Set(types.flatMap(({ body, superseded_by }) => (superseded_by === null ? [] : [body.id]))),
      };
      return { house, profiles: await new AircraftData(connection, actor.organisationId).profiles() };
    });
  }

  /** What is stored of these aircraft, by registration. */
  async aircraft(
    actor: Actor,
    registrations: readonly string[],
    { histories }: Carried,
  ): Promise<ReadonlyMap<string, KnownAircraft>> {
    return await this.database.withOrganisation(actor, async (connection) => {
      const { organisationId } = actor;
      const rows = await connection.query<AircraftRow & { [column: string]: unknown }>(
        'select * from aircraft where organisation_id = $1 and registration = any($2)',
        [organisationId, registrations],
      );
      const ids = rows.map(({ id }) => id);
      const recorded = await recordedKeys(connection, organisationId, ids);
      const asked = rows.flatMap(({ id, registration }) => {
        const entries = histories.get(registration)?.changes.length;
        return entries === undefined ? [] : [{ id, entries }];
      });
      const hashes = await hashesAt(connection, organisationId, asked);
      return new Map(
        rows.map((row) => [
          row.registration,
          {
            dossier: dossierOf(row),
            recorded: recorded.get(row.id) ?? new Map<string, string>(),
            hashAt: hashes.get(row.id) ?? null,
          },
        ]),
      );
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

  /** Tells how far it is. */
  async progress(actor: Actor, id: string, progress: ImportProgress, at: Date): Promise<void> {
    await this.database.withOrganisation(actor, (connection) => progressOn(connection, actor, id, progress, at));
  }

  /** Asks a run to stop; it does so between two parts of the fleet. False where it runs no more. */
  async askToStop(actor: Actor, id: string): Promise<boolean> {
    const rows = await this.database.withOrganisation(actor, (connection) =>
      connection.query(
        `update imports set progress = progress || '{"stop":true}' where organisation_id = $1 and id = $2 and state = 'running'
         returning 1`,
        [actor.organisationId, id],
      ),
    );
    return rows.length > 0;
  }

  async stopAsked(actor: Actor, id: string): Promise<boolean> {
    const rows = await this.database.withOrganisation(actor, (connection) =>
      connection.query(
        `select 1 from imports where organisation_id = $1 and id = $2 and progress ->> 'stop' = 'true'`,
        [actor.organisationId, id],
      ),
    );
    return rows.length > 0;
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
    readonly keptTypes: Carried['types'];
  },
  at: Date,
): Promise<void> {
  for (const { id, name } of lists.newOperators) {
    await connection.query(
      'insert into operators (organisation_id, id, name) values ($1, $2, $3) on conflict do nothing',
      [actor.organisationId, id, name],
    );
  }
  await keepTypes(connection, actor, lists.keptTypes, at);
  await addTypes(connection, actor, lists.newTypes, at);
}

/** How far it is, on the connection of the work itself: what it says is in is in. */
export async function progressOn(
  connection: Connection,
  actor: Actor,
  id: string,
  progress: ImportProgress,
  at: Date,
): Promise<void> {
  await connection.query(
    `update imports set progress = progress || $3::jsonb where organisation_id = $1 and id = $2 and state = 'running'`,
    [actor.organisationId, id, JSON.stringify({ ...progress, heard: at.toISOString() })],
  );
}

async function endOn(
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

/** Hash of the record after so many entries. */
async function hashesAt(
  connection: Connection,
  organisationId: string,
  asked: readonly { readonly id: string; readonly entries: number }[],
): Promise<ReadonlyMap<string, string>> {
  if (asked.length === 0) return new Map();
  const rows = await connection.query<{ aircraft_id: string; hash: string }>(
    `select c.aircraft_id, c.dossier_hash_after as hash from changes c
     join jsonb_to_recordset($2::jsonb) as a (id text, entries int) on c.aircraft_id = a.id and c.seq = a.entries
     where c.organisation_id = $1`,
    [organisationId, JSON.stringify(asked)],
  );
  return new Map(rows.map(({ aircraft_id, hash }) => [aircraft_id, hash]));
}

/** Natural keys from the history, where nothing is ever superseded, with what was said last under each. */
async function recordedKeys(
  connection: Connection,
  organisationId: string,
  aircraftIds: readonly string[],
): Promise<Map<string, ReadonlyMap<string, string>>> {
  const rows = await connection.query<{
    aircraft_id: string;
    kind: string;
    body: {
      readonly record: Parameters<typeof recordContent>[0] & {
        readonly kind: string;
        readonly subjects: readonly string[];
        readonly done: { readonly date: string };
      };
      readonly meter: string;
      readonly asOf: string;
      readonly dial?: number;
      readonly defect: { readonly subject: string; readonly raised: { readonly date: string } };
    };
  }>(
    `select aircraft_id, kind, body from changes
     where organisation_id = $1 and aircraft_id = any($2)
       and kind in ('record.add', 'record.correct', 'meter.read', 'meter.correct', 'defect.raise')
     order by aircraft_id, seq`,
    [organisationId, aircraftIds],
  );
  const keys = new Map<string, Map<string, string>>();
  for (const { aircraft_id, kind, body } of rows) {
    const own = keys.get(aircraft_id) ?? new Map<string, string>();
    keys.set(aircraft_id, own);
    if (kind === 'defect.raise') own.set(defectKey(body.defect.subject, body.defect.raised.date), '');
    else if (kind.startsWith('meter'))
      own.set(readingKey(body.meter, body.asOf), body.dial === undefined ? '' : readingContent(body.dial));
    else {
      const { record } = body;
      own.set(recordKey(record.kind, record.subjects, record.done.date), recordContent(record));
    }
  }
  return keys;
}

const silent: Pick<ImportReport, 'differenceCount' | 'differences' | 'uncatalogued'> = {
  differenceCount: 0,
  differences: [],
  uncatalogued: [],
};

function rowOf(row: StoredRow, now: Date): ImportRow {
  const { mode, heard, ...progress } = row.progress;
  const cutOff = row.state === 'running' && now.getTime() - Date.parse(heard) > SILENT_MS;
  return {
    id: row.id,
    mode,
    state: cutOff ? 'interrupted' : (row.state as ImportState),
    progress: { step: progress.step, done: progress.done, total: progress.total },
    // A report of an earlier version of the program says nothing of what it did not know.
    report: 'none' in row.report ? null : { ...silent, ...row.report },
    memberId: row.member_id,
    by: row.member_name ?? row.member_id,
    at: row.at,
  };
}
