import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { contentHash } from './canonical.js';
import { AppError, badInput } from './errors.js';

/* What makes a repeated request harmless: its key is kept with a hash of what it asked and with its answer. */

const keyPattern = /^[\x21-\x7e]{8,200}$/;

/** @throws AppError BAD_INPUT naming `input.key` */
export function checkKey(key: string): void {
  if (keyPattern.test(key)) return;
  throw badInput(
    'input.key',
    'The request key must have 8 to 200 visible characters.',
    'Send a new random key with each piece of work.',
  );
}

/**
 * The answer that this key already got, or null. Two requests with one key come one after the other: the second waits here
 * until the first has ended, and then finds what it stored.
 * @throws AppError KEY_REUSED when the key stood for something else, or for somebody else
 */
export async function knownAnswer<Answer>(
  connection: Connection,
  actor: Actor,
  key: string,
  content: object,
): Promise<Answer | null> {
  await connection.query(`select pg_advisory_xact_lock(hashtextextended($1, 0))`, [`${actor.organisationId} ${key}`]);
  const [known] = await connection.query<{ request_hash: string; answer: unknown }>(
    'select request_hash, answer from commits where organisation_id = $1 and key = $2',
    [actor.organisationId, key],
  );
  if (known === undefined) return null;
  if (known.request_hash !== hashOf(actor, content)) throw new AppError({ code: 'KEY_REUSED' });
  return known.answer as Answer;
}

export async function keepAnswer(
  connection: Connection,
  actor: Actor,
  request: {
    readonly key: string;
    readonly content: object;
    readonly aircraftId: string | null;
    readonly answer: unknown;
    readonly at: Date;
  },
): Promise<void> {
  await connection.query(
    'insert into commits (organisation_id, key, aircraft_id, request_hash, answer, member_id, at) values ($1, $2, $3, $4, $5, $6, $7)',
    [
      actor.organisationId,
      request.key,
      request.aircraftId,
      hashOf(actor, request.content),
      JSON.stringify(request.answer),
      actor.memberId,
      request.at,
    ],
  );
}

function hashOf(actor: Actor, content: object): string {
  return contentHash({ memberId: actor.memberId, ...content });
}
