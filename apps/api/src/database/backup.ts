import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { copyFile, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import pg from 'pg';
import { startEmbedded } from './embedded.js';
import { ServerError } from './places.js';

export const FORMAT = 1;

/** What a backup says about itself, so that it can be checked before anything is put in its place. */
export interface Manifest {
  readonly format: number;
  readonly takenAt: string;
  readonly postgres: string;
  readonly migrations: readonly string[];
  /** SHA-256 by path below `files`. */
  readonly files: Readonly<Record<string, string>>;
}

/**
 * Copies the built-in server's files while it goes on serving, as PostgreSQL's own manual describes for a low-level backup
 * (chapter "Continuous archiving", status: from memory): between start and stop its log of changes is kept, and it is copied
 * last, so that replaying it makes the copy whole as of the stop.
 * @param target a directory that does not exist yet; it appears when the backup is complete
 * @throws ServerError with the way out
 */
export async function takeBackup(dataDir: string, target: string, now: Date): Promise<Manifest> {
  const server = await startEmbedded(dataDir);
  const half = `${target}.unfinished`;
  try {
    await makeRoom(target, half);
    const client = new pg.Client({ connectionString: server.url });
    await client.connect();
    try {
      const files = await copyServing(client, server.place, join(half, 'files'));
      await copyFile(join(dirname(server.place), 'server.json'), join(half, 'server.json'));
      const { rows } = await client.query<{ version: string }>('show server_version');
      const manifest: Manifest = {
        format: FORMAT,
        takenAt: now.toISOString(),
        postgres: rows[0]?.version ?? '',
        migrations: await migrationsIn(client),
        files,
      };
      await writeFile(join(half, 'backup.json'), JSON.stringify(manifest, null, 1), { mode: 0o600 });
      await rename(half, target);
      return manifest;
    } finally {
      await client.end();
    }
  } catch (error) {
    await rm(half, { recursive: true, force: true });
    if (error instanceof ServerError) throw error;
    throw new ServerError(
      `The backup was not finished (${(error as Error).message}). Nothing is left of it; mend the cause and take it again.`,
    );
  } finally {
    await server.release();
  }
}

async function makeRoom(target: string, half: string): Promise<void> {
  const there = await readdir(target).catch(() => null);
  if (there !== null)
    throw new ServerError(`${target} is there already. Choose another place; no backup is overwritten.`);
  await rm(half, { recursive: true, force: true });
  await mkdir(half, { recursive: true, mode: 0o700 });
}

async function migrationsIn(client: pg.Client): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    'select migration_name as name from _prisma_migrations where finished_at is not null and rolled_back_at is null order by 1',
  );
  return rows.map(({ name }) => name);
}

async function copyServing(client: pg.Client, cluster: string, to: string): Promise<Record<string, string>> {
  // Keeps the log of changes from now on until this connection ends.
  await client.query(`select pg_create_physical_replication_slot('tallywing_backup', true, true)`);
  await client.query(`select pg_backup_start('tallywing', true)`);
  const copied: Record<string, string> = {};
  await copyTree(cluster, to, '', copied, (path) => !isLog(path));
  const { rows } = await client.query<{ label: string }>('select labelfile as label from pg_backup_stop(false)');
  const label = rows[0]?.label ?? '';
  await writeFile(join(to, 'backup_label'), label, { mode: 0o600 });
  copied['backup_label'] = createHash('sha256').update(label).digest('hex');
  await copyTree(cluster, to, 'pg_wal', copied, (path) => isLog(path) || path === 'pg_wal');
  return copied;
}

const isLog = (path: string): boolean => path.startsWith('pg_wal/');

/** Belong to a server that runs, or are made anew by each start. */
const notKept =
  /^(postmaster\.(pid|opts)|pg_(replslot|dynshmem|notify|serial|snapshots|stat_tmp|subtrans)\/.*)$|(^|\/)(pgsql_tmp.*|pg_internal\.init.*)$/;

async function copyTree(
  from: string,
  to: string,
  below: string,
  copied: Record<string, string>,
  wanted: (path: string) => boolean,
): Promise<void> {
  await mkdir(join(to, below), { recursive: true, mode: 0o700 });
  for (const entry of await readdir(join(from, below), { withFileTypes: true })) {
    const path = join(below, entry.name);
    if (notKept.test(path)) continue;
    if (entry.isDirectory()) await copyTree(from, to, path, copied, wanted);
    else if (entry.isFile() && wanted(path)) {
      const hash = await copyHashed(join(from, path), join(to, path));
      if (hash !== null) copied[relative('.', path)] = hash;
    }
  }
}

/** @returns the hash of what was written; null for a file that the server took away meanwhile, which its log makes up for */
async function copyHashed(from: string, to: string): Promise<string | null> {
  const hash = createHash('sha256');
  const tap = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      hash.update(chunk);
      done(null, chunk);
    },
  });
  try {
    await pipeline(createReadStream(from), tap, createWriteStream(to, { mode: 0o600, flush: true }));
    return hash.digest('hex');
  } catch (error) {
    await rm(to, { force: true });
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

/** @throws ServerError for what is no backup of ours, or not whole */
export async function readManifest(backup: string): Promise<Manifest> {
  const text = await readFile(join(backup, 'backup.json'), 'utf8').catch(() => null);
  if (text === null)
    throw new ServerError(
      `${backup} is no backup: it has no backup.json. Name the directory that "npm run backup" made.`,
    );
  const manifest = JSON.parse(text) as Manifest;
  if (manifest.format !== FORMAT)
    throw new ServerError(
      `${backup} has form ${manifest.format}; this version reads form ${FORMAT}. Use the version that made it.`,
    );
  for (const [path, expected] of Object.entries(manifest.files)) {
    const hash = createHash('sha256');
    try {
      for await (const chunk of createReadStream(join(backup, 'files', path))) hash.update(chunk as Buffer);
    } catch (error) {
      throw new ServerError(
        `${backup} is not whole: ${path} cannot be read (${(error as NodeJS.ErrnoException).code}). Use another backup.`,
      );
    }
    if (hash.digest('hex') !== expected)
      throw new ServerError(`${backup} is damaged: ${path} is not what was written. Use another backup.`);
  }
  return manifest;
}
