import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { founding, password } from './cast.js';
import { Client } from './client.js';
import type { Data } from './client.js';
import { Server } from './server.js';
import type { Files } from './uploads.js';
import { importOf, importUntil, sendFiles } from './uploads.js';

const samples = fileURLToPath(new URL('../../apps/api/samples', import.meta.url));
let server: Server;
const people = new Map<string, Client>();

beforeAll(async () => {
  server = await Server.start();
  for (const each of [...Object.values(founding), ...['three', 'four', 'five', 'six'].map(houseOf)]) {
    const { code, output } = await server.run('house/found-cli.js', JSON.stringify(each));
    expect({ code, output }).toMatchObject({ code: 0 });
  }
  for (const name of [
    'manager@one',
    'technician@one',
    'dispatcher@one',
    'auditor@one',
    'manager@two',
    'manager@three',
    'manager@four',
    'manager@five',
    'manager@six',
  ]) {
    const client = new Client(server.url);
    await client.signIn(`${name}.example`, password);
    people.set(name, client);
  }
  people.set('nobody', new Client(server.url));
});
afterAll(() => server.remove());

/** A house with nobody but its manager, for a load of its own. */
function houseOf(name: string) {
  const email = `manager@${name}.example`;
  return {
    organisation: { id: `shop-${name}`, name: `Shop ${name}` },
    manager: { id: 'manager', email, name: `Manager ${name}`, role: 'manager', operatorId: null, password },
  };
}

function person(name: string): Client {
  const found = people.get(name);
  if (!found) throw new Error(`Nobody is called ${name}.`);
  return found;
}

const send = (name: string, files: Files, mode: string | null = 'dry-run', headers = {}, differences = '') =>
  sendFiles(person(name), files, { mode, headers, differences });

const outcome = (name: string, files: Files, mode = 'dry-run', differences = ''): Promise<Data> =>
  importOf(person(name), files, { mode, differences });

async function registrations(name = 'manager@one'): Promise<string[]> {
  const { readyBoard }: Data = await people
    .get(name)
    ?.data('{ readyBoard(first: 500) { edges { node { aircraft { registration } } } } }');
  return readyBoard.edges.map((edge: Data) => edge.node.aircraft.registration).sort();
}

async function entries(name = 'manager@one'): Promise<{ readonly registration: string; readonly revision: number }[]> {
  const known = await registrations(name);
  return await Promise.all(
    known.map(async (registration) => {
      const found: Data = await person(name).data('query ($id: ID!) { aircraft(id: $id) { registration revision } }', {
        id: registration.toLowerCase(),
      });
      return found.aircraft;
    }),
  );
}

async function dossier(registration: string): Promise<Data> {
  const { aircraft }: Data = await people
    .get('manager@one')
    ?.data('query ($id: ID!) { aircraft(id: $id) { dossier } }', { id: registration.toLowerCase() });
  return aircraft.dossier;
}

/** Part of the clean sample: the catalogue whole, of the aircraft the first twelve with all that belongs to them. */
const taken = 12;
function clean(count = taken, from = 0): Files {
  const names = readdirSync(`${samples}/clean`).filter((name) => name.endsWith('.csv'));
  const mine = new RegExp(
    `^TW-1(${Array.from({ length: count }, (_, at) => String(from + at).padStart(2, '0')).join('|')})[A-H],`,
  );
  const part = (name: string) => {
    const [header = '', ...lines] = readFileSync(`${samples}/clean/${name}`, 'utf8').trimEnd().split('\r\n');
    const kept = name === 'types.csv' ? lines : lines.filter((line) => mine.test(line));
    return `${[header, ...kept].join('\r\n')}\r\n`;
  };
  return Object.fromEntries(names.map((name) => [name, part(name)]));
}

const fleet = (...rows: string[]) =>
  `registration,make,model,kind,base,base_zone,operator\n${rows.map((row) => `${row}\n`).join('')}`;
