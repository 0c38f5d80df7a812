import { instantOf } from '../common/clock.js';
import type { PageRequest } from '../common/connection.js';
import { Parameters } from '../common/sql.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { aircraftConditions } from './ask.js';
import type { AircraftFilter } from './ask.js';
import { summaryColumns, summaryJoins, summaryOf } from './summaries.js';
import type { SummaryRow } from './summaries.js';

export interface DueFilter extends AircraftFilter {
  readonly topic?: readonly string[] | null;
}

/** From (null: also what is overdue) until, both compared with the expected moment; null `to`: everything, dated or not. */
export interface Span {
  readonly from: string | null;
  readonly to: string | null;
}

export interface DueRow extends SummaryRow {
  readonly n: number;
  readonly rule_id: string;
  readonly topic: string;
  readonly subject: string;
  readonly subject_name: string;
  readonly what: string;
  readonly effect: string;
  readonly due_on: string | null;
  readonly due_at: Date | null;
  readonly meter: string | null;
  readonly at_centihours: number | null;
  readonly hours_left: number | null;
  readonly projected_at: Date | null;
  readonly expected_at: Date | null;
  readonly combine: string;
  readonly reading_ends_at: Date | null;
}

/** An item that nobody can date stands at the end. */
const order = `coalesce(d.expected_at, 'infinity'::timestamptz), a.registration collate "C", a.id collate "C", d.n`;

function conditions(
  actor: Actor,
  filter: DueFilter | null | undefined,
  span: Span,
  add: (value: unknown) => string,
): string {
  const parts = [aircraftConditions(actor, filter, add), `d.organisation_id = ${add(actor.organisationId)}`];
  if (span.from !== null) parts.push(`d.expected_at >= ${add(span.from)}`);
  if (span.to !== null) parts.push(`d.expected_at < ${add(span.to)}`);
  if (filter?.topic) parts.push(`d.topic = any(${add(filter.topic)})`);
  return parts.join(' and ');
}

export async function dueItems(
  connection: Connection,
  actor: Actor,
  filter: DueFilter | null | undefined,
  span: Span,
  page: PageRequest,
): Promise<DueRow[]> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  const where = conditions(actor, filter, span, add);
  const [at, registration, id, n] = page.after ?? [];
  const after =
    page.after === null
      ? ''
      : `and (${order}) > (${add(at)}::timestamptz, ${add(registration)}, ${add(id)}, ${add(Number(n))}::int)`;
  return await connection.query<DueRow>(
    `select d.n, d.rule_id, d.topic, d.subject, d.subject_name, d.what, d.effect, d.due_on, d.due_at, d.meter, d.at_centihours, d.hours_left,
       d.projected_at, d.expected_at, d.combine, d.reading_ends_at, ${summaryColumns}
     from due_items d join aircraft a on a.organisation_id = d.organisation_id and a.id = d.aircraft_id ${summaryJoins}
     where ${where} ${after} order by ${order} limit ${add(page.first + 1)}`,
    parameters.values,
  );
}

export const dueKey = (row: DueRow): string[] => [
  row.expected_at === null ? 'infinity' : row.expected_at.toISOString(),
  row.registration,
  row.aircraft_id,
  String(row.n),
];

export async function countDue(
  connection: Connection,
  actor: Actor,
  filter: DueFilter | null | undefined,
  span: Span,
): Promise<number> {
  const parameters = new Parameters();
  const rows = await connection.query<{ count: number }>(
    `select count(*)::int as count from due_items d
     join aircraft a on a.organisation_id = d.organisation_id and a.id = d.aircraft_id
     where ${conditions(actor, filter, span, (value) => parameters.add(value))}`,
    parameters.values,
  );
  return rows[0]?.count ?? 0;
}

/** A week begins on Monday, UTC. Certain: the calendar alone puts the date there. */
export async function dueByWeek(
  connection: Connection,
  actor: Actor,
  filter: DueFilter | null | undefined,
  span: Span,
) {
  const parameters = new Parameters();
  return await connection.query<{ week: string; topic: string; certain: number; projected: number }>(
    `select to_char(date_trunc('week', d.expected_at at time zone 'UTC'), 'YYYY-MM-DD') as week, d.topic,
       count(*) filter (where d.expected_at = d.due_at)::int as certain,
       count(*) filter (where d.expected_at is distinct from d.due_at)::int as projected
     from due_items d join aircraft a on a.organisation_id = d.organisation_id and a.id = d.aircraft_id
     where d.expected_at is not null and ${conditions(actor, filter, span, (value) => parameters.add(value))}
     group by 1, 2 order by 1, 2`,
    parameters.values,
  );
}

export function dueNode(row: DueRow) {
  return {
    id: `${row.aircraft_id}:${row.n}`,
    ruleId: row.rule_id,
    topic: row.topic,
    subject: row.subject,
    subjectName: row.subject_name,
    what: row.what,
    effect: row.effect,
    lastGoodDay: row.due_on,
    lapses: row.due_at === null ? null : instantOf(row.due_at),
    meter: row.meter,
    at: row.at_centihours === null ? null : row.at_centihours / 100,
    hoursLeft: row.hours_left === null ? null : row.hours_left / 100,
    projected: row.projected_at === null ? null : instantOf(row.projected_at),
    expected: row.expected_at === null ? null : instantOf(row.expected_at),
    combine: row.combine,
    readingEnds: row.reading_ends_at === null ? null : instantOf(row.reading_ends_at),
    aircraft: summaryOf(row),
  };
}
