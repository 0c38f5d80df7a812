import type { PageRequest } from '../common/connection.js';
import type { Connection } from '../database/database.js';
import { summaryColumns, summaryJoins } from '../fleet/summaries.js';
import type { SummaryRow } from '../fleet/summaries.js';
import type { Actor } from '../identity/access.js';
import type { Span } from './trace.js';

export interface TracedRow extends SummaryRow {
  readonly number: number;
  readonly kind: string;
  readonly done: string;
  readonly outcome: string | null;
  readonly signer: string | null;
}

/**
 * From the changes, because an aircraft's own record keeps only the newest few entries of a kind. An entry corrected since
 * counts as it was corrected: the correction is itself such a row where it still names the set. Looked up row by row along
 * the key of the one aircraft, because a join would read every correction of the house.
 */
const named = `from changes c join aircraft a on a.organisation_id = c.organisation_id and a.id = c.aircraft_id
  where c.organisation_id = $1 and c.test_set_serial = lower($2)
    and ($3::text is null or c.body #>> '{record,done,date}' >= $3) and ($4::text is null or c.body #>> '{record,done,date}' <= $4)
    and not coalesce((select true from changes l where l.organisation_id = c.organisation_id and l.aircraft_id = c.aircraft_id
      and l.seq > c.seq and l.kind = 'record.correct' and l.body #>> '{record,id}' = c.body #>> '{record,id}' limit 1), false)`;

/** Newest work first, one more than asked for. */
export async function tracedEntries(
  connection: Connection,
  actor: Actor,
  serial: string,
  span: Span,
  page: PageRequest,
): Promise<TracedRow[]> {
  const [done, registration, number] = page.after ?? [null, null, null];
  return await connection.query<TracedRow>(
    `select t.number, t.kind, t.done, t.outcome, t.signer, ${summaryColumns}
     from (select c.organisation_id, c.aircraft_id, a.registration, c.seq as number, c.body #>> '{record,kind}' as kind,
             c.body #>> '{record,done,date}' as done, c.body #>> '{record,outcome}' as outcome,
             c.body #>> '{record,agency,name}' as signer ${named}) t
       join aircraft a on a.organisation_id = t.organisation_id and a.id = t.aircraft_id ${summaryJoins}
     where $5::text is null or t.done < $5 or (t.done = $5 and (t.registration, t.number) > ($6, $7::int))
     order by t.done desc, t.registration, t.number limit $8`,
    [actor.organisationId, serial, span.from, span.to, done, registration, number, page.first + 1],
  );
}

export async function countTraced(connection: Connection, actor: Actor, serial: string, span: Span): Promise<number> {
  const [row] = await connection.query<{ total: number }>(`select count(*)::int as total ${named}`, [
    actor.organisationId,
    serial,
    span.from,
    span.to,
  ]);
  return row?.total ?? 0;
}