const two = fleet('TW-1A,Corvane,Four,airplane,Wick,America/Chicago,North Flyers', 'TW-2A,Corvane,Two,airplane,Wick,,');

describe('who may', () => {
  it.each([
    ['nobody', 'dry-run', 401, 'SIGNED_OUT'],
    ['dispatcher@one', 'dry-run', 403, 'FORBIDDEN'],
    ['auditor@one', 'dry-run', 403, 'FORBIDDEN'],
    ['technician@one', 'load', 403, 'FORBIDDEN'],
  ])('%s is refused a %s', async (name, mode, status, code) => {
    const answer = await send(name, { 'fleet.csv': two }, mode);
    expect(answer).toMatchObject({ status, body: { errors: [{ extensions: { code } }] } });
    expect(await registrations()).toEqual([]);
  });

  it('the technician may try', async () => {
    expect(await outcome('technician@one', { 'fleet.csv': two })).toMatchObject({
      state: 'checked',
      by: 'Technician One',
      report: { badCount: 0, aircraft: { added: 2 } },
    });
    expect(await registrations()).toEqual([]);
  });

  it('another organisation does not find it, by any way', async () => {
    const { id } = await outcome('manager@one', { 'fleet.csv': two });
    const stranger = people.get('manager@two');
    const plain = await fetch(`${server.url}/imports/${id}`, { headers: { cookie: stranger?.cookie ?? '' } });
    expect(plain.status).toBe(404);
    expect(await stranger?.problem('query ($id: ID!) { import(id: $id) { id } }', { id })).toMatchObject({
      code: 'NOT_FOUND',
    });
    expect((await stranger?.data('{ recentImports { id } }'))?.recentImports).toEqual([]);
    expect((await people.get('manager@one')?.data('{ recentImports { id } }'))?.recentImports).toContainEqual({ id });
  });

  it('a page of another site may not send files', async () => {
    const answer = await send('manager@one', { 'fleet.csv': two }, 'load', { origin: 'http://elsewhere.example' });
    expect(answer.status).toBe(403);
    expect(await registrations()).toEqual([]);
  });
});

describe('what is sent', () => {
  it('must be files by form', async () => {
    const response = await fetch(`${server.url}/imports`, {
      method: 'POST',
      headers: { cookie: people.get('manager@one')?.cookie ?? '', 'content-type': 'text/csv' },
      body: two,
    });
    expect(response.status).toBe(400);
    expect(await response.json()).toMatchObject({ errors: [{ extensions: { code: 'BAD_INPUT', field: 'files' } }] });
  });

  it.each([
    ['no file', {}, 'load', 400, 'BAD_INPUT'],
    ['an unknown mode', { 'fleet.csv': two }, 'half', 400, 'BAD_INPUT'],
    ['a file too large', { 'fleet.csv': 'x'.repeat(8_400_000) }, 'load', 413, 'TOO_LARGE'],
    ['a decision that is none', { 'fleet.csv': two }, 'load', 400, 'BAD_INPUT', 'perhaps'],
  ])('%s is refused', async (_, files, mode, status, code, differences = '') => {
    const answer = await send('manager@one', files as Files, mode, {}, differences);
    expect(answer).toMatchObject({ status, body: { errors: [{ extensions: { code } }] } });
  });

  it('counts as a dry run where nothing is said', async () => {
    const { location } = await send('manager@one', { 'fleet.csv': two }, null);
    const answer = await fetch(`${server.url}${location}`, {
      headers: { cookie: people.get('manager@one')?.cookie ?? '' },
    });
    expect(await answer.json()).toMatchObject({ mode: 'dry-run' });
  });
});

