import { Logger, parseCronItems, run, runMigrations } from 'graphile-worker';
import type { Runner, RunnerOptions } from 'graphile-worker';
import pg from 'pg';
import type { AppLog } from '../common/logging.js';
import { pause } from './processes.js';

const SCHEMA = 'tallywing_queue';
const ROLE = 'tallywing_queue';
const FIRST_WAIT_MS = 250;
const LONGEST_WAIT_MS = 10_000;
/** A job that is under way when the process stops has so long to come to a good place. */
const PATIENCE_MS = 8000;

/** Puts a task into the queue. One with the same key that nobody has begun yet is replaced: wished for twice, done once. */
export type Wish = (task: string, payload: Readonly<Record<string, string>>, key: string) => Promise<void>;

/** @param going false as soon as the process is asked to stop */
export type Task = (payload: unknown, wish: Wish, going: () => boolean) => Promise<void>;

export interface Duties {
  readonly tasks: Readonly<Record<string, Task>>;
  /** Begun when a worker starts and with each minute, once over all workers. */
  readonly everyMinute: string;
  /** How many at once in this process. */
  readonly atOnce: number;
}

/**
 * The queue of the worker, in the same database: its tables belong to a role of their own, as which only these connections
 * work. A job is done at least once, so a task must be harmless when it is done again: what is to be done stands in the tables
 * of the organisation, the queue only says who should look. A job that a killed process held is left to the next wish for it.
 */
export class Queue {
  /** @param url straight to the server: listening needs a session that lasts */
  constructor(private readonly url: string) {}

  /** Brings the tables of the queue to what the library expects. */
  async prepare(): Promise<void> {
    const pgPool = this.connections();
    try {
      await runMigrations({ pgPool, schema: SCHEMA, logger: new Logger(() => () => undefined) });
    } finally {
      await pgPool.end();
    }
  }

  /** Works until it is stopped; begins again by itself when the database was away. */
  work(duties: Duties, log: AppLog): { stop(): Promise<void> } {
    const pgPool = this.connections();
    let going = true;
    let runner: Runner | null = null;
    const keepOn = async (): Promise<void> => {
      for (let breaks = 0; going; breaks += 1) {
        try {
          runner = await run(optionsOf(duties, pgPool, log, () => going));
          breaks = 0;
          await runner.addJob(duties.everyMinute, {}, { jobKey: duties.everyMinute });
          await runner.promise;
        } catch (error) {
          if (going && breaks === 0) log.failure('worker', error);
        }
        runner = null;
        if (going) await pause(Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** breaks));
      }
    };
    const ended = keepOn();
    return {
      stop: async () => {
        going = false;
        // It may have stopped by itself, or wait for a database that is gone.
        const stopped = runner?.stop().catch(() => undefined) ?? Promise.resolve();
        await Promise.race([stopped.then(() => ended), pause(PATIENCE_MS)]);
        await Promise.race([pgPool.end(), pause(PATIENCE_MS)]);
      },
    };
  }

  private connections(): pg.Pool {
    const pool = new pg.Pool({
      connectionString: this.url,
      options: `-c role=${ROLE}`,
      application_name: 'tallywing queue',
      max: 4,
      connectionTimeoutMillis: 10_000,
      keepAlive: true,
    });
    // A broken connection shows with the next question to it, and the pool replaces it.
    pool.on('error', () => undefined);
    pool.on('connect', (client) => client.on('error', () => undefined));
    return pool;
  }
}

function optionsOf({ tasks, everyMinute, atOnce }: Duties, pgPool: pg.Pool, log: AppLog, going: () => boolean) {
  const taskList: RunnerOptions['taskList'] = Object.fromEntries(
    Object.entries(tasks).map(([name, task]) => [
      name,
      async (payload, { addJob }) => {
        const wish: Wish = async (next, about, jobKey) => void (await addJob(next, about, { jobKey }));
        await task(payload, wish, going);
      },
    ]),
  );
  return {
    pgPool,
    schema: SCHEMA,
    taskList,
    parsedCronItems: parseCronItems([
      { task: everyMinute, match: '* * * * *', identifier: everyMinute, options: { jobKey: everyMinute } },
    ]),
    concurrency: atOnce,
    // Without these, a job that cannot be signed off because the database went away would end the whole process.
    preset: { worker: { completeJobBatchDelay: 0, failJobBatchDelay: 0 } },
    pollInterval: 2000,
    noHandleSignals: true,
    logger: new Logger(() => (level, message) => {
      if (['error', 'warning'].includes(level)) log.warn(`queue: ${message}`);
    }),
  };
}
