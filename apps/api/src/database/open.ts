import pg from 'pg';
import type { Settings } from '../settings.js';
import { Database } from './database.js';
import { Disk } from './disk.js';
import { startEmbedded } from './embedded.js';
import type { EmbeddedServer } from './embedded.js';
import { migrate } from './migrate.js';
import { ServerError } from './places.js';
import { probe } from './probe.js';
import { Queue } from './queue.js';

const WATCH_MS = 1000;

export interface OpenDatabase {
  readonly database: Database;
  /** For the one connection that listens: straight to the server, never through a pool. */
  readonly listenUrl: string;
  readonly disk: Disk;
  readonly queue: Queue;
  close(): Promise<void>;
}

/**
 * From settings to a database that is migrated, probed and ready: the built-in server, or the one at DATABASE_URL.
 * @param say hears one line per step
 * @throws ServerError with the way out
 */
export async function openDatabase(settings: Settings, say: (line: string) => void): Promise<OpenDatabase> {
  const server = settings.databaseUrl === null ? await startEmbedded(settings.dataDir) : null;
  if (server?.remark) say(server.remark);
  if (server) say(`database ${server.reused ? 'joined' : 'started'} on 127.0.0.1:${server.port}`);
  const url = server?.url ?? settings.databaseUrl ?? '';
  const direct = server?.url ?? settings.databaseDirectUrl ?? url;
  try {
    const applied = await migrate(direct);
    say(applied.length === 0 ? 'tables up to date' : `tables brought up to date: ${applied.join(', ')}`);
    const runtime = server ? await runtimeUrl(url, server.runtimePassword) : url;
    const listenUrl = server ? runtime : direct;
    const queue = new Queue(listenUrl);
    await queue.prepare();
    const database = new Database(runtime);
    const wrong = await probe(database);
    if (wrong.length > 0) {
      await database.close();
      throw new ServerError(`The database does not keep organisations apart: ${wrong.join('; ')}. Nothing was served.`);
    }
    say('organisations kept apart');
    const stopWatching = server ? watchOver(server, say) : () => Promise.resolve();
    return {
      database,
      listenUrl,
      queue,
      disk: new Disk(server?.place ?? null),
      close: async () => {
        await stopWatching();
        await database.close();
        await server?.release();
      },
    };
  } catch (error) {
    await server?.release();
    throw error;
  }
}

/** Nobody else would start the built-in server again when it is killed or runs out of memory. */
function watchOver(server: EmbeddedServer, say: (line: string) => void): () => Promise<void> {
  let looking: Promise<void> | null = null;
  let failed = false;
  const timer = setInterval(() => {
    looking ??= server
      .revive()
      .then((revived) => {
        if (revived) say('the built-in database was gone and is started again');
        failed = false;
      })
      .catch((error: unknown) => {
        if (!failed) say(`the built-in database is gone: ${(error as Error).message}`);
        failed = true;
      })
      .finally(() => {
        looking = null;
      });
  }, WATCH_MS);
  timer.unref();
  return async () => {
    clearInterval(timer);
    await looking;
  };
}

/** On the built-in server even a forgotten role change is harmless: the login itself owns nothing and sees nothing. */
async function runtimeUrl(ownerUrl: string, password: string): Promise<string> {
  const owner = new pg.Client({ connectionString: ownerUrl });
  await owner.connect();
  try {
    const { rowCount } = await owner.query(`select 1 from pg_roles where rolname = 'tallywing_runtime'`);
    await owner.query(
      `${rowCount === 0 ? 'create' : 'alter'} role tallywing_runtime login noinherit nosuperuser nobypassrls password ${owner.escapeLiteral(password)}`,
    );
    await owner.query('grant tallywing_app, tallywing_queue to tallywing_runtime');
  } finally {
    await owner.end();
  }
  const url = new URL(ownerUrl);
  url.username = 'tallywing_runtime';
  url.password = password;
  return url.href;
}
