import type { Connection } from '../database/database.js';
import type { Role } from '../identity/access.js';
import { certificateOf } from './certificate.js';
import type { Certificate } from './certificate.js';

export interface Person {
  readonly id: string;
  readonly email: string;
  readonly name: string;
  readonly role: Role;
  readonly operator: { readonly id: string; readonly name: string } | null;
  readonly certificate: Certificate | null;
  readonly active: boolean;
  readonly revision: number;
}

/** What a manager can change about a person, the password aside. */
export interface PersonFacts {
  readonly name: string;
  readonly role: Role;
  readonly operatorId: string | null;
  readonly certificate: Certificate | null;
  readonly active: boolean;
}

interface PersonRow {
  readonly id: string;
  readonly email: string;
  readonly name: string;
  readonly role: Role;
  readonly operator_id: string | null;
  readonly operator_name: string | null;
  readonly certificate: unknown;
  readonly active: boolean;
  readonly revision: number;
  readonly [column: string]: unknown;
}

const source = `select m.id, m.email, m.name, m.role, m.operator_id, o.name as operator_name, m.certificate, m.active, m.revision
  from members m left join operators o on o.organisation_id = m.organisation_id and o.id = m.operator_id`;

export async function people(connection: Connection, organisationId: string): Promise<Person[]> {
  const rows = await connection.query<PersonRow>(
    `${source} where m.organisation_id = $1 order by m.active desc, m.name, m.id`,
    [organisationId],
  );
  return rows.map(personOf);
}

export async function personById(connection: Connection, organisationId: string, id: string): Promise<Person | null> {
  const [row] = await connection.query<PersonRow>(`${source} where m.organisation_id = $1 and m.id = $2`, [
    organisationId,
    id,
  ]);
  return row === undefined ? null : personOf(row);
}

export async function insertPerson(
  connection: Connection,
  organisationId: string,
  person: PersonFacts & { readonly id: string; readonly email: string; readonly passwordHash: string },
): Promise<boolean> {
  const rows = await connection.query(
    `insert into members (organisation_id, id, email, name, password_hash, role, operator_id, certificate, active)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9) on conflict do nothing returning 1`,
    [
      organisationId,
      person.id,
      person.email,
      person.name,
      person.passwordHash,
      person.role,
      person.operatorId,
      JSON.stringify(person.certificate ?? {}),
      person.active,
    ],
  );
  return rows.length > 0;
}

export async function updatePerson(
  connection: Connection,
  organisationId: string,
  id: string,
  facts: PersonFacts,
): Promise<void> {
  await connection.query(
    `update members set name = $3, role = $4, operator_id = $5, certificate = $6, active = $7, revision = revision + 1
     where organisation_id = $1 and id = $2`,
    [
      organisationId,
      id,
      facts.name,
      facts.role,
      facts.operatorId,
      JSON.stringify(facts.certificate ?? {}),
      facts.active,
    ],
  );
}

export async function updatePassword(
  connection: Connection,
  organisationId: string,
  id: string,
  passwordHash: string,
): Promise<void> {
  await connection.query(
    'update members set password_hash = $3, revision = revision + 1 where organisation_id = $1 and id = $2',
    [organisationId, id, passwordHash],
  );
}

export async function passwordHashOf(
  connection: Connection,
  organisationId: string,
  id: string,
): Promise<string | null> {
  const [row] = await connection.query<{ hash: string }>(
    'select password_hash as hash from members where organisation_id = $1 and id = $2',
    [organisationId, id],
  );
  return row?.hash ?? null;
}

export async function otherActiveManagers(connection: Connection, organisationId: string, id: string): Promise<number> {
  const [row] = await connection.query<{ others: number }>(
    `select count(*)::int as others from members where organisation_id = $1 and id <> $2 and role = 'manager' and active`,
    [organisationId, id],
  );
  return row?.others ?? 0;
}

export async function operatorKnown(connection: Connection, organisationId: string, id: string): Promise<boolean> {
  const rows = await connection.query('select 1 from operators where organisation_id = $1 and id = $2', [
    organisationId,
    id,
  ]);
  return rows.length > 0;
}

function personOf(row: PersonRow): Person {
  return {
    id: row.id,
    email: row.email,
    name: row.name,
    role: row.role,
    operator: row.operator_id === null ? null : { id: row.operator_id, name: row.operator_name ?? row.operator_id },
    certificate: certificateOf(row.certificate),
    active: row.active,
    revision: row.revision,
  };
}
