import { instantOf } from '../common/clock.js';
import type { Clock } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import { noteInLog } from '../common/logging.js';
import type { Metrics } from '../common/metrics.js';
import { checkKey, keepAnswer, knownAnswer } from '../common/request-keys.data.js';
import type { Connection, Database } from '../database/database.js';
import { authorise } from '../identity/access.js';
import type { Action, Actor } from '../identity/access.js';
import { AircraftData } from './aircraft.data.js';
import type { AircraftRow } from './aircraft.data.js';
import { guardByHand } from './guards.js';
import { stopJobs } from './holds.data.js';
import { recordWithin } from './recorder.js';
import type { Recorded, RecordRequest } from './recorder.js';

const idPattern = /^[A-Za-z0-9][A-Za-z0-9._:>/-]{0,79}$/;
/** What one person records at once; a load may bring the whole life of an aircraft. */
const MOST_CHANGES = 200;
const MOST_LOADED = 5000;
/** Aircraft that the line of a request names. */
const MOST_NAMED = 5;

/** What is at hand when an act decides what it records. */
interface Situation {
  readonly before: AircraftRow;
  readonly connection: Connection;
  readonly data: AircraftData;
  readonly now: Date;
}

export interface Act<Told extends object = object> {
  readonly aircraftId: string;
  readonly key: string;
  /** What was asked, so that a repeated key is known again. */
  readonly content: object;
  /** What is kept with the key, and told again to whoever repeats it. */
  readonly told?: Told;
  readonly changes: (situation: Situation) => readonly unknown[] | Promise<readonly unknown[]>;
  readonly jobId?: string;
  readonly after?: (connection: Connection, now: Date) => Promise<void>;
}

/** The one way in which anything about an aircraft changes. */
export class RecordService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly metrics: Metrics,
  ) {}

  /**
   * Records work on one aircraft: the entries and their verdict appear together or not at all.
   * A repeated request (same key, same content) gets the stored answer; the key is looked at before the revision.
   * @throws AppError REFUSED, STALE_REVISION, KEY_REUSED, NOT_FOUND, BAD_INPUT
   */
  async commit(actor: Actor | null, request: RecordRequest): Promise<Recorded> {
    authorise(actor, 'aircraft.record');
    if (request.changes.length > MOST_CHANGES) throw tooMany(MOST_CHANGES);
    const [recorded] = await this.commitInOneTransaction(actor, [request]);
    if (!recorded) throw new Error('nothing was recorded');
    return recorded;
  }

  /**
   * Many aircraft, all or none: for loading. Locks in the order of ids, so that two of these cannot wait for each other.
   * @throws as `commit`; the error then names the aircraft it is about in its field
   */
  async commitInOneTransaction(
    actor: Actor | null,
    requests: readonly RecordRequest[],
    /** What must land or fail together with the work, on the same connection: before it (catalogue entries), after it. */
    together: {
      readonly before?: (connection: Connection) => Promise<void>;
      readonly after?: (connection: Connection) => Promise<void>;
    } = {},
  ): Promise<readonly Recorded[]> {
    authorise(actor, 'aircraft.record');
    requests.forEach(checkRequest);
    const stop = this.metrics.recordings.startTimer();
    try {
      const answers = await this.database.withOrganisation(actor, async (connection) => {
        await together.before?.(connection);
        const answered = await this.within(connection, actor, requests);
        await together.after?.(connection);
        return answered;
      });
      stop({ outcome: 'recorded' });
      noteInLog({
        recorded: answers.slice(0, MOST_NAMED).map(({ aircraftId, revision }) => `${aircraftId} ${revision}`),
        aircraft: answers.length,
      });
      return answers;
    } catch (error) {
      stop({ outcome: error instanceof AppError ? error.problem.code.toLowerCase() : 'failed' });
      throw clash(error, instantOf(this.clock.now()));
    }
  }

  /**
   * One person's act on the record as it stands, not as a screen showed it: a hold waits for nobody's draft. What must land or
   * fail with it comes after it, on the same connection. No changes: nothing is recorded, the rest is done.
   * @returns what the act told, also where the key is a repeated one
   * @throws AppError FORBIDDEN, REFUSED, KEY_REUSED, NOT_FOUND, BAD_INPUT
   */
  async act<Told extends object>(actor: Actor | null, action: Action, act: Act<Told>): Promise<Partial<Told>> {
    authorise(actor, action);
    checkKey(act.key);
    const { key, aircraftId } = act;
    return await this.database.withOrganisation(actor, async (connection) => {
      const content = { act: action, aircraftId, ...act.content };
      const known = await knownAnswer<Partial<Told>>(connection, actor, key, content);
      if (known !== null) return known;
      const data = new AircraftData(connection, actor.organisationId);
      const before = (await data.lock([aircraftId])).get(aircraftId) ?? null;
      if (before === null || (actor.operatorId !== undefined && before.operator_id !== actor.operatorId))
        throw new AppError({ code: 'NOT_FOUND', what: 'aircraft', field: 'input.aircraftId' });
      const now = this.clock.now();
      const changes = await act.changes({ before, connection, data, now });
      let recorded: Recorded | null = null;
      if (changes.length > 0) {
        const request = { aircraftId, expectedRevision: before.revision, key, changes, jobId: act.jobId ?? null };
        ({ recorded } = await recordWithin(connection, actor, request, before, await data.profiles(), now));
      }
      await act.after?.(connection, now);
      // With what it did to the answers: the history reads it from here, as of any other work.
      const answer = { done: true, ...recorded, ...act.told };
      await keepAnswer(connection, actor, { key, content, aircraftId, answer, at: now });
      return act.told ?? {};
    });
  }

  private async within(connection: Connection, actor: Actor, requests: readonly RecordRequest[]): Promise<Recorded[]> {
    const data = new AircraftData(connection, actor.organisationId);
    const answers = new Map<RecordRequest, Recorded>();
    for (const request of [...requests].sort((a, b) => (a.key < b.key ? -1 : 1))) {
      const known = await knownAnswer<Recorded>(connection, actor, request.key, contentOf(request));
      if (known !== null) answers.set(request, known);
    }
    const open = requests.filter((request) => !answers.has(request));
    const rows = await data.lock(open.map((request) => request.aircraftId));
    const profiles = await data.profiles();
    const now = this.clock.now();
    for (const request of open) {
      const before = rows.get(request.aircraftId) ?? null;
      if (before !== null && actor.operatorId !== undefined && before.operator_id !== actor.operatorId) {
        throw new AppError({ code: 'NOT_FOUND', what: 'aircraft', field: 'input.aircraftId' });
      }
      const lifted = guardByHand(actor, request.changes);
      const { recorded } = await recordWithin(connection, actor, request, before, profiles, now);
      await stopJobs(connection, actor, lifted, now);
      const { key, aircraftId } = request;
      await keepAnswer(connection, actor, { key, content: contentOf(request), aircraftId, answer: recorded, at: now });
      answers.set(request, recorded);
    }
    return requests.flatMap((request) => answers.get(request) ?? []);
  }
}

