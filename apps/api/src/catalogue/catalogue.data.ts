import type { EquipmentType } from '@tallywing/rules';
import type { AircraftRow } from '../aircraft/aircraft.data.js';
import type { PageRequest } from '../common/connection.js';
import { Parameters } from '../common/sql.js';
import type { Connection } from '../database/database.js';
import { summaryColumns, summaryJoins } from '../fleet/summaries.js';
import type { SummaryRow } from '../fleet/summaries.js';
import type { Actor } from '../identity/access.js';

export interface TypeRow {
  readonly id: string;
  readonly family: string;
  readonly superseded_by: string | null;
  readonly body: EquipmentType;
  readonly maker: string;
  readonly name: string;
  readonly created_at: Date;
  /** Name of the person, or null. */
  readonly entered_by: string | null;
  readonly [column: string]: unknown;
}

const columns = `t.id, t.family, t.superseded_by, t.body, t.body ->> 'maker' as maker, t.body ->> 'name' as name, t.created_at,
  coalesce(m.name, t.entered_by) as entered_by`;
const source = `equipment_types t left join members m on m.organisation_id = t.organisation_id and m.id = t.entered_by`;

export interface CatalogueFilter {
  readonly text?: string | null;
  readonly function?: string | null;
}

function conditions(
  organisationId: string,
  filter: CatalogueFilter | null | undefined,
  add: (value: unknown) => string,
): string {
  const parts = [`t.organisation_id = ${add(organisationId)}`, 't.superseded_by is null'];
  const text = filter?.text?.trim().toLowerCase();
  if (text)
    parts.push(
      `position(${add(text)} in lower(t.body ->> 'maker' || ' ' || (t.body ->> 'name') || ' ' || (t.body ->> 'partNumber'))) > 0`,
    );
  if (filter?.function) parts.push(`t.body -> 'functions' ? ${add(filter.function)}`);
  return parts.join(' and ');
}

export async function currentTypes(
  connection: Connection,
  organisationId: string,
  filter: CatalogueFilter | null | undefined,
  page: PageRequest,
): Promise<TypeRow[]> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  const where = conditions(organisationId, filter, add);
  const order = `(t.body ->> 'maker') collate "C", (t.body ->> 'name') collate "C", t.id collate "C"`;
  const after = page.after === null ? '' : `and (${order}) > (${page.after.map(add).join(', ')})`;
  return await connection.query<TypeRow>(
    `select ${columns} from ${source} where ${where} ${after} order by ${order} limit ${add(page.first + 1)}`,
    parameters.values,
  );
}

export async function countTypes(
  connection: Connection,
  organisationId: string,
  filter: CatalogueFilter | null | undefined,
): Promise<number> {
  const parameters = new Parameters();
  const rows = await connection.query<{ count: number }>(
    `select count(*)::int as count from equipment_types t where ${conditions(organisationId, filter, (value) => parameters.add(value))}`,
    parameters.values,
  );
  return rows[0]?.count ?? 0;
}

export async function typeById(connection: Connection, organisationId: string, id: string): Promise<TypeRow | null> {
  const rows = await connection.query<TypeRow>(
    `select ${columns} from ${source} where t.organisation_id = $1 and t.id = $2`,
    [organisationId, id],
  );
  return rows[0] ?? null;
}

/** The one in force first, then newest first. */
export async function versionsOf(connection: Connection, organisationId: string, family: string): Promise<TypeRow[]> {
  return await connection.query<TypeRow>(
    `select ${columns} from ${source} where t.organisation_id = $1 and t.family = $2
     order by (t.superseded_by is null) desc, t.created_at desc, t.id`,
    [organisationId, family],
  );
}

/** Which of these families the catalogue has. */
export async function knownFamilies(
  connection: Connection,
  organisationId: string,
  families: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await connection.query<{ family: string }>(
    'select distinct family from equipment_types where organisation_id = $1 and family = any($2)',
    [organisationId, families],
  );
  return new Set(rows.map((row) => row.family));
}

/** Until the transaction ends nobody else makes a version of these families; also of one that has none yet. */
export async function lockFamilies(
  connection: Connection,
  organisationId: string,
  families: readonly string[],
): Promise<void> {
  for (const family of [...new Set(families)].sort()) {
    await connection.query('select pg_advisory_xact_lock(hashtextextended($1, 1))', [`${organisationId} ${family}`]);
  }
}

/**
 * Adds entries under the ids made from their content. An entry that is there already stays as it is; a new version of a family
 * takes the place of the ones before it, which stay for the aircraft that use them.
 */
export async function addTypes(
  connection: Connection,
  actor: Pick<Actor, 'organisationId' | 'memberId'>,
  types: readonly EquipmentType[],
  at: Date,
): Promise<void> {
  const { organisationId } = actor;
  await lockFamilies(
    connection,
    organisationId,
    types.map(({ family }) => family),
  );
  for (const type of types) {
    const made = await connection.query(
      `insert into equipment_types (organisation_id, id, family, body, created_at, entered_by) values ($1, $2, $3, $4, $5, $6)
       on conflict do nothing returning 1`,
      [organisationId, type.id, type.family, JSON.stringify(type), at, actor.memberId],
    );
    if (made.length === 0) continue;
    await connection.query(
      `update equipment_types set superseded_by = $3
       where organisation_id = $1 and family = $2 and id <> $3 and superseded_by is null`,
      [organisationId, type.family, type.id],
    );
  }
}

/** Aircraft with a unit recorded under one of these versions, by registration; those that this actor may see. */
export async function aircraftWith(
  connection: Connection,
  actor: Actor,
  typeIds: readonly string[],
  most: number,
): Promise<{ readonly total: number; readonly rows: readonly (AircraftRow & SummaryRow)[] }> {
  const rows = await connection.query<AircraftRow & SummaryRow & { readonly total: number }>(
    `select a.*, ${summaryColumns}, count(*) over ()::int as total from aircraft a ${summaryJoins}
     where a.organisation_id = $1 and ($3::text is null or a.operator_id = $3) and exists (
       select 1 from jsonb_array_elements(a.configuration -> 'units') unit where unit ->> 'typeId' = any($2))
     order by a.registration limit $4`,
    [actor.organisationId, typeIds, actor.operatorId ?? null, most],
  );
  return { total: rows[0]?.total ?? 0, rows };
}
