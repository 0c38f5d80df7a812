import { join, resolve } from 'node:path';
import { AppLog } from '../common/logging.js';
import { Clock } from '../common/clock.js';
import { readSettings, SettingsError } from '../settings.js';
import { takeBackup } from './backup.js';
import { ServerError } from './places.js';

const log = new AppLog();

/**
 * npm run backup [-- directory]
 * Copies the built-in server's data into a new directory, while it serves or while it is stopped.
 */
async function main([given, ...more]: readonly string[]): Promise<void> {
  const { databaseUrl, dataDir } = readSettings(process.env);
  if (more.length > 0 || given?.startsWith('-')) throw new SettingsError('Give one directory, or none.');
  if (databaseUrl !== null)
    throw new SettingsError(
      'DATABASE_URL names a server of your own: back it up with its own tools (pg_dump or pg_basebackup), as docs/operating.md says.',
    );
  const now = new Clock().now();
  const name = now.toISOString().slice(0, 19).replace(/:/g, '');
  const target = given === undefined ? join(dataDir, 'backups', name) : resolve(given);
  const { files, migrations } = await takeBackup(dataDir, target, now);
  log.say(`backup of ${Object.keys(files).length} files in ${target}, tables as of ${migrations.at(-1)}`);
  log.say(
    'it holds everything, passwords of the database too: keep a copy on another disk, where nobody else reads it',
  );
}

main(process.argv.slice(2)).catch((error: unknown) => {
  if (error instanceof SettingsError || error instanceof ServerError) log.say(error.message);
  else log.failure('backup', error);
  process.exit(1);
});
