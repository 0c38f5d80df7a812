import 'reflect-metadata';
import { Clock } from './common/clock.js';
import { AppLog } from './common/logging.js';
import { Metrics } from './common/metrics.js';
import { openDatabase } from './database/open.js';
import { ServerError } from './database/places.js';
import { buildApplication, refuseTakenPort } from './serve.js';
import { readSettings, SettingsError } from './settings.js';

const log = new AppLog();

// The terminal may be closed before the application is: a line that nobody can read must not keep it from stopping
// the database.
for (const stream of [process.stdout, process.stderr]) stream.on('error', () => undefined);

async function main(): Promise<void> {
  const settings = readSettings(process.env);
  await refuseTakenPort(settings);
  const opened = await openDatabase(settings, (line) => {
    log.say(line);
  });
  let closing = false;
  const close = async (): Promise<void> => {
    if (closing) return;
    closing = true;
    log.say('stopping');
    await application?.close();
    await opened.close();
  };
  const application = await buildApplication(
    { database: opened.database, log, clock: new Clock(), metrics: new Metrics() },
    settings,
  ).catch(async (error: unknown) => {
    await opened.close();
    throw error;
  });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.on(signal, () => {
      void close().then(() => process.exit(0));
    });
  }
  await application.listen(settings.port, settings.host);
  log.say(`open ${(await application.getUrl()).replace('[::1]', 'localhost')}`);
}

main().catch((error: unknown) => {
  if (error instanceof SettingsError || error instanceof ServerError) log.say(error.message);
  else log.failure('start', error);
  process.exit(1);
});
