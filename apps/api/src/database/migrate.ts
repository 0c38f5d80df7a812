import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile, readdir } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { bindMigrationAwareSqlAdapterFactory, ColumnTypeEnum, DriverAdapterError } from '@prisma/driver-adapter-utils';
import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import type { MigrationList, SchemaEngine } from '@prisma/schema-engine-wasm';
import { repositoryRoot } from '../settings.js';
import { ServerError } from './places.js';

/** Any number, the same in every process: only one migrates at a time. */
const MIGRATION_LOCK = 730_421_118;
const prismaDirectory = join(repositoryRoot, 'prisma');

/**
 * Brings the database to the newest migration of `prisma/migrations`, under a lock.
 * @returns the names of the migrations applied now, none if it was up to date
 * @throws ServerError naming the migration that failed
 */
export async function migrate(url: string): Promise<readonly string[]> {
  const guard = new pg.Client({ connectionString: url });
  await guard.connect();
  try {
    await guard.query('select pg_advisory_lock($1)', [MIGRATION_LOCK]);
    await refuseNewer(guard);
    if (await isCurrent(guard)) return [];
    return await withEngine(url, async (engine) => {
      const input = { migrationsList: await readMigrations(), filters: { externalTables: [], externalEnums: [] } };
      const history = await engine.diagnoseMigrationHistory({ ...input, optInToShadowDatabase: false });
      // A step that failed was undone as a whole (see below), so it may simply be tried again.
      for (const migrationName of history.failedMigrationNames) await engine.markMigrationRolledBack({ migrationName });
      return (await engine.applyMigrations(input)).appliedMigrationNames;
    });
  } catch (error) {
    if (error instanceof ServerError) throw error;
    const { message } = error as Error;
    const right = /permission denied|must be able to|must be owner|must have/.test(message)
      ? ' What a role must be allowed is in docs/operating.md under "A PostgreSQL of your own".'
      : '';
    throw new ServerError(
      `The tables could not be brought up to date: ${message}. Nothing was changed by the failed step; mend its cause and start again.${right}`,
    );
  } finally {
    await guard.end();
  }
}

/** Software that is older than its tables would write into them what the newer one does not expect. */
async function refuseNewer(client: pg.Client): Promise<void> {
  if (!(await hasHistory(client))) return;
  const { rows } = await client.query<{ migration_name: string }>(
    'select migration_name from _prisma_migrations where finished_at is not null and rolled_back_at is null order by 1',
  );
  const own = await migrationsOf();
  const newer = rows.map((row) => row.migration_name).filter((name) => !own.includes(name));
  if (newer.length === 0) return;
  throw new ServerError(
    `The database is newer than this software: it has ${newer.join(', ')}. Start the newer version, or restore a backup made before it. Nothing was changed.`,
  );
}

async function hasHistory(client: pg.Client): Promise<boolean> {
  const { rows } = await client.query<{ there: boolean }>(
    `select to_regclass('_prisma_migrations') is not null as there`,
  );
  return rows[0]?.there ?? false;
}

/** Whether every migration of the directory was applied as it stands there: then the engine need not be loaded at all. */
async function isCurrent(client: pg.Client): Promise<boolean> {
  if (!(await hasHistory(client))) return false;
  const { rows } = await client.query<{ migration_name: string; checksum: string; done: boolean }>(
    'select migration_name, checksum, finished_at is not null as done from _prisma_migrations where rolled_back_at is null',
  );
  const applied = new Map(rows.map((row) => [row.migration_name, row.done ? row.checksum : '']));
  const { migrationDirectories } = await readMigrations();
  return (
    rows.length === migrationDirectories.length &&
    migrationDirectories.every(({ path, migrationFile }) => {
      const { content } = migrationFile;
      return content.tag === 'ok' && applied.get(path) === createHash('sha256').update(content.value).digest('hex');
    })
  );
}

/**
 * What differs between the live tables and `prisma/schema.prisma`, as SQL; empty when nothing does.
 * @public asked by scripts/drift/schema.mjs
 */
export async function findDrift(url: string): Promise<string> {
  return await withEngine(url, async (engine) => {
    const file = join(prismaDirectory, 'schema.prisma');
    const files = [{ path: file, content: await readFile(file, 'utf8') }];
    const answer = await engine.diff({
      from: { tag: 'schemaDatasource', files, configDir: prismaDirectory },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: true,
      filters: { externalTables: [], externalEnums: [] },
    });
    return answer.exitCode === 0 ? '' : (answer.stdout ?? 'differs');
  });
}

