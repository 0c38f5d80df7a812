import { codeWords, messageOf } from '@tallywing/rules';
import { splitKey } from '../aircraft/words.js';
import type { Values } from '../aircraft/words.js';
import { instantOf } from '../common/clock.js';
import type { PageRequest } from '../common/connection.js';
import { Parameters } from '../common/sql.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { aircraftConditions } from './ask.js';
import type { AircraftFilter, Moment } from './ask.js';
import { summaryColumns, summaryJoins, summaryOf, wordsFor } from './summaries.js';
import type { AircraftSummary, SummaryRow } from './summaries.js';

export interface FindingFilter extends AircraftFilter {
  readonly effect?: readonly string[] | null;
  readonly topic?: readonly string[] | null;
  readonly ruleId?: string | null;
}

export interface FindingRow extends SummaryRow {
  readonly n: number;
  readonly rank: number;
  readonly rule_id: string;
  readonly topic: string;
  readonly subject: string;
  readonly subject_name: string;
  readonly outcome: string;
  readonly effect: string;
  readonly capabilities: readonly string[];
  readonly message_id: string;
  readonly data: Values;
  readonly opens_at: Date;
  readonly closes_at: Date | null;
  readonly above: number;
  readonly up_to: number | null;
  readonly remedies: readonly object[];
}

export interface FindingNode {
  readonly id: string;
  readonly key: string;
  readonly text: string;
  readonly aircraft: AircraftSummary;
  readonly [field: string]: unknown;
}

const rank = `case f.effect when 'stops-aircraft' then 0 when 'stops-operation' then 1 when 'stops-release' then 2 when 'record' then 3 else 4 end`;
const columns = `f.n, ${rank} as rank, f.rule_id, f.topic, f.subject, f.subject_name, f.outcome, f.effect, f.capabilities, f.message_id,
  f.data, f.opens_at, f.closes_at, f.above, f.up_to, f.remedies, ${summaryColumns}`;
const source = `from findings f
  join aircraft a on a.organisation_id = f.organisation_id and a.id = f.aircraft_id ${summaryJoins}`;

function conditions(
  actor: Actor,
  filter: FindingFilter | null | undefined,
  moment: Moment,
  add: (value: unknown) => string,
): string {
  const parts = [
    aircraftConditions(actor, filter, add),
    `f.organisation_id = ${add(actor.organisationId)}`,
    `f.opens_at <= ${add(moment.to)} and (f.closes_at is null or f.closes_at > ${add(moment.from)})`,
    `f.above < ${add(moment.hours)} and (f.up_to is null or f.up_to >= ${add(moment.hours)})`,
  ];
  if (filter?.effect) parts.push(`f.effect = any(${add(filter.effect)})`);
  if (filter?.topic) parts.push(`f.topic = any(${add(filter.topic)})`);
  if (filter?.ruleId) parts.push(`f.rule_id = ${add(filter.ruleId)}`);
  return parts.join(' and ');
}

export async function openFindings(
  connection: Connection,
  actor: Actor,
  filter: FindingFilter | null | undefined,
  moment: Moment,
  page: PageRequest,
): Promise<FindingRow[]> {
  const { values, add } = collect();
  const where = conditions(actor, filter, moment, add);
  const [afterRank, registration, id, n] = page.after ?? [];
  const after =
    page.after === null
      ? ''
      : `and (${rank}, a.registration collate "C", a.id collate "C", f.n) > (${add(Number(afterRank))}::int, ${add(registration)}, ${add(id)}, ${add(Number(n))}::int)`;
  return await connection.query<FindingRow>(
    `select ${columns} ${source} where ${where} ${after}
     order by ${rank}, a.registration collate "C", a.id collate "C", f.n limit ${add(page.first + 1)}`,
    values,
  );
}

export const findingKey = (row: FindingRow): string[] => [
  String(row.rank),
  row.registration,
  row.aircraft_id,
  String(row.n),
];

export async function countByEffect(
  connection: Connection,
  actor: Actor,
  filter: FindingFilter | null | undefined,
  moment: Moment,
): Promise<{ readonly effect: string; readonly count: number }[]> {
  const { values, add } = collect();
  return await connection.query<{ effect: string; count: number }>(
    `select f.effect, count(*)::int as count from findings f
     join aircraft a on a.organisation_id = f.organisation_id and a.id = f.aircraft_id
     where ${conditions(actor, filter, moment, add)} group by f.effect order by min(${rank})`,
    values,
  );
}

export async function openByRule(connection: Connection, actor: Actor, moment: Moment): Promise<Map<string, number>> {
  const { values, add } = collect();
  const rows = await connection.query<{ rule_id: string; count: number }>(
    `select f.rule_id, count(*)::int as count from findings f
     join aircraft a on a.organisation_id = f.organisation_id and a.id = f.aircraft_id
     where ${conditions(actor, null, moment, add)} group by f.rule_id`,
    values,
  );
  return new Map(rows.map((row) => [row.rule_id, row.count]));
}

