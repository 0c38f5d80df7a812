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

const samples = fileURLToPath(new URL('../../apps/api/samples', import.meta.url));
let server: Server;
const people = new Map<string, Client>();

beforeAll(async () => {
  server = await Server.start();
  for (const each of Object.values(founding)) {
    const { code, output } = await server.run('house/found-cli.js', JSON.stringify(each));
    expect({ code, output }).toMatchObject({ code: 0 });
  }
  for (const name of ['manager@one', 'technician@one', 'dispatcher@one', 'auditor@one', 'manager@two']) {
    const client = new Client(server.url);
    await client.signIn(`${name}.example`, password);
    people.set(name, client);
  }
  people.set('nobody', new Client(server.url));
});
afterAll(() => server.remove());

type Files = Readonly<Record<string, string>>;

async function send(name: string, files: Files, mode: string | null = 'dry-run', headers = {}) {
  const form = new FormData();
  if (mode !== null) form.set('mode', mode);
  for (const [file, content] of Object.entries(files)) form.append('files', new Blob([content]), file);
  const response = await fetch(`${server.url}/imports`, {
    method: 'POST',
    headers: { cookie: people.get(name)?.cookie ?? '', ...headers },
    body: form,
  });
  return { status: response.status, location: response.headers.get('location'), body: (await response.json()) as Data };
}

/** Sends, and waits for what came out. */
async function outcome(name: string, files: Files, mode = 'dry-run'): Promise<Data> {
  const { status, location, body } = await send(name, files, mode);
  expect({ status, body }).toMatchObject({ status: 202 });
  for (let tries = 0; tries < 600; tries += 1) {
    const answer = await fetch(`${server.url}${location}`, { headers: { cookie: people.get(name)?.cookie ?? '' } });
    const found = (await answer.json()) as Data;
    if (found.state !== 'running') return found;
    await new Promise((done) => setTimeout(done, 200));
  }
  throw new Error('The import did not end.');
}

async function registrations(name = 'manager@one'): Promise<string[]> {
  const { readyBoard }: Data = await people
    .get(name)
    ?.data('{ readyBoard(first: 500) { edges { node { aircraft { registration } } } } }');
  return readyBoard.edges.map((edge: Data) => edge.node.aircraft.registration).sort();
}

/** Part of the clean sample: the catalogue whole, of the aircraft the first twelve with all that belongs to them. */
const taken = 12;
function clean(): Files {
  const names = readdirSync(`${samples}/clean`).filter((name) => name.endsWith('.csv'));
  const mine = new RegExp(
    `^TW-1(${Array.from({ length: taken }, (_, at) => String(at).padStart(2, '0')).join('|')})[A-H],`,
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
  ])('%s is refused', async (_, files, mode, status, code) => {
    const answer = await send('manager@one', files as Files, mode);
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
    const { code, output } = await server.run('imports/cli.js', '', '--as', 'manager@two.example', ...messy.map(path));
    expect(code).toBe(1);
    expect(output).toContain('29 rows are bad. Nothing was loaded.');
    expect(output).toMatch(/units\.csv:\d+ {2}type "Zephyrine 9000": The catalogue has no equipment type/);
    expect(await registrations('manager@two')).toEqual([]);
  });

  it('loads into the database that the server uses, on behalf of the person named', async () => {
    const file = join(folder, 'fleet.csv');
    const tried = await server.run('imports/cli.js', '', '--as', 'manager@two.example', file);
    expect({ code: tried.code, output: tried.output }).toMatchObject({ code: 0 });
    expect(await registrations('manager@two')).toEqual([]);
    const { code, output } = await server.run('imports/cli.js', '', '--load', '--as', 'manager@two.example', file);
    expect({ code, output }).toMatchObject({ code: 0 });
    expect(output).toContain('Loaded.');
    expect(await registrations('manager@two')).toEqual(['TW-1A', 'TW-2A']);
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
