import { dossierSchemaVersion } from '@tallywing/rules';
import type { Catalogue, Dossier, EquipmentType, FlightConditions, Policy } from '@tallywing/rules';
import { AppError } from '../common/errors.js';
import type { Connection } from '../database/database.js';
import { housePolicies } from '../house/policies.data.js';
import type { Actor } from '../identity/access.js';
import { catalogueVersion } from './stamp.js';
import type { Profile, Stamp } from './stamp.js';

export interface AircraftRow {
  readonly id: string;
  readonly registration: string;
  readonly make: string;
  readonly model: string;
  readonly operator_id: string | null;
  readonly base_id: string | null;
  readonly revision: number;
  readonly dossier_schema: number;
  readonly configuration: Dossier['configuration'];
  readonly status: Dossier['status'];
  readonly meters: Dossier['meters'];
  readonly dossier_hash: string;
  readonly rules_version: string;
  readonly zones_version: string;
  readonly profiles_hash: string;
  readonly catalogue_hash: string;
  readonly assessment_hash: string;
  readonly judged_at: Date;
  readonly windows_to: Date;
  readonly updated_at: Date;
}

export interface ChangeRow {
  readonly aircraft_id: string;
  readonly seq: number;
  readonly kind: string;
  readonly version: number;
  readonly body: Readonly<Record<string, unknown>>;
  readonly dossier_hash_after: string;
  readonly member_id: string;
  readonly member_name: string | null;
  readonly recorded_at: Date;
  readonly commit_key: string;
}

/** Judged by rules that are not later than ours, and with another stamp or not far enough ahead. */
const TO_JUDGE = `organisation_id = $1 and string_to_array(rules_version, '.')::int[] <= string_to_array($2, '.')::int[]
  and (rules_version <> $2 or zones_version <> $3 or profiles_hash <> $4 or windows_to < $5)`;

/** Everything about aircraft that goes over one open connection. Whoever has it has been authorised already. */
export class AircraftData {
  private known: Promise<readonly Policy[]> | null = null;

  constructor(
    private readonly connection: Connection,
    private readonly organisationId: string,
  ) {}

  /** Locks in the order of ids, whatever order was asked for: the one place that decides it. */
  async lock(ids: readonly string[]): Promise<Map<string, AircraftRow>> {
    const rows = await this.connection.query<AircraftRow & { [column: string]: unknown }>(
      `select * from aircraft where organisation_id = $1 and id = any($2) order by id collate "C" for update`,
      [this.organisationId, ids],
    );
    return new Map(rows.map((row) => [row.id, row]));
  }

  /** One aircraft, or null when it does not exist for this actor. */
  async find(actor: Actor, id: string): Promise<AircraftRow | null> {
    const rows = await this.connection.query<AircraftRow & { [column: string]: unknown }>(
      'select * from aircraft where organisation_id = $1 and id = $2 and ($3::text is null or operator_id = $3)',
      [this.organisationId, id, actor.operatorId ?? null],
    );
    return rows[0] ?? null;
  }

  async ids(): Promise<string[]> {
    const rows = await this.connection.query<{ id: string }>(
      'select id from aircraft where organisation_id = $1 order by id collate "C"',
      [this.organisationId],
    );
    return rows.map((row) => row.id);
  }

  async lastChange(id: string): Promise<{ readonly by: string; readonly at: Date } | null> {
    const rows = await this.connection.query<{ by: string; at: Date }>(
      `select coalesce(m.name, c.member_id) as by, c.recorded_at as at
       from changes c left join members m on m.organisation_id = c.organisation_id and m.id = c.member_id
       where c.organisation_id = $1 and c.aircraft_id = $2 order by c.seq desc limit 1`,
      [this.organisationId, id],
    );
    return rows[0] ?? null;
  }

  async changesOf(id: string, after: number, limit: number): Promise<ChangeRow[]> {
    return await this.connection.query<ChangeRow & { [column: string]: unknown }>(
      `select c.*, m.name as member_name
       from changes c left join members m on m.organisation_id = c.organisation_id and m.id = c.member_id
       where c.organisation_id = $1 and c.aircraft_id = $2 and c.seq > $3 order by c.seq limit $4`,
      [this.organisationId, id, after, limit],
    );
  }

  async catalogueFor(typeIds: readonly string[]): Promise<Catalogue> {
    const wanted = [...new Set(typeIds)].sort();
    const rows =
      wanted.length === 0
        ? []
        : await this.connection.query<{ id: string; body: EquipmentType }>(
            'select id, body from equipment_types where organisation_id = $1 and id = any($2)',
            [this.organisationId, wanted],
          );
    return catalogueOf(wanted, rows, await this.policies());
  }