describe('loading', () => {
  it('loads nothing as long as one row is bad, and names it', async () => {
    const bad = `${two}TW-3A,Corvane,Two,airship,Wick,,\n`;
    const found = await outcome('manager@one', { 'fleet.csv': bad }, 'load');
    expect(found).toMatchObject({
      state: 'refused',
      report: {
        badCount: 1,
        bad: [{ file: 'fleet.csv', line: 4, column: 'kind', value: 'airship' }],
        files: [{ name: 'fleet.csv', kind: 'aircraft', rows: 3, good: 2, bad: 1 }],
      },
    });
    expect(await registrations()).toEqual([]);
  });

  it('loads a whole fleet, says what the board then says, and doubles nothing when sent again', async () => {
    const tried = await outcome('manager@one', clean());
    expect(tried).toMatchObject({ state: 'checked', report: { badCount: 0, aircraft: { added: taken } } });
    expect(await registrations()).toEqual([]);

    const loaded = await outcome('manager@one', clean(), 'load');
    expect(loaded).toMatchObject({ state: 'loaded', report: { badCount: 0, problem: null } });
    expect(loaded.report.board).toEqual(tried.report.board);
    expect(await registrations()).toHaveLength(taken);
    const board: Data[] = loaded.report.board;
    expect(board.length).toBeGreaterThan(5);
    for (const { profileId, yes, no, cannotTell } of board) {
      const { readyBoard }: Data = await people
        .get('manager@one')
        ?.data(
          'query ($profile: ID!) { readyBoard(first: 500, profile: $profile) { edges { node { verdicts { ready } } } } }',
          { profile: profileId },
        );
      const ready = readyBoard.edges.flatMap((edge: Data) => edge.node.verdicts.map((cell: Data) => cell.ready));
      const count = (word: string) => ready.filter((each: string) => each === word).length;
      expect({ profileId, yes: count('YES'), no: count('NO'), cannotTell: count('CANNOT_TELL') }).toEqual({
        profileId,
        yes,
        no,
        cannotTell,
      });
    }

    const again = await outcome('manager@one', clean(), 'load');
    expect(again).toMatchObject({
      state: 'loaded',
      report: { changes: 0, aircraft: { added: 0, changed: 0, unchanged: taken }, newOperators: [], newTypes: [] },
    });
    expect(await registrations()).toHaveLength(taken);
    expect(await registrations('manager@two')).toEqual([]);
  });

  it('adds to what is there, and refuses what contradicts it', async () => {
    const header = 'registration,meter,dial,read_at,read_by\n';
    const backwards = await outcome(
      'manager@one',
      { 'm.csv': `${header}TW-100A,tach,1.0,2026-11-25T10:00Z,A\n` },
      'load',
    );
    expect(backwards).toMatchObject({ state: 'refused', report: { bad: [{ line: 2, column: 'dial' }] } });
    const on = await outcome('manager@one', { 'm.csv': `${header}TW-100A,tach,12000.0,2026-11-25T10:00Z,A\n` }, 'load');
    expect(on).toMatchObject({ state: 'loaded', report: { changes: 1, aircraft: { changed: 1 } } });
  });

  it('leaves entries that say which files they came from and who read them in; those written by hand name no file', async () => {
    const [registration = ''] = await registrations();
    const id = registration.toLowerCase();
    const told = async (): Promise<Data[]> =>
      (
        await person('manager@one').data(
          'query ($id: ID!) { aircraft(id: $id) { history(first: 200) { edges { node { kind by takenInFrom body } } } } }',
          { id },
        )
      ).aircraft.history.edges.map(({ node }: Data) => node);
    const taken = await told();
    const signed = taken.filter(({ kind }) => kind === 'record.add');
    expect(signed.length).toBeGreaterThan(0);
    for (const { by, takenInFrom, body } of signed) {
      expect({ by, takenInFrom }).toEqual({ by: 'Manager One', takenInFrom: Object.keys(clean()) });
      // Whom the record names is another matter.
      expect(body.record.agency.name).toMatch(/^(?!Manager One)./);
    }
    const place = { aircraftId: id, key: `by-hand-${registration}`, reason: 'Tyre' };
    await person('manager@one').data('mutation ($input: PlaceHoldInput!) { placeHold(input: $input) { id } }', {
      input: place,
    });
    expect((await told())[0]).toMatchObject({ kind: 'hold.place', by: 'Manager One', takenInFrom: null });
    const query = `{ aircraft(id: "${id}") { holds { id open } } }`;
    const [{ id: holdId }] = (await person('manager@one').data(query)).aircraft.holds;
    await person('manager@one').data('mutation ($input: LiftHoldInput!) { liftHold(input: $input) { id } }', {
      input: { aircraftId: id, key: `lifted-${registration}`, holdId, reason: 'Changed' },
    });
  });

  it('shows a changed row, records nothing of it undecided, and then what the person decided', async () => {
    const files = clean(1);
    const aircraft = { 'aircraft.csv': (files['aircraft.csv'] ?? '').replace('Corvane', 'Corvane Works') };
    const make = async () => (await dossier('TW-100A')).configuration.aircraft.make;
    const difference = { file: 'aircraft.csv', line: 2, registration: 'TW-100A', field: 'make' };
    const tried = await outcome('manager@one', aircraft);
    expect(tried.report).toMatchObject({
      changes: 0,
      differenceCount: 1,
      differences: [{ ...difference, was: 'Corvane', is: 'Corvane Works', taken: null }],
    });
    const undecided = await outcome('manager@one', aircraft, 'load');
    expect(undecided).toMatchObject({ state: 'refused', report: { badCount: 0 } });
    expect(undecided.report.problem.wayOut).toContain('whether the word of the file is taken');
    expect(await make()).toBe('Corvane');
    expect(await outcome('manager@one', aircraft, 'load', 'keep')).toMatchObject({
      state: 'loaded',
      report: { changes: 0, differences: [{ taken: false }] },
    });
    expect(await make()).toBe('Corvane');
    const listed = JSON.stringify(['aircraft.csv:2']);
    expect(await outcome('manager@one', aircraft, 'load', listed)).toMatchObject({
      state: 'loaded',
      report: { changes: 1, differences: [{ taken: true }] },
    });
    expect(await make()).toBe('Corvane Works');
    expect(await outcome('manager@one', aircraft, 'load')).toMatchObject({
      state: 'loaded',
      report: { changes: 0, differenceCount: 0 },
    });
  });

  it('takes a type that the catalogue does not have as an uncatalogued unit, and ties it once the type is there', async () => {
    const units = { 'u.csv': 'registration,unit,type,fitted_on\nTW-100A,box,Zephyrine 9000,2026-01-05\n' };
    expect(await outcome('manager@one', units, 'load')).toMatchObject({
      state: 'loaded',
      report: { badCount: 0, uncatalogued: [{ type: 'Zephyrine 9000', units: 1 }] },
    });
    const box = async () =>
      (await dossier('TW-100A')).configuration.units.find((each: { id: string }) => each.id === 'box');
    expect(await box()).toMatchObject({ typeId: null, functions: ['other'], name: 'Zephyrine 9000' });
    const { aircraft }: Data = await people
      .get('manager@one')
      ?.data('{ aircraft(id: "tw-100a") { findings { key outcome } } }');
    expect(aircraft.findings).toContainEqual({ key: 'document-pack|box', outcome: 'CANNOT_TELL' });
    const types = {
      't.csv':
        'family,maker,type_name,part_number,manual,manual_revision,type_functions\nz9,Quillon,Zephyrine 9000,Z-9,Z manual,A,com\n',
    };
    expect(await outcome('manager@one', { ...units, ...types }, 'load')).toMatchObject({
      state: 'loaded',
      report: { changes: 1, differenceCount: 0, uncatalogued: [], newTypes: ['Quillon Zephyrine 9000'] },
    });
    expect(await box()).toMatchObject({ typeId: expect.stringMatching(/./), functions: [] });
  });

  it('two people who load the same fleet at once double nothing', async () => {
    const files = clean(10, 20);
    const tried = await outcome('manager@one', files);
    expect(tried.report).toMatchObject({ badCount: 0, aircraft: { added: 10 } });
    const both = await Promise.all([
      outcome('manager@one', files, 'load'),
      outcome('manager@one', files, 'load'),
      outcome('manager@one', files, 'load'),
    ]);
    expect(both.map(({ state, report }) => [state, report.problem])).toEqual([
      ['loaded', null],
      ['loaded', null],
      ['loaded', null],
    ]);
    const loaded = (await entries()).filter(({ registration }) => /^TW-12\d/.test(registration));
    expect(loaded).toHaveLength(10);
    expect(loaded.reduce((sum, { revision }) => sum + revision, 0)).toBe(tried.report.changes);
    expect(await outcome('manager@one', files, 'load')).toMatchObject({
      state: 'loaded',
      report: { changes: 0, aircraft: { added: 0, changed: 0, unchanged: 10 } },
    });
  });

  it('answers over GraphQL, too, with the format it reads', async () => {
    const { id } = await outcome('manager@one', { 'fleet.csv': two });
    const asked: Data = await people.get('manager@one')?.data(
      `query ($id: ID!) {
        import(id: $id) { mode state by at progress { step done total }
          report { changes badCount files { name kind rows } board { profileId yes } problem { reason } } }
        importFormat { kind sameRow columns { name required says written } } }`,
      { id },
    );
    expect(asked.import).toMatchObject({ mode: 'DRY_RUN', state: 'CHECKED', by: 'Manager One' });
    expect(asked.import.report.files).toEqual([{ name: 'fleet.csv', kind: 'aircraft', rows: 2 }]);
    const kinds: Data[] = asked.importFormat;
    expect(kinds.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['types', 'aircraft', 'units', 'records', 'meters']),
    );
  });
});

