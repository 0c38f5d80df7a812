import { Clock } from './common/clock.js';
import { AppLog } from './common/logging.js';
import { openDatabase } from './database/open.js';
import { ServerError } from './database/places.js';
import { readSettings, SettingsError } from './settings.js';
import { dutiesOf } from './worker/duties.js';

const log = new AppLog();
/** Judging keeps a core busy; a second one waits for the database meanwhile. */
const AT_ONCE = 2;

/** npm run worker: the same work as the API's own worker, for a process or host of its own. */
async function main(): Promise<void> {
  const opened = await openDatabase(readSettings(process.env), (line) => {
    log.say(line);
  });
  const worker = opened.queue.work(dutiesOf({ database: opened.database, clock: new Clock(), log }, AT_ONCE), log);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      void worker
        .stop()
        .then(() => opened.close())
        .then(() => process.exit(0));
    });
  }
  log.say('worker started');
}

main().catch((error: unknown) => {
  if (error instanceof SettingsError || error instanceof ServerError) log.say(error.message);
  else log.failure('start', error);
  process.exit(1);
});