function contentOf({ aircraftId, expectedRevision, changes, jobId }: RecordRequest) {
  return { aircraftId, expectedRevision, changes, jobId: jobId ?? null };
}

function checkRequest(request: RecordRequest): void {
  if (!idPattern.test(request.aircraftId)) {
    throw badInput(
      'input.aircraftId',
      'This cannot be the id of an aircraft.',
      'Use 1 to 80 letters, digits and . _ : > / -',
    );
  }
  checkKey(request.key);
  if (!Number.isInteger(request.expectedRevision) || request.expectedRevision < 0) {
    throw badInput(
      'input.expectedRevision',
      'The expected revision is a whole number from 0.',
      'Send the revision of the record that you saw.',
    );
  }
  if (request.changes.length === 0 || request.changes.length > MOST_LOADED) throw tooMany(MOST_LOADED);
}

function tooMany(most: number): AppError {
  return badInput('input.changes', `Record 1 to ${most} changes at once.`, 'Split the work, or add what was done.');
}

/** Two people who add the same aircraft or registration at once: the database sees it last. */
function clash(error: unknown, now: string): unknown {
  const { code, constraint } = (error ?? {}) as { code?: unknown; constraint?: unknown };
  if (code !== '23505') return error;
  if (constraint === 'aircraft_organisation_id_registration_key') {
    return new AppError({
      code: 'REFUSED',
      refusals: [
        {
          change: 0,
          code: 'registration-taken',
          field: 'aircraft.registration',
          message: 'This registration already belongs to another aircraft here.',
          wayOut: 'Check the registration, or amend the aircraft that has it.',
        },
      ],
    });
  }
  if (constraint === 'aircraft_pkey') {
    return new AppError({ code: 'STALE_REVISION', revision: 1, changedBy: 'somebody else', changedAt: now });
  }
  return error;
}