describe('a load that does not come to its end', () => {
  const path = (name: string) => `${samples}/clean/${name}`;
  const names = readdirSync(`${samples}/clean`).filter((name) => name.endsWith('.csv'));
  const whole = Object.fromEntries(names.map((name) => [name, readFileSync(path(name), 'utf8')]));
  let planned: ReadonlyMap<string, number>;

  beforeAll(async () => {
    // What each aircraft would hold, from another house that is loaded in one go.
    expect(await outcome('manager@two', whole, 'load')).toMatchObject({ state: 'loaded' });
    planned = new Map((await entries('manager@two')).map(({ registration, revision }) => [registration, revision]));
  });

  /** Aircraft that are in, each as whole as in the house that was loaded in one go. */
  async function inWhole(name: string): Promise<number> {
    const found = await entries(name);
    for (const { registration, revision } of found)
      expect([registration, revision]).toEqual([registration, planned.get(registration)]);
    return found.length;
  }

  it('because it was killed leaves whole aircraft, and goes on with the same files', async () => {
    const args = ['--load', '--as', 'manager@three.example', ...names.map(path)];
    const running = server.begin('imports/cli.js', ...args);
    await running.says('loading 20 of 44');
    await running.kill();
    const left = await inWhole('manager@three');
    expect([20, 40]).toContain(left);
    const { code, output } = await server.run('imports/cli.js', '', ...args);
    expect({ code, output }).toMatchObject({ code: 0 });
    expect(output).toContain(`Aircraft: ${44 - left} new, 0 changed, ${left} with nothing new`);
    expect(await inWhole('manager@three')).toBe(44);
  });

  it('because somebody pressed Ctrl+C says how far it is', async () => {
    const args = ['--load', '--as', 'manager@four.example', ...names.map(path)];
    const running = server.begin('imports/cli.js', ...args);
    await running.says('loading 20 of 44');
    const { code, output } = await running.interrupt();
    const left = await inWhole('manager@four');
    expect(left).toBeLessThan(44);
    expect(code).toBe(1);
    expect(output).toContain(`Stopped. ${left} of 44 aircraft are in, each whole`);
  });

  it('because somebody stopped it on the screen goes on, too; nobody else may stop it', async () => {
    const stop = 'mutation ($id: ID!) { stopImport(id: $id) { state } }';
    const { location } = await send('manager@five', whole, 'load');
    const id = location?.split('/').at(-1);
    await importUntil(person('manager@five'), location, ({ progress }) => progress.step === 'loading');
    expect(await people.get('manager@two')?.problem(stop, { id })).toMatchObject({ code: 'NOT_FOUND' });
    expect(await people.get('technician@one')?.problem(stop, { id })).toMatchObject({ code: 'FORBIDDEN' });
    await people.get('manager@five')?.data(stop, { id });
    const { state, progress } = await importUntil(
      person('manager@five'),
      location,
      ({ state: now }) => now !== 'running',
    );
    const left = await inWhole('manager@five');
    expect({ state, progress }).toMatchObject({ state: 'interrupted', progress: { done: left, total: 44 } });
    expect(left).toBeLessThan(44);
    expect(await people.get('manager@five')?.problem(stop, { id })).toMatchObject({ code: 'NOT_FOUND' });
    const again = await outcome('manager@five', whole, 'load');
    expect(again).toMatchObject({
      state: 'loaded',
      progress: { step: 'loading', done: 44, total: 44 },
      report: { aircraft: { added: 44 - left, changed: 0, unchanged: left } },
    });
    expect(await inWhole('manager@five')).toBe(44);
  });
});