  /** What can be bought today, and the versions named, which may be superseded. */
  async currentCatalogue(typeIds: readonly string[]): Promise<Catalogue> {
    const rows = await this.connection.query<{ id: string; body: EquipmentType; superseded: boolean }>(
      `select id, body, superseded_by is not null as superseded from equipment_types
       where organisation_id = $1 and (superseded_by is null or id = any($2))`,
      [this.organisationId, typeIds],
    );
    const catalogue = catalogueOf(
      rows.map((row) => row.id),
      rows,
      await this.policies(),
    );
    return { ...catalogue, superseded: rows.filter((row) => row.superseded).map((row) => row.id) };
  }

  async profiles(): Promise<Profile[]> {
    return await this.connection.query<{ id: string; name: string; conditions: FlightConditions }>(
      'select id, name, conditions from flight_profiles where organisation_id = $1 and wanted order by sort, id',
      [this.organisationId],
    );
  }

  /** Read once for each connection: one transaction judges by one set. */
  policies(): Promise<readonly Policy[]> {
    this.known ??= housePolicies(this.connection, this.organisationId);
    return this.known;
  }

  async operatorExists(id: string): Promise<boolean> {
    return (
      (
        await this.connection.query('select 1 from operators where organisation_id = $1 and id = $2', [
          this.organisationId,
          id,
        ])
      ).length > 0
    );
  }

  async registrationTaken(registration: string, byOtherThan: string): Promise<boolean> {
    const rows = await this.connection.query(
      'select 1 from aircraft where organisation_id = $1 and registration = $2 and id <> $3',
      [this.organisationId, registration, byOtherThan],
    );
    return rows.length > 0;
  }

  async ensureBase(base: Dossier['configuration']['aircraft']['base']): Promise<void> {
    await this.connection.query(
      'insert into bases (organisation_id, id, name, zone) values ($1, $2, $3, $4) on conflict do nothing',
      [this.organisationId, base.id, base.name, base.zone],
    );
  }

  /** What the read tables say at this moment with no further hours flown: keys of open findings, and ready by profile. */
  async standing(id: string, now: Date): Promise<{ readonly open: string[]; readonly ready: Record<string, string> }> {
    const open = await this.connection.query<{ key: string }>(
      `select distinct rule_id || '|' || subject as key from findings
       where organisation_id = $1 and aircraft_id = $2 and opens_at <= $3 and (closes_at is null or closes_at > $3) and above < 0 order by 1`,
      [this.organisationId, id, now],
    );
    const ready = await this.connection.query<{ profile_id: string; ready: string }>(
      `select profile_id, ready from ready_windows
       where organisation_id = $1 and aircraft_id = $2 and from_at <= $3 and to_at > $3 and above < 0`,
      [this.organisationId, id, now],
    );
    return {
      open: open.map((row) => row.key),
      ready: Object.fromEntries(ready.map((row) => [row.profile_id, row.ready])),
    };
  }

  /** Inserts the row of a new aircraft, or updates only the parts that differ. */
  async store(
    dossier: Dossier,
    before: AircraftRow | null,
    more: {
      readonly dossierHash: string;
      readonly stamp: { readonly rules: string; readonly zones: string; readonly profiles: string };
      readonly catalogueVersion: string;
      readonly assessmentHash: string;
      readonly windowsTo: string;
      readonly at: Date;
      readonly changedParts: readonly ('configuration' | 'status' | 'meters')[];
    },
  ): Promise<void> {
    this.connection.houseChanged();
    const { aircraft } = dossier.configuration;
    const columns: Record<string, unknown> = {
      registration: aircraft.registration,
      make: aircraft.make,
      model: aircraft.model,
      operator_id: aircraft.operatorId,
      base_id: aircraft.base.id,
      revision: dossier.revision,
      dossier_schema: dossier.schema,
      dossier_hash: more.dossierHash,
      rules_version: more.stamp.rules,
      zones_version: more.stamp.zones,
      profiles_hash: more.stamp.profiles,
      catalogue_hash: more.catalogueVersion,
      assessment_hash: more.assessmentHash,
      judged_at: more.at,
      windows_to: more.windowsTo,
      updated_at: more.at,
      ...Object.fromEntries(
        (before === null ? (['configuration', 'status', 'meters'] as const) : more.changedParts).map((part) => [
          part,
          JSON.stringify(dossier[part]),
        ]),
      ),
    };
    const names = Object.keys(columns);
    const values = [this.organisationId, dossier.aircraftId, ...Object.values(columns)];
    if (before === null) {
      await this.connection.query(
        `insert into aircraft (organisation_id, id, ${names.join(', ')}) values (${values.map((_, at) => `$${at + 1}`).join(', ')})`,
        values,
      );
    } else {
      await this.connection.query(
        `update aircraft set ${names.map((name, at) => `${name} = $${at + 3}`).join(', ')} where organisation_id = $1 and id = $2`,
        values,
      );
    }
  }

