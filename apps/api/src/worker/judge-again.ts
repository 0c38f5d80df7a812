import { setImmediate as othersFirst } from 'node:timers/promises';
import { AircraftData } from '../aircraft/aircraft.data.js';
import { judgeAgain } from '../aircraft/rebuild.js';
import { stampOf } from '../aircraft/stamp.js';
import type { WorkerParts } from './duties.js';

/** Verdicts that end sooner than this are rolled forward. */
const MONTHS_LEFT = 6;
/** So many at a time; then somebody else's wish may come in between. */
const AT_A_TIME = 25;

/** How many aircraft of a house wait to be judged: with an old stamp, or not far enough ahead. */
export async function waiting({ database, clock }: WorkerParts, organisationId: string): Promise<number> {
  return await database.withOrganisation({ organisationId }, async (connection) => {
    const data = new AircraftData(connection, organisationId);
    return await data.countToJudge(stampOf(await data.profiles(), await data.policies()), windowsWantedTo(clock.now()));
  });
}

/**
 * Judges some of them, one a transaction, passing over those that somebody records on or another worker has. The stamp of each
 * is looked at under its lock, so none is judged twice. One that fails keeps none of the others waiting.
 * @returns whether there may be more
 * @throws the first failure, after the others
 */
export async function judgeSome(
  { database, clock, log }: WorkerParts,
  organisationId: string,
  going: () => boolean,
): Promise<{ readonly more: boolean }> {
  const failed = new Map<string, unknown>();
  let judged = 0;
  let found = true;
  while (found && going() && judged + failed.size < AT_A_TIME) {
    let current: string | null = null;
    try {
      found = await database.withOrganisation({ organisationId }, async (connection) => {
        const data = new AircraftData(connection, organisationId);
        const now = clock.now();
        const stamp = stampOf(await data.profiles(), await data.policies());
        const row = await data.nextToJudge(stamp, windowsWantedTo(now), [...failed.keys()]);
        if (row === null) return false;
        current = row.id;
        await judgeAgain(connection, organisationId, row, now);
        return true;
      });
      if (found) judged += 1;
    } catch (error) {
      if (current === null) throw error;
      failed.set(current, error);
      log.failure(`judging ${organisationId} ${current as string} again`, error);
    }
    await othersFirst(); // In the process that serves, whoever asks meanwhile is answered between two aircraft.
  }
  if (judged > 0) log.event('judged again', { organisation: organisationId, aircraft: judged });
  for (const error of failed.values()) throw error;
  return { more: found };
}

function windowsWantedTo(now: Date): Date {
  return new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + MONTHS_LEFT, now.getUTCDate()));
}