describe('the command', () => {
  const path = (name: string) => `${samples}/messy/${name}`;
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'tallywing-files-'));
    await writeFile(join(folder, 'fleet.csv'), two);
  });
  afterAll(() => rm(folder, { recursive: true }));

  it('tries by default, prints what is bad, and ends with 1', async () => {
    const messy = readdirSync(`${samples}/messy`).filter((name) => name.endsWith('.csv'));
    const { code, output } = await server.run('imports/cli.js', '', '--as', 'manager@six.example', ...messy.map(path));
    expect(code).toBe(1);
    expect(output).toContain('28 rows are bad. Nothing was loaded.');
    expect(output).toContain(
      'Not in the catalogue, taken as uncatalogued units: Old Marrow tape player (1), Zephyrine 9000 (1).',
    );
    expect(await registrations('manager@six')).toEqual([]);
  });

  it('loads into the database that the server uses, on behalf of the person named', async () => {
    const file = join(folder, 'fleet.csv');
    const tried = await server.run('imports/cli.js', '', '--as', 'manager@six.example', file);
    expect({ code: tried.code, output: tried.output }).toMatchObject({ code: 0 });
    expect(await registrations('manager@six')).toEqual([]);
    const { code, output } = await server.run('imports/cli.js', '', '--load', '--as', 'manager@six.example', file);
    expect({ code, output }).toMatchObject({ code: 0 });
    expect(output).toContain('Loaded.');
    expect(await registrations('manager@six')).toEqual(['TW-1A', 'TW-2A']);
  });

  it.each([
    ['without a name where there are several', [`${samples}/clean/aircraft.csv`], 'Say on whose behalf with --as'],
    ['for nobody', ['--as', 'ghost@one.example', `${samples}/clean/aircraft.csv`], 'There is no such member'],
    [
      'for somebody who may not',
      ['--as', 'dispatcher@one.example', `${samples}/clean/aircraft.csv`],
      'Your role may not',
    ],
    ['with a file that is not there', ['--as', 'manager@one.example', 'nowhere.csv'], 'nowhere.csv cannot be read'],
    ['with an option that is not there', ['--fast'], '--fast'],
  ])('ends with 1 and says why: %s', async (_, args, said) => {
    const { code, output } = await server.run('imports/cli.js', '', ...args);
    expect({ code, said: output.includes(said), output }).toMatchObject({ code: 1, said: true });
  });
});
