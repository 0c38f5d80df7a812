import { AircraftData } from '../aircraft/aircraft.data.js';
import { judgeAgain } from '../aircraft/rebuild.js';
import { stampOf } from '../aircraft/stamp.js';
import type { Clock } from '../common/clock.js';
import type { AppLog } from '../common/logging.js';
import type { Database } from '../database/database.js';

/** Verdicts that end sooner than this are rolled forward. */
const MONTHS_LEFT = 6;

/**
 * Keeps the read tables judged far enough ahead and with today's rules, zones and profiles: one aircraft a transaction, passing
 * over the ones that somebody records on. The board does not wait for it: it shows "being judged again" meanwhile.
 */
export class Roller {
  private running: Promise<number> | null = null;

  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly log: AppLog,
  ) {}

  /** Goes over all organisations once. @returns how many aircraft were judged again */
  run(): Promise<number> {
    this.running ??= this.pass().finally(() => {
      this.running = null;
    });
    return this.running;
  }

  private async pass(): Promise<number> {
    let judged = 0;
    const organisations = await this.database.askDoor<{ organisation_id: string }>('door_organisations', []);
    for (const { organisation_id: organisationId } of organisations) {
      while (await this.one(organisationId)) judged += 1;
    }
    if (judged > 0) this.log.event('judged again', { aircraft: judged });
    return judged;
  }

  private async one(organisationId: string): Promise<boolean> {
    return await this.database.withOrganisation({ organisationId }, async (connection) => {
      const data = new AircraftData(connection, organisationId);
      const now = this.clock.now();
      const soon = new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + MONTHS_LEFT, now.getUTCDate()));
      const row = await data.nextToJudge(stampOf(await data.profiles(), await data.policies()), soon);
      if (row === null) return false;
      await judgeAgain(connection, organisationId, row, now);
      return true;
    });
  }
}

/** Runs the roller now and then until the process ends; a failed pass is logged and tried again the next time. */
export function keepRolling(roller: Roller, log: AppLog, everyMs: number): () => void {
  const turn = (): void => {
    roller.run().catch((error: unknown) => {
      log.failure('worker', error);
    });
  };
  turn();
  const timer = setInterval(turn, everyMs);
  return () => {
    clearInterval(timer);
  };
}