  /** Only what a new judgement says of itself; the record stays as it is. */
  async restamp(
    id: string,
    stamp: {
      readonly rules: string;
      readonly zones: string;
      readonly profiles: string;
      readonly catalogue: string;
      readonly assessment: string;
      readonly windowsTo: string;
    },
    at: Date,
  ): Promise<void> {
    this.connection.houseChanged();
    await this.connection.query(
      `update aircraft set rules_version = $3, zones_version = $4, profiles_hash = $5, catalogue_hash = $6, assessment_hash = $7,
         windows_to = $8, judged_at = $9 where organisation_id = $1 and id = $2`,
      [
        this.organisationId,
        id,
        stamp.rules,
        stamp.zones,
        stamp.profiles,
        stamp.catalogue,
        stamp.assessment,
        stamp.windowsTo,
        at,
      ],
    );
  }

  /**
   * The next aircraft that is judged with an old stamp or not far enough ahead, locked; null when there is none. One that
   * somebody is recording on is passed over: it is judged with that work. Newer rules than ours are left to a newer process.
   */
  async nextToJudge(stamp: Stamp, windowsBefore: Date, except: readonly string[]): Promise<AircraftRow | null> {
    const rows = await this.connection.query<AircraftRow & { [column: string]: unknown }>(
      `select * from aircraft where ${TO_JUDGE} and id <> all($6)
       order by (windows_to >= $5) desc, windows_to, id limit 1 for update skip locked`,
      [this.organisationId, stamp.rules, stamp.zones, stamp.profiles, windowsBefore, except],
    );
    return rows[0] ?? null;
  }

  async countToJudge(stamp: Stamp, windowsBefore: Date): Promise<number> {
    const rows = await this.connection.query<{ count: number }>(
      `select count(*)::int as count from aircraft where ${TO_JUDGE}`,
      [this.organisationId, stamp.rules, stamp.zones, stamp.profiles, windowsBefore],
    );
    return rows[0]?.count ?? 0;
  }

  async append(
    changes: readonly Omit<ChangeRow, 'member_name' | 'recorded_at'>[],
    at: Date,
    jobId: string | null,
  ): Promise<void> {
    await this.connection.query(
      `insert into changes (organisation_id, aircraft_id, seq, kind, version, body, dossier_hash_after, member_id, recorded_at, commit_key, job_id)
       select $1, r.aircraft_id, r.seq, r.kind, r.version, r.body, r.dossier_hash_after, r.member_id, $3, r.commit_key, $4
       from jsonb_populate_recordset(null::changes, $2::jsonb) r`,
      [this.organisationId, JSON.stringify(changes), at, jobId],
    );
  }

  async keepAssessment(
    aircraftId: string,
    revision: number,
    shown: { readonly hash: string; readonly body: Buffer },
    at: Date,
  ): Promise<void> {
    await this.connection.query(
      'insert into assessments (organisation_id, hash, aircraft_id, revision, body, created_at) values ($1, $2, $3, $4, $5, $6) on conflict do nothing',
      [this.organisationId, shown.hash, aircraftId, revision, shown.body, at],
    );
  }

  async addEvent(kind: string, aircraftId: string, at: Date, body: object): Promise<void> {
    await this.connection.query(
      'insert into events (organisation_id, kind, aircraft_id, at, body) values ($1, $2, $3, $4, $5)',
      [this.organisationId, kind, aircraftId, at, JSON.stringify(body)],
    );
  }

  /** Work of a plan that was never started is recorded at once; a job in work goes on until it is released. */
  async closeJob(jobId: string, aircraftId: string, at: Date): Promise<boolean> {
    const rows = await this.connection.query(
      `update jobs set state = case state when 'open' then 'recorded' else state end, updated_at = $4
       where organisation_id = $1 and id = $2 and aircraft_id = $3 and state in ('open', 'in-work') returning 1`,
      [this.organisationId, jobId, aircraftId, at],
    );
    return rows.length > 0;
  }
}

/**
 * The dossier as the core knows it.
 * @throws AppError UNAVAILABLE when a newer version of the program wrote it
 */
export function dossierOf(row: AircraftRow): Dossier {
  refuseNewer(row);
  return {
    schema: dossierSchemaVersion,
    aircraftId: row.id,
    revision: row.revision,
    configuration: row.configuration,
    status: row.status,
    meters: row.meters,
  };
}

/** @throws AppError UNAVAILABLE when a newer version of the program wrote it */
export function refuseNewer(row: Pick<AircraftRow, 'dossier_schema'>): void {
  if (row.dossier_schema > dossierSchemaVersion) {
    throw new AppError({
      code: 'UNAVAILABLE',
      reason: 'This record was written by a newer version of the program, which is being put into service.',
    });
  }
}

export function typeIdsOf(dossier: Dossier): string[] {
  return dossier.configuration.units.flatMap((unit) => (unit.typeId === null ? [] : [unit.typeId]));
}

function catalogueOf(
  ids: readonly string[],
  rows: readonly { readonly id: string; readonly body: EquipmentType }[],
  policies: readonly Policy[],
): Catalogue {
  return {
    version: catalogueVersion(ids),
    types: Object.fromEntries(rows.map((row) => [row.id, row.body])),
    ...(policies.length === 0 ? {} : { policies }),
  };
}
