import 'reflect-metadata';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { Foundation } from './app.module.js';
import { Clock } from './common/clock.js';
import { AppLog } from './common/logging.js';
import { Metrics } from './common/metrics.js';
import { HouseListener } from './database/listener.js';
import { openDatabase } from './database/open.js';
import { ServerError } from './database/places.js';
import { demoAccounts } from './demo/accounts.js';
import { seedDemo } from './demo/seed.js';
import { IdentityData } from './identity/identity.data.js';
import { buildApplication, refuseTakenPort } from './serve.js';
import { demoWanted, readSettings, SettingsError } from './settings.js';
import type { Settings } from './settings.js';
import { dutiesOf } from './worker/duties.js';

const log = new AppLog();
/** One at a time beside the requests of people. */
const WORKER_AT_ONCE = 1;

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
  let worker: ReturnType<typeof opened.queue.work> | null = null;
  const close = async (): Promise<void> => {
    if (closing) return;
    closing = true;
    log.say('stopping');
    await worker?.stop();
    await application?.close();
    await listener.close();
    await opened.close();
  };
  const listener = new HouseListener(opened.listenUrl);
  const foundation = {
    database: opened.database,
    disk: opened.disk,
    listener,
    log,
    clock: new Clock(),
    metrics: new Metrics(),
  };
  const application = await prepare(foundation, settings).catch(async (error: unknown) => {
    await listener.close();
    await opened.close();
    throw error;
  });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.on(signal, () => {
      void close().then(() => process.exit(0));
    });
  }
  await application.listen(settings.port, settings.host);
  if (settings.worker) worker = opened.queue.work(dutiesOf(foundation, WORKER_AT_ONCE), log);
  log.say(`open ${(await application.getUrl()).replace('[::1]', 'localhost')}`);
  if (demoWanted(settings)) await sayAccounts(foundation);
}

async function prepare(foundation: Foundation, settings: Settings): Promise<NestExpressApplication> {
  if (demoWanted(settings)) {
    const added = await seedDemo(foundation, foundation.clock.now(), (line) => {
      log.say(line);
    });
    if (added !== null) log.say(`demo filled with ${added} aircraft`);
  }
  return await buildApplication(foundation, settings);
}

/** Only accounts that are there: a database with people of its own has none of the demo's. */
async function sayAccounts({ database }: Foundation): Promise<void> {
  const identity = new IdentityData(database);
  for (const { email, password, role, organisation } of demoAccounts) {
    if ((await identity.candidates(email)).length > 0)
      log.say(`demo account: ${email}  ${password}  (${role}, ${organisation})`);
  }
}

main().catch((error: unknown) => {
  if (error instanceof SettingsError || error instanceof ServerError) log.say(error.message);
  else log.failure('start', error);
  process.exit(1);
});
