import type { Clock } from '../common/clock.js';
import type { AppLog } from '../common/logging.js';
import type { Database } from '../database/database.js';
import type { Duties, Task } from '../database/queue.js';
import { judgeSome, waiting } from './judge-again.js';
import { noticeLapses } from './notices.js';

export interface WorkerParts {
  readonly database: Database;
  readonly clock: Clock;
  readonly log: AppLog;
}

/** So many aircraft for each worker that helps, and so many that help with one house at most. */
const WORTH_ANOTHER = 25;
const MOST_HELPERS = 4;

/**
 * What the worker does: with each minute it looks round, and for each house it notices what lapsed and has judged again what is
 * waiting for it. Payloads carry the id of the house, nothing else: what is to be done is read from its own tables, so a wish that
 * comes twice, late or never is made good by the next look.
 */
export function dutiesOf(parts: WorkerParts, atOnce: number): Duties {
  const lookRound: Task = async (_, wish) => {
    const houses = await parts.database.askDoor<{ organisation_id: string }>('door_organisations', []);
    for (const { organisation_id: house } of houses) await wish('watch-house', { house }, `watch-house ${house}`);
  };

  const watchHouse: Task = async (payload, wish) => {
    const house = houseOf(payload);
    await noticeLapses(parts, house);
    const helpers = Math.min(MOST_HELPERS, Math.ceil((await waiting(parts, house)) / WORTH_ANOTHER));
    for (let helper = 1; helper <= helpers; helper += 1) await wishForJudging(wish, house, String(helper));
  };

  const judgeAgain: Task = async (payload, wish, going) => {
    const house = houseOf(payload);
    const { more } = await judgeSome(parts, house, going);
    if (more) await wishForJudging(wish, house, (payload as { readonly helper: string }).helper);
  };

  return {
    tasks: { 'look-round': lookRound, 'watch-house': watchHouse, 'judge-again': judgeAgain },
    everyMinute: 'look-round',
    atOnce,
  };
}

function wishForJudging(wish: Parameters<Task>[1], house: string, helper: string): Promise<void> {
  return wish('judge-again', { house, helper }, `judge-again ${house} ${helper}`);
}

function houseOf(payload: unknown): string {
  return (payload as { readonly house: string }).house;
}
