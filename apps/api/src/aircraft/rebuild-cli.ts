import { AppLog } from '../common/logging.js';
import { Clock } from '../common/clock.js';
import type { Connection } from '../database/database.js';
import { openDatabase } from '../database/open.js';
import { ServerError } from '../database/places.js';
import { readSettings, SettingsError } from '../settings.js';
import { AircraftData } from './aircraft.data.js';
import { compareReadTables, judgeAgain, replayOne } from './rebuild.js';
import type { Replayed } from './rebuild.js';

const log = new AppLog();
const WRITE = '--write';
/** A line of progress after so many milliseconds. */
const TELL_EVERY = 3000;

/** What was found over all aircraft. */
interface Count {
  aircraft: number;
  /** Records that are not what their entries give. */
  different: number;
  /** Aircraft whose read tables are not what their record gives. */
  unlike: number;
  /** Of those, mended now. */
  mended: number;
  /** Judged anew, whether for what differed or because they waited. */
  anew: number;
  /** Judged with other rules, zones or flights, and left so. */
  waiting: number;
}

/**
 * npm run rebuild [-- --write]
 * Replays the entries of every aircraft and compares with the stored record, naming the first entry that differs; judges the
 * record and compares with the read tables. With the flag it judges anew where the read tables differ. It never rewrites a
 * record or an entry: a difference there is for people to look at.
 */
async function main(flags: readonly string[]): Promise<number> {
  const unknown = flags.find((flag) => flag !== WRITE);
  if (unknown !== undefined) throw new SettingsError(`There is no option ${unknown}. Only ${WRITE} is known.`);
  const write = flags.includes(WRITE);
  const opened = await openDatabase(readSettings(process.env), (line) => {
    log.say(line);
  });
  const clock = new Clock();
  const count: Count = { aircraft: 0, different: 0, unlike: 0, mended: 0, anew: 0, waiting: 0 };
  try {
    const organisations = await opened.database.askDoor<{ organisation_id: string }>('door_organisations', []);
    for (const { organisation_id: organisationId } of organisations) {
      const ids = await opened.database.withOrganisation({ organisationId }, (connection) =>
        new AircraftData(connection, organisationId).ids(),
      );
      let told = Date.now();
      for (const [done, id] of ids.entries()) {
        if (Date.now() - told > TELL_EVERY) {
          log.say(`${organisationId}: ${done} of ${ids.length} aircraft compared`);
          told = Date.now();
        }
        // Locked one by one, so that nobody records on it meanwhile and nobody else has to wait.
        await opened.database.withOrganisation({ organisationId }, (connection) =>
          compareOne(connection, organisationId, id, write ? clock.now() : null, count),
        );
      }
    }
  } finally {
    await opened.close();
  }
  log.say(`${count.aircraft} aircraft replayed, ${count.different} different`);
  log.say(
    `read tables: ${count.unlike} aircraft different${write ? `, ${count.anew} judged anew` : ''}, ${count.waiting} waiting to be judged with the rules of today`,
  );
  for (const line of whatNext(count, write)) log.say(line);
  return count.different > 0 || count.unlike > count.mended ? 1 : 0;
}

/** @param writeAt when to judge anew where the read tables differ; null: only compare */
async function compareOne(
  connection: Connection,
  organisationId: string,
  id: string,
  writeAt: Date | null,
  count: Count,
): Promise<void> {
  const row = (await new AircraftData(connection, organisationId).lock([id])).get(id);
  if (!row) return;
  const name = `${organisationId} ${row.registration}`;
  count.aircraft += 1;
  const differs = differenceWords(await replayOne(connection, organisationId, row));
  if (differs !== null) {
    count.different += 1;
    log.say(`${name}: ${differs}`);
    // Verdicts of a record in doubt are left as they are: to mend them would hide it.
    return;
  }
  const { state, differ } = await compareReadTables(connection, organisationId, row);
  if (state === 'newer') {
    log.say(`${name}: judged by a newer version of the program; its read tables are left to that`);
    return;
  }
  if (state === 'waits' && writeAt === null) count.waiting += 1;
  if (differ.length > 0) {
    count.unlike += 1;
    const tables = differ.map(({ table, rows }) => `${rows} ${rows === 1 ? 'row' : 'rows'} of ${table}`).join(', ');
    log.say(`${name}: ${tables} not what its record gives`);
  }
  if (writeAt === null || (state === 'compared' && differ.length === 0)) return;
  await judgeAgain(connection, organisationId, row, writeAt);
  count.anew += 1;
  if (differ.length > 0) count.mended += 1;
}

function differenceWords({ firstDifference, recordDiffers, entries }: Replayed): string | null {
  if (firstDifference !== null)
    return `entry ${firstDifference.entry} (${firstDifference.kind}) gives another record than it did`;
  return recordDiffers ? `the stored record is not what its ${entries} entries give` : null;
}

function whatNext(count: Count, write: boolean): string[] {
  return [
    ...(count.different > 0
      ? [
          'What to do: record nothing on the aircraft whose record differs. Restore a backup from before, or correct each with an entry; this command changes no record.',
        ]
      : []),
    ...(count.unlike > 0 && !write
      ? [`What to do: npm run rebuild -- ${WRITE} judges these aircraft anew and mends their read tables.`]
      : []),
    ...(count.waiting > 0
      ? [`A running worker judges those that wait; npm run rebuild -- ${WRITE} does it at once.`]
      : []),
  ];
}

main(process.argv.slice(2)).then(
  (code) => process.exit(code),
  (error: unknown) => {
    log.say(
      error instanceof SettingsError || error instanceof ServerError
        ? error.message
        : String((error as Error).stack ?? error),
    );
    process.exit(2);
  },
);
