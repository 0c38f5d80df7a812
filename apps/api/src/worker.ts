import { Clock } from './common/clock.js';
import { AppLog } from './common/logging.js';
import { openDatabase } from './database/open.js';
import { ServerError } from './database/places.js';
import { readSettings, SettingsError } from './settings.js';
import { keepRolling, Roller } from './worker/roller.js';

const log = new AppLog();
const MINUTE = 60_000;

/** The same work as the API's own background turn, for a process or host of its own. */
async function main(): Promise<void> {
  const opened = await openDatabase(readSettings(process.env), (line) => {
    log.say(line);
  });
  const stop = keepRolling(new Roller(opened.database, new Clock(), log), log, MINUTE);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.on(signal, () => {
      stop();
      void opened.close().then(() => process.exit(0));
    });
  }
  log.say('worker started');
}

main().catch((error: unknown) => {
  if (error instanceof SettingsError || error instanceof ServerError) log.say(error.message);
  else log.failure('start', error);
  process.exit(1);
});
