import { randomUUID } from 'node:crypto';
import { holdsAt, jobOfHold } from '@tallywing/rules';
import type { Hold } from '@tallywing/rules';
import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { authorise, mayDo } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { dossierOf } from './aircraft.data.js';
import type { AircraftRow } from './aircraft.data.js';
import { jobTitles, liftsOf, stopJobs } from './holds.data.js';
import type { LiftRow } from './holds.data.js';
import type { RecordService } from './record.service.js';

const LONGEST_REASON = 500;

interface PlaceHold {
  readonly aircraftId: string;
  readonly key: string;
  readonly reason: string;
  readonly from?: string | null;
}

interface LiftHold {
  readonly aircraftId: string;
  readonly key: string;
  readonly holdId: string;
  readonly reason: string;
}

/** Keeping an aircraft on the ground, and letting it go again. Both are entries of its record. */
export class HoldsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordService,
  ) {}

  async place(actor: Actor | null, input: PlaceHold): Promise<string> {
    authorise(actor, 'hold.place');
    const reason = checkedReason(input.reason, 'input.reason');
    const { aircraftId, key, from = null } = input;
    await this.records.act(actor, 'hold.place', {
      aircraftId,
      key,
      content: { reason, from },
      changes: ({ now }) => [
        {
          kind: 'hold.place',
          version: 1,
          hold: {
            id: `hold-${randomUUID().slice(0, 13)}`,
            reason,
            by: actor.name,
            from: from ?? instantOf(now),
            until: null,
          },
        },
      ],
    });
    return aircraftId;
  }

  /** A hold that a job placed wants another role, and its job is then stopped without a release. */
  async lift(actor: Actor | null, input: LiftHold): Promise<string> {
    authorise(actor, 'hold.lift');
    const { aircraftId, key, holdId } = input;
    const job = jobOfHold(holdId);
    if (job !== null) authorise(actor, 'hold.lift-job');
    const reason = checkedReason(input.reason, 'input.reason');
    await this.records.act(actor, 'hold.lift', {
      aircraftId,
      key,
      content: { holdId, reason },
      changes: ({ before, now }) => {
        const placed = dossierOf(before).status.holds.find((each) => each.id === holdId);
        if (placed === undefined) throw new AppError({ code: 'NOT_FOUND', what: 'hold', field: 'input.holdId' });
        return [{ kind: 'hold.lift', version: 1, holdId, at: instantOf(now), reason }];
      },
      after: (connection, now) => stopJobs(connection, actor, job === null ? [] : [job], now),
    });
    return aircraftId;
  }

  /** Newest first, those lifted too: who placed it and why, who lifted it and why. */
  async of(actor: Actor | null, row: AircraftRow) {
    authorise(actor, 'aircraft.read');
    const { holds } = dossierOf(row).status;
    if (holds.length === 0) return [];
    const now = instantOf(this.clock.now());
    const open = new Set(holdsAt(holds, now));
    return await this.database.withOrganisation(actor, async (connection) => {
      const lifts = new Map((await liftsOf(connection, actor, row.id)).map((each) => [each.hold_id, each]));
      const jobs = holds.flatMap(({ id }) => jobOfHold(id) ?? []);
      const titles = await jobTitles(connection, actor, jobs);
      // Names of staff beyond the verdict's own words are not for every role.
      const named = mayDo(actor, 'aircraft.history');
      return [...holds]
        .sort((a, b) => (a.from === b.from ? 0 : a.from < b.from ? 1 : -1))
        .map((each) => nodeOf(each, open.has(each), titles, lifts.get(each.id) ?? null, named));
    });
  }
}

export function checkedReason(given: string, field: string): string {
  const reason = given.trim();
  if (reason === '' || reason.length > LONGEST_REASON)
    throw badInput(field, `A reason has 1 to ${LONGEST_REASON} characters.`, 'Say in a few words why.');
  return reason;
}

function nodeOf(hold: Hold, open: boolean, titles: ReadonlyMap<string, string>, lift: LiftRow | null, named: boolean) {
  const job = jobOfHold(hold.id);
  return {
    id: hold.id,
    reason: hold.reason,
    by: hold.by,
    from: hold.from,
    until: hold.until,
    open,
    job: job === null ? null : { id: job, title: titles.get(job) ?? hold.reason },
    lifted:
      lift === null || hold.until === null
        ? null
        : { reason: lift.reason, by: named ? lift.by : null, at: instantOf(lift.at) },
  };
}
