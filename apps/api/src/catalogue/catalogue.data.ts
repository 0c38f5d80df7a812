import type { EquipmentType } from '@tallywing/rules';
import type { PageRequest } from '../common/connection.js';
import { Parameters } from '../common/sql.js';
import type { Connection } from '../database/database.js';

export interface TypeRow {
  readonly id: string;
  readonly family: string;
  readonly superseded_by: string | null;
  readonly body: EquipmentType;
  readonly maker: string;
  readonly name: string;
  readonly [column: string]: unknown;
}

export interface CatalogueFilter {
  readonly text?: string | null;
  readonly function?: string | null;
}

function conditions(
  organisationId: string,
  filter: CatalogueFilter | null | undefined,
  add: (value: unknown) => string,
): string {
  const parts = [`organisation_id = ${add(organisationId)}`, 'superseded_by is null'];
  const text = filter?.text?.trim().toLowerCase();
  if (text)
    parts.push(
      `position(${add(text)} in lower(body ->> 'maker' || ' ' || (body ->> 'name') || ' ' || (body ->> 'partNumber'))) > 0`,
    );
  if (filter?.function) parts.push(`body -> 'functions' ? ${add(filter.function)}`);
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
  const order = `(body ->> 'maker') collate "C", (body ->> 'name') collate "C", id collate "C"`;
  const after = page.after === null ? '' : `and (${order}) > (${page.after.map(add).join(', ')})`;
  return await connection.query<TypeRow>(
    `select id, family, superseded_by, body, body ->> 'maker' as maker, body ->> 'name' as name from equipment_types
     where ${where} ${after} order by ${order} limit ${add(page.first + 1)}`,
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
    `select count(*)::int as count from equipment_types where ${conditions(organisationId, filter, (value) => parameters.add(value))}`,
    parameters.values,
  );
  return rows[0]?.count ?? 0;
}

export async function typeById(connection: Connection, organisationId: string, id: string): Promise<TypeRow | null> {
  const rows = await connection.query<TypeRow>(
    `select id, family, superseded_by, body, body ->> 'maker' as maker, body ->> 'name' as name from equipment_types
     where organisation_id = $1 and id = $2`,
    [organisationId, id],
  );
  return rows[0] ?? null;
}

/**
 * Adds entries under the ids made from their content. An entry that is there already stays as it is; a new version of a family
 * takes the place of the ones before it, which stay for the aircraft that use them.
 */
export async function addTypes(
  connection: Connection,
  organisationId: string,
  types: readonly EquipmentType[],
  at: Date,
): Promise<void> {
  for (const type of types) {
    const made = await connection.query(
      `insert into equipment_types (organisation_id, id, family, body, created_at) values ($1, $2, $3, $4, $5)
       on conflict do nothing returning 1`,
      [organisationId, type.id, type.family, JSON.stringify(type), at],
    );
    if (made.length === 0) continue;
    await connection.query(
      `update equipment_types set superseded_by = $3
       where organisation_id = $1 and family = $2 and id <> $3 and superseded_by is null`,
      [organisationId, type.family, type.id],
    );
  }
}
