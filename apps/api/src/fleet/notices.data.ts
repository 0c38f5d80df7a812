import { messageOf } from '@tallywing/rules';
import { splitKey } from '../aircraft/words.js';
import type { Values } from '../aircraft/words.js';
import type { Profile } from '../aircraft/stamp.js';
import { instantOf } from '../common/clock.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { summaryColumns, summaryJoins, summaryOf, wordsFor } from './summaries.js';
import type { SummaryRow } from './summaries.js';

interface NoticeRow extends SummaryRow {
  readonly at: Date;
  readonly kind: 'opened' | 'turned';
  readonly subject: string;
  readonly body: {
    readonly messageId: string;
    readonly data: Values;
    readonly was: string;
    readonly is: string;
  };
}

/** What the worker noted that time alone changed, newest first. */
export async function noticesSince(connection: Connection, actor: Actor, since: string): Promise<NoticeRow[]> {
  return await connection.query<NoticeRow>(
    `select t.at, t.kind, t.subject, t.body, ${summaryColumns}
     from time_notices t join aircraft a on a.organisation_id = t.organisation_id and a.id = t.aircraft_id ${summaryJoins}
     where t.organisation_id = $1 and t.at > $2 and ($3::text is null or a.operator_id = $3)
     order by t.at desc, a.registration collate "C", t.kind, t.subject limit 500`,
    [actor.organisationId, since, actor.operatorId ?? null],
  );
}

/** @returns null for an answer to a flight that the house no longer asks about */
export function noticeNode(row: NoticeRow, profiles: readonly Profile[]) {
  const { at, kind, subject, body } = row;
  const common = { at: instantOf(at), aircraft: summaryOf(row) };
  if (kind === 'opened') {
    const text = messageOf({ ruleId: splitKey(subject).ruleId, ...body }, wordsFor(row));
    return { ...common, text, profile: null, was: null, is: null };
  }
  const profile = profiles.find((each) => each.id === subject);
  return profile === undefined ? null : { ...common, text: null, profile, was: body.was, is: body.is };
}