/** Findings that stop something and opened between the two moments by the passing of time, not by recorded work. */
export async function lapsedBetween(
  connection: Connection,
  actor: Actor,
  since: string,
  now: string,
): Promise<FindingRow[]> {
  const { values, add } = collect();
  const moment = { from: now, to: now, hours: 0 };
  return await connection.query<FindingRow>(
    `select ${columns} ${source}
     where ${conditions(actor, { effect: ['stops-aircraft', 'stops-operation'] }, moment, add)} and f.opens_at > ${add(since)}
       and not exists (select 1 from events e where e.organisation_id = f.organisation_id and e.aircraft_id = f.aircraft_id
                       and e.kind = 'recorded' and date_trunc('minute', e.at) = f.opens_at)
     order by f.opens_at desc, a.registration collate "C", f.n limit 100`,
    values,
  );
}

export interface Because {
  readonly key: string;
  readonly ruleId: string;
  readonly subject: string;
  readonly text: string;
  readonly effect: string | null;
}

/** A result key of one aircraft, and the point at which it is what stops a flight. */
export interface WantedReason {
  readonly aircraftId: string;
  readonly key: string;
  readonly at: string;
  /** Flight hours since the latest reading, whole hundredths. */
  readonly hours: number;
}

interface ReasonRow extends Pick<FindingRow, 'rule_id' | 'message_id' | 'data' | 'base_zone' | 'effect'> {
  /** Its place among the wanted ones, from 1. */
  readonly place: number;
}

/** The words behind result keys: the finding open at the point, else the nearest one to come or gone. */
export async function reasonsFor(
  connection: Connection,
  organisationId: string,
  wanted: readonly WantedReason[],
): Promise<(one: WantedReason) => Because> {
  const byName = new Map(wanted.map((each) => [nameOf(each), each]));
  const asked = [...byName.values()];
  const rows =
    asked.length === 0
      ? []
      : await connection.query<ReasonRow>(
          `select w.place::int, f.rule_id, f.message_id, f.data, f.effect, b.zone as base_zone
           from unnest($2::text[], $3::text[], $4::timestamptz[], $5::int[]) with ordinality as w (aircraft_id, key, at, hours, place)
           join aircraft a on a.organisation_id = $1 and a.id = w.aircraft_id
           left join bases b on b.organisation_id = a.organisation_id and b.id = a.base_id
           cross join lateral (
             select f.* from findings f
             where f.organisation_id = $1 and f.aircraft_id = w.aircraft_id and f.rule_id || '|' || f.subject = w.key
             order by (f.above < w.hours and (f.up_to is null or f.up_to >= w.hours)) desc,
               (f.opens_at <= w.at and (f.closes_at is null or f.closes_at > w.at)) desc,
               abs(extract(epoch from f.opens_at - w.at)), f.n
             limit 1) f`,
          [
            organisationId,
            asked.map((each) => each.aircraftId),
            asked.map((each) => each.key),
            asked.map((each) => each.at),
            asked.map((each) => each.hours),
          ],
        );
  const found = new Map(rows.map((row) => [asked[row.place - 1], row]));
  return (one) => {
    const { ruleId, subject } = splitKey(one.key);
    const row = found.get(byName.get(nameOf(one)));
    return {
      key: one.key,
      ruleId,
      subject,
      text: row ? textOf(row) : codeWords(ruleId),
      effect: row?.effect ?? null,
    };
  };
}

function nameOf({ aircraftId, key, at, hours }: WantedReason): string {
  return `${aircraftId} ${key} ${at} ${hours}`;
}

function textOf(row: Pick<FindingRow, 'rule_id' | 'message_id' | 'data' | 'base_zone'>): string {
  return messageOf({ ruleId: row.rule_id, messageId: row.message_id, data: row.data }, wordsFor(row));
}

export function findingNode(row: FindingRow): FindingNode {
  return {
    id: `${row.aircraft_id}:${row.n}`,
    key: `${row.rule_id}|${row.subject}`,
    ruleId: row.rule_id,
    topic: row.topic,
    subject: row.subject,
    subjectName: row.subject_name,
    outcome: row.outcome,
    effect: row.effect,
    capabilities: row.capabilities,
    messageId: row.message_id,
    data: row.data,
    text: textOf(row),
    opensAt: instantOf(row.opens_at),
    closesAt: row.closes_at === null ? null : instantOf(row.closes_at),
    fromHours: row.above < 0 ? null : row.above / 100,
    toHours: row.up_to === null ? null : row.up_to / 100,
    remedies: row.remedies,
    aircraft: summaryOf(row),
  };
}

function collect(): { readonly values: unknown[]; readonly add: (value: unknown) => string } {
  const parameters = new Parameters();
  return { values: parameters.values, add: (value) => parameters.add(value) };
}
