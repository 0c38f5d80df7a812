import { readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { RecordService } from '../aircraft/record.service.js';
import { Clock } from '../common/clock.js';
import { AppError, describe } from '../common/errors.js';
import { AppLog } from '../common/logging.js';
import { Metrics } from '../common/metrics.js';
import type { Database } from '../database/database.js';
import { openDatabase } from '../database/open.js';
import { ServerError } from '../database/places.js';
import { seedDemo } from '../demo/seed.js';
import { FoundingService } from '../house/founding.service.js';
import type { Actor } from '../identity/access.js';
import { demoWanted, readSettings, SettingsError } from '../settings.js';
import type { UploadedFile } from './csv.js';
import { ImportsData } from './imports.data.js';
import { ImportsService } from './imports.service.js';
import type { ImportProgress } from './report.js';
import { reportText } from './report.js';
import { readDecision, tooLargeTogether } from './upload.js';

const usage = `npm run import -- [--load] [--differences take|keep] [--as address] file.csv ...

Without --load nothing is changed: the report says what the files would do. --differences says whether the word of the
files or what is recorded counts where the two disagree. --as says on whose behalf; it may be left out where only one
manager is there. Ctrl+C stops a load after the aircraft it is at; the same command goes on. The columns of each kind of file stand in docs/import-format.md.`;

const log = new AppLog();
/** On paper a line each so many aircraft. */
const SAID_EVERY = 100;

async function main(): Promise<number> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      load: { type: 'boolean', default: false },
      as: { type: 'string' },
      differences: { type: 'string', default: '' },
      help: { type: 'boolean', short: 'h' },
    },
  });
  if (values.help || positionals.length === 0) {
    log.say(usage);
    return values.help ? 0 : 1;
  }
  const files = positionals.map(readUploaded);
  const tooLarge = tooLargeTogether(files);
  if (tooLarge !== null) throw tooLarge;
  const decision = readDecision(values.differences);
  const settings = readSettings(process.env);
  const opened = await openDatabase(settings, (line) => {
    log.say(line);
  });
  try {
    const { database } = opened;
    const clock = new Clock();
    const metrics = new Metrics();
    if (demoWanted(settings))
      await seedDemo({ database, metrics }, clock.now(), (line) => {
        log.say(line);
      });
    const actor = await actorFor(database, values.as);
    log.say(`${values.load ? 'loading' : 'dry run'} for ${actor.name} at ${actor.organisationId}`);
    const data = new ImportsData(database);
    const imports = new ImportsService(data, new RecordService(database, clock, metrics), clock, log);
    const mode = values.load ? 'load' : 'dry-run';
    const { id, finished } = await imports.start(actor, { mode, files, decision }, progressLine());
    process.once('SIGINT', () => {
      log.say('Stopping after the aircraft it is at ...');
      void imports.stop(actor, id).catch((error: unknown) => log.failure(id, error));
    });
    await finished;
    const { state, report, progress } = await imports.find(actor, id);
    if (report === null) throw new Error(`The import ended as ${state} without a report.`);
    process.stdout.write(`\n${reportText(state, report, progress)}\n`);
    return state === 'loaded' || (state === 'checked' && report.badCount === 0) ? 0 : 1;
  } finally {
    await opened.close();
  }
}

/** @throws SettingsError for a file that cannot be read */
function readUploaded(path: string): UploadedFile {
  try {
    return { name: basename(path), bytes: readFileSync(resolve(path)) };
  } catch (error) {
    throw new SettingsError(
      `${path} cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown'}). Check the path.`,
    );
  }
}

async function actorFor(database: Database, address: string | undefined): Promise<Actor> {
  const house = new FoundingService(database, new Clock());
  if (address !== undefined) return await house.actorByEmail(address);
  const managers = await house.managers();
  const [only, another] = managers;
  if (only === undefined)
    throw new SettingsError('There is nobody yet on whose behalf to import. Found an organisation first.');
  if (another !== undefined)
    throw new SettingsError(`Say on whose behalf with --as and one of: ${managers.join(', ')}.`);
  return await house.actorByEmail(only);
}

/** A line a step on paper, one line that counts up on a terminal. */
function progressLine(): (progress: ImportProgress) => void {
  let last = '';
  let said = 0;
  return ({ step, done, total }) => {
    if (process.stdout.isTTY) {
      process.stdout.write(`\r\u001b[K${step}${total > 0 ? ` ${done} of ${total}` : ''}${done === total ? '\n' : ''}`);
    } else if (step !== last || done >= said + SAID_EVERY) {
      log.say(total > 0 ? `${step} ${done} of ${total}` : step);
      said = done;
    }
    last = step;
  };
}

main().then(
  (code) => process.exit(code),
  (error: unknown) => {
    const known = error instanceof SettingsError || error instanceof ServerError ? error.message : null;
    const told = error instanceof AppError ? describe(error.problem) : null;
    const argument = (error as { code?: unknown } | null)?.code;
    const misused = typeof argument === 'string' && argument.startsWith('ERR_PARSE_ARGS');
    if (misused) log.say(`${(error as Error).message}\n\n${usage}`);
    else if (known !== null) log.say(known);
    else if (told !== null) log.say(`${told.message} ${told.extensions.wayOut}`);
    else log.failure('import', error);
    process.exit(1);
  },
);
