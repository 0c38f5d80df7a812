import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AppLog } from '../common/logging.js';
import { Clock } from '../common/clock.js';
import { readSettings, SettingsError } from '../settings.js';
import { ServerError } from './places.js';
import { restoreBackup } from './restore.js';

const log = new AppLog();

/**
 * npm run restore -- directory [--replace]
 * Puts a backup in the place of the built-in server's data, then replays every aircraft's entries and compares.
 */
async function main(given: readonly string[]): Promise<void> {
  const { databaseUrl, dataDir } = readSettings(process.env);
  const [backup, ...more] = given.filter((each) => each !== '--replace');
  if (backup === undefined || backup.startsWith('-') || more.length > 0)
    throw new SettingsError('Give the directory of one backup, and --replace where data is to be replaced.');
  if (databaseUrl !== null)
    throw new SettingsError(
      'DATABASE_URL names a server of your own: restore it with its own tools, as docs/operating.md says.',
    );
  const now = new Clock().now();
  const { manifest, aside } = await restoreBackup(dataDir, resolve(backup), given.includes('--replace'), now);
  log.say(`backup of ${manifest.takenAt} is in place`);
  if (aside !== null) log.say(`what was there before is in ${aside}: delete it when you no longer need it`);
  verify();
}

/** The record itself is the test: what the entries give must be what is stored. */
function verify(): void {
  const rebuild = fileURLToPath(new URL('../aircraft/rebuild-cli.js', import.meta.url));
  const { status } = spawnSync(process.execPath, ['--enable-source-maps', rebuild], { stdio: 'inherit' });
  if (status === 0) log.say('restored, and every record is what its entries give');
  else
    throw new ServerError(
      'The backup is in place, but it was not found whole: see the lines above before anybody works with it.',
    );
}

main(process.argv.slice(2)).catch((error: unknown) => {
  if (error instanceof SettingsError || error instanceof ServerError) log.say(error.message);
  else log.failure('restore', error);
  process.exit(1);
});
