import { readFileSync } from 'node:fs';
import { readTypes } from '../catalogue/admission.js';
import { addTypes } from '../catalogue/catalogue.data.js';
import { Clock } from '../common/clock.js';
import { AppError, describe } from '../common/errors.js';
import { AppLog } from '../common/logging.js';
import { openDatabase } from '../database/open.js';
import { ServerError } from '../database/places.js';
import { startingProfiles } from './starting-profiles.js';
import type { NewPerson } from '../people/people.service.js';
import { readSettings, SettingsError } from '../settings.js';
import type { House } from './founding.data.js';
import { FoundingService } from './founding.service.js';

interface Founding extends House {
  readonly organisation: { readonly id: string; readonly name: string };
  readonly manager: NewPerson;
  readonly people?: readonly NewPerson[];
  readonly types?: readonly unknown[];
}

const log = new AppLog();

/**
 * node apps/api/dist/house/found-cli.js < founding.json
 * Founds an organisation on this machine: { organisation: { id, name }, manager: { email, name, password }, people, operators,
 * bases, profiles, types }. Passwords come over standard input only, so that they stand in no process list.
 */
async function main(): Promise<void> {
  const founding = read();
  const opened = await openDatabase(readSettings(process.env), () => undefined);
  try {
    const house = new FoundingService(opened.database, new Clock());
    const types = readTypes(founding.types ?? []);
    const lists = { ...founding, profiles: founding.profiles ?? startingProfiles };
    const manager = await house.found(founding.organisation, lists, founding.manager, founding.people ?? []);
    await opened.database.withOrganisation(manager, (connection) =>
      addTypes(connection, manager, types, new Clock().now()),
    );
    log.say(`founded ${founding.organisation.name} with ${1 + (founding.people?.length ?? 0)} people`);
  } finally {
    await opened.close();
  }
}

function read(): Founding {
  try {
    const given = JSON.parse(readFileSync(0, 'utf8')) as Partial<Founding>;
    const people: readonly (Partial<NewPerson> | undefined)[] = [given.manager, ...(given.people ?? [])];
    const whole = people.every((person) => person?.email && person.name && person.password);
    if (given.organisation?.id && given.organisation.name && whole) return given as Founding;
  } catch {
    // Said below, with the form that is wanted.
  }
  throw new SettingsError(
    'Give { "organisation": { "id", "name" }, "manager": { "email", "name", "password" } } as JSON on standard input, and people like the manager.',
  );
}

main().then(
  () => process.exit(0),
  (error: unknown) => {
    const known = error instanceof SettingsError || error instanceof ServerError ? error.message : null;
    const told = error instanceof AppError ? describe(error.problem) : null;
    log.say(
      known ?? (told === null ? String((error as Error).stack ?? error) : `${told.message} ${told.extensions.wayOut}`),
    );
    process.exit(1);
  },
);