async function withEngine<T>(url: string, work: (engine: SchemaEngine) => Promise<T>): Promise<T> {
  const bindings = await loadBindings();
  const pool = forEngine(new pg.Pool({ connectionString: url }));
  const engine = await bindings.SchemaEngine.new(
    { datamodels: undefined },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(new WholeScripts(pool)),
  );
  try {
    return await work(engine);
  } finally {
    engine.free();
    await pool.end();
  }
}

const SYSTEM_CHAR = 18;
const TEXT = 25;
/** Which columns of an answer were relabelled, by its rows. */
const characters = new WeakMap<object, readonly number[]>();

/** The adapter does not know the one-byte type of the system tables, which the engine asks for: it travels as text. */
function forEngine(pool: pg.Pool): pg.Pool {
  const ask = pool.query.bind(pool) as (...values: unknown[]) => Promise<pg.QueryResult>;
  const relabelled = async (...values: unknown[]): Promise<pg.QueryResult> => {
    const answer = await ask(...values);
    const places = (answer.fields ?? []).flatMap((field, at) => (field.dataTypeID === SYSTEM_CHAR ? [at] : []));
    for (const at of places) if (answer.fields[at]) answer.fields[at].dataTypeID = TEXT;
    if (places.length > 0) characters.set(answer.rows, places);
    return answer;
  };
  return Object.assign(pool, { query: relabelled });
}

/**
 * The adapter of the library cuts scripts at every semicolon, also inside function bodies, and runs the pieces one by one.
 * Sent as one message, PostgreSQL reads the script itself and takes all of it or nothing.
 */
class WholeScripts extends PrismaPg {
  override async connect(): ReturnType<PrismaPg['connect']> {
    const adapter = await super.connect();
    adapter.executeScript = async (script) => {
      try {
        await adapter.underlyingDriver().query(script);
      } catch (error) {
        const { message, code = '', severity = 'ERROR', detail, hint } = error as pg.DatabaseError;
        const position = (error as pg.DatabaseError).position;
        const where = position === undefined ? '' : ` near "${script.slice(Number(position) - 1).split('\n')[0]}"`;
        throw new DriverAdapterError({
          kind: 'postgres',
          code,
          severity,
          message: message + where,
          detail,
          hint,
          column: undefined,
        });
      }
    };
    const queryRaw = adapter.queryRaw.bind(adapter);
    adapter.queryRaw = async (query) => {
      const answer = await queryRaw(query);
      for (const at of characters.get(answer.rows) ?? []) answer.columnTypes[at] = ColumnTypeEnum.Character;
      return answer;
    };
    return adapter;
  }
}

type Bindings = typeof import('@prisma/schema-engine-wasm') & { __wbg_set_wasm(exports: unknown): void };

/** The part of the standard interface used here; Node's type package leaves it to the browser's. */
declare const WebAssembly: {
  compile(bytes: Uint8Array): Promise<object>;
  instantiate(module: object, imports: Record<string, unknown>): Promise<{ exports: { __wbindgen_start(): void } }>;
};

let loaded: Promise<Bindings> | null = null;

/** The package's own entry imports its WebAssembly as a module, which Node cannot; so the two halves are joined here. */
function loadBindings(): Promise<Bindings> {
  loaded ??= (async () => {
    const bindings = (await import('@prisma/schema-engine-wasm/schema_engine_bg')) as unknown as Bindings;
    const glue = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
    const module = await WebAssembly.compile(await readFile(glue.replace(/\.js$/, '.wasm')));
    const instance = await WebAssembly.instantiate(module, { './schema_engine_bg.js': bindings });
    bindings.__wbg_set_wasm(instance.exports);
    instance.exports.__wbindgen_start();
    return bindings;
  })();
  return loaded;
}

/** Names of the migrations that this software brings, in order. */
export async function migrationsOf(): Promise<string[]> {
  const entries = await readdir(join(prismaDirectory, 'migrations'), { withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

async function readMigrations(): Promise<MigrationList> {
  const baseDir = join(prismaDirectory, 'migrations');
  const lockfile = join(baseDir, 'migration_lock.toml');
  const names = await migrationsOf();
  return {
    baseDir,
    lockfile: { path: 'migration_lock.toml', content: existsSync(lockfile) ? await readFile(lockfile, 'utf8') : null },
    shadowDbInitScript: '',
    migrationDirectories: await Promise.all(
      names.map(async (path) => ({
        path,
        migrationFile: {
          path: 'migration.sql',
          content: { tag: 'ok' as const, value: await readFile(join(baseDir, path, 'migration.sql'), 'utf8') },
        },
      })),
    ),
  };
}
