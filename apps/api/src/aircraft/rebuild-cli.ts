import { AppLog } from '../common/logging.js';
import { Clock } from '../common/clock.js';
import { openDatabase } from '../database/open.js';
import { ServerError } from '../database/places.js';
import { readSettings, SettingsError } from '../settings.js';
import { AircraftData } from './aircraft.data.js';
import { judgeAgain, replayOne } from './rebuild.js';

const log = new AppLog();

/**
 * npm run rebuild [-- --judge-again]
 * Replays the entries of every aircraft and compares with what is stored, naming the first entry that differs. With the flag it
 * also judges every aircraft anew. It never rewrites a record or an entry: a difference is for people to look at.
 */
async function main(flags: readonly string[]): Promise<number> {
  const unknown = flags.find((flag) => flag !== '--judge-again');
  if (unknown !== undefined) throw new SettingsError(`There is no option ${unknown}. Only --judge-again is known.`);
  const opened = await openDatabase(readSettings(process.env), (line) => {
    log.say(line);
  });
  const clock = new Clock();
  let aircraft = 0;
  let different = 0;
  try {
    const organisations = await opened.database.askDoor<{ organisation_id: string }>('door_organisations', []);
    for (const { organisation_id: organisationId } of organisations) {
      const ids = await opened.database.withOrganisation({ organisationId }, (connection) =>
        new AircraftData(connection, organisationId).ids(),
      );
      for (const id of ids) {
        await opened.database.withOrganisation({ organisationId }, async (connection) => {
          const row = (await new AircraftData(connection, organisationId).lock([id])).get(id);
          if (!row) return;
          const { registration, entries, firstDifference, recordDiffers } = await replayOne(
            connection,
            organisationId,
            row,
          );
          aircraft += 1;
          if (firstDifference !== null || recordDiffers) different += 1;
          if (firstDifference !== null) {
            log.say(
              `${organisationId} ${registration}: entry ${firstDifference.entry} (${firstDifference.kind}) gives another record than it did`,
            );
          } else if (recordDiffers) {
            log.say(`${organisationId} ${registration}: the stored record is not what its ${entries} entries give`);
          }
          if (flags.includes('--judge-again')) await judgeAgain(connection, organisationId, row, clock.now());
        });
      }
    }
  } finally {
    await opened.close();
  }
  log.say(`${aircraft} aircraft replayed, ${different} different`);
  return different === 0 ? 0 : 1;
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
