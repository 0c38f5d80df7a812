import { existsSync } from 'node:fs';
import { chmod, chown, cp, mkdir, readdir, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { readManifest } from './backup.js';
import type { Manifest } from './backup.js';
import { whileStopped } from './embedded.js';
import { ServerError, writePrivately } from './places.js';
import type { Places, RunAs } from './places.js';

/**
 * Puts a backup in the place of the built-in server's files. Everything is checked before anything is touched, and what was
 * there before is moved aside, never deleted.
 * @param replace the say-so to move aside what is there
 * @returns what the backup says about itself, and where the earlier files are now
 * @throws ServerError with the way out
 */
export async function restoreBackup(
  dataDir: string,
  backup: string,
  replace: boolean,
  now: Date,
): Promise<{ readonly manifest: Manifest; readonly aside: string | null }> {
  const manifest = await readManifest(backup);
  return await whileStopped(dataDir, async (places) => {
    const there = existsSync(join(places.cluster, 'PG_VERSION'));
    if (there && !replace)
      throw new ServerError(
        `${places.home} holds data already. To put the backup in its place, give --replace: what is there is moved aside and kept.`,
      );
    const aside = there ? await moveAside(places, now) : null;
    try {
      await putInPlace(places, backup);
    } catch (error) {
      throw new ServerError(
        `The backup could not be put in place (${(error as Error).message}).${aside === null ? '' : ` What was there is in ${aside}.`}`,
      );
    }
    return { manifest, aside };
  });
}

async function moveAside({ home, cluster }: Places, now: Date): Promise<string> {
  const aside = join(home, `before-restore-${now.toISOString().replace(/[:.]/g, '')}`);
  await mkdir(aside, { mode: 0o700 });
  await rename(cluster, join(aside, 'postgres'));
  await rename(join(home, 'server.json'), join(aside, 'server.json'));
  return aside;
}

async function putInPlace({ home, cluster, runAs }: Places, backup: string): Promise<void> {
  await cp(join(backup, 'files'), cluster, { recursive: true });
  await own(cluster, runAs);
  await writePrivately(join(home, 'server.json'), await readFile(join(backup, 'server.json'), 'utf8'));
}

/** PostgreSQL takes only files that are its user's alone. */
async function own(directory: string, runAs: RunAs): Promise<void> {
  const give = async (path: string, mode: number): Promise<void> => {
    await chmod(path, mode);
    if (runAs.uid !== undefined && runAs.gid !== undefined) await chown(path, runAs.uid, runAs.gid);
  };
  for (const entry of await readdir(directory, { withFileTypes: true })) {
    const path = join(directory, entry.name);
    if (entry.isDirectory()) await own(path, runAs);
    else await give(path, 0o600);
  }
  await give(directory, 0o700);
}
