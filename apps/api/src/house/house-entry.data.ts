import { instantOf } from '../common/clock.js';
import type { Clock } from '../common/clock.js';
import type { PageRequest } from '../common/connection.js';
import { AppError } from '../common/errors.js';
import type { Connection, Database } from '../database/database.js';
import type { Actor } from '../identity/access.js';

export interface Subject {
  readonly kind: 'person' | 'operator' | 'base' | 'flight-profile' | 'test-set' | 'agency' | 'policy' | 'organisation';
  readonly id: string;
  readonly name: string;
}

type Values = Readonly<Record<string, unknown>>;

/** One row of what was changed about the organisation. Never a secret: a new password leaves only its kind. */
export interface HouseEntry {
  readonly kind: string;
  readonly subject: Subject;
  readonly before: Values | null;
  readonly after: Values | null;
}

/** What a change of the organisation did; without an entry it found everything as wanted already. */
export interface Done<T> {
  readonly answer: T;
  readonly entry: HouseEntry | null;
}

/**
 * The one way to change the organisation: in one transaction, one change after the other, each with its entry. The lock is
 * weak enough that aircraft, which refer to the organisation, can be recorded on meanwhile.
 */
export async function changeHouse<T>(
  database: Database,
  clock: Clock,
  actor: Actor,
  work: (connection: Connection, now: Date) => Promise<Done<T>>,
): Promise<T> {
  return await database.withOrganisation(actor, async (connection) => {
    const now = clock.now();
    await connection.query('select 1 from organisations where organisation_id = $1 for no key update', [
      actor.organisationId,
    ]);
    const { answer, entry } = await work(connection, now);
    if (entry !== null) await addHouseEntry(connection, actor, entry, now);
    return answer;
  });
}

async function addHouseEntry(connection: Connection, actor: Actor, entry: HouseEntry, now: Date): Promise<void> {
  connection.houseChanged();
  const { kind, subject, before, after } = entry;
  await connection.query(
    `insert into house_entries (organisation_id, at, member_id, kind, subject_kind, subject_id, subject_name, before, after)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
    [
      actor.organisationId,
      now,
      actor.memberId,
      kind,
      subject.kind,
      subject.id,
      subject.name,
      before === null ? null : JSON.stringify(before),
      after === null ? null : JSON.stringify(after),
    ],
  );
}

/** Only what differs, both ways. @returns null when nothing does */
export function difference(before: Values, after: Values): { readonly before: Values; readonly after: Values } | null {
  const changed = Object.keys(after).filter((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]));
  if (changed.length === 0) return null;
  const of = (values: Values): Values => Object.fromEntries(changed.map((key) => [key, values[key] ?? null]));
  return { before: of(before), after: of(after) };
}

/** @throws AppError STALE_REVISION naming who changed the subject last */
export async function expectRevision(
  connection: Connection,
  actor: Actor,
  subject: Subject,
  is: number,
  expected: number,
): Promise<void> {
  if (is === expected) return;
  const [last] = await connection.query<{ by: string; at: Date }>(
    `select coalesce(m.name, e.member_id) as by, e.at
     from house_entries e left join members m on m.organisation_id = e.organisation_id and m.id = e.member_id
     where e.organisation_id = $1 and e.subject_kind = $2 and e.subject_id = $3 order by e.id desc limit 1`,
    [actor.organisationId, subject.kind, subject.id],
  );
  throw new AppError({
    code: 'STALE_REVISION',
    what: `entry of ${subject.name}`,
    revision: is,
    changedBy: last?.by ?? 'somebody',
    changedAt: instantOf(last?.at ?? new Date(0)),
  });
}

export interface HouseEntryRow {
  readonly id: string;
  readonly at: Date;
  readonly by: string;
  readonly kind: string;
  readonly subject_kind: Subject['kind'];
  readonly subject_id: string;
  readonly subject_name: string;
  readonly before: Values | null;
  readonly after: Values | null;
  readonly [column: string]: unknown;
}

/** Newest first, one more than asked for. */
export async function houseEntries(connection: Connection, actor: Actor, page: PageRequest): Promise<HouseEntryRow[]> {
  return await connection.query<HouseEntryRow>(
    `select e.id, e.at, coalesce(m.name, e.member_id) as by, e.kind, e.subject_kind, e.subject_id, e.subject_name, e.before, e.after
     from house_entries e left join members m on m.organisation_id = e.organisation_id and m.id = e.member_id
     where e.organisation_id = $1 and ($2::bigint is null or e.id < $2) order by e.id desc limit $3`,
    [actor.organisationId, page.after?.[0] ?? null, page.first + 1],
  );
}

export async function countHouseEntries(connection: Connection, actor: Actor): Promise<number> {
  const [row] = await connection.query<{ total: number }>(
    'select count(*)::int as total from house_entries where organisation_id = $1',
    [actor.organisationId],
  );
  return row?.total ?? 0;
}
