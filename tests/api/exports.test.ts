import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readAircraftFile } from '../../libs/rules/src/interchange/aircraft-file.js';
import { readMeter } from './cast.js';
import type { Client, Data } from './client.js';
import { founded } from './founded.js';
import { Server } from './server.js';
import type { Files } from './uploads.js';
import { importOf } from './uploads.js';

const samples = fileURLToPath(new URL('../../apps/api/samples/clean', import.meta.url));
const taken = ['TW-100A', 'TW-101B', 'TW-102C', 'TW-103D'];
let server: Server;
let person: (name: string) => Client;

beforeAll(async () => {
  server = await Server.start();
  person = await founded(server);
  const loaded = await importOf(person('manager@one'), fleet(), { mode: 'load' });
  expect(loaded).toMatchObject({ state: 'loaded', report: { aircraft: { added: taken.length } } });
});
afterAll(() => server.remove());

/** The first four aircraft of the clean sample with all that belongs to them. */
function fleet(): Files {
  const names = readdirSync(samples).filter((name) => name.endsWith('.csv'));
  return Object.fromEntries(
    names.map((name) => {
      const [header = '', ...lines] = readFileSync(`${samples}/${name}`, 'utf8').trimEnd().split('\r\n');
      const own = lines.filter((line) => name === 'types.csv' || taken.some((each) => line.startsWith(`${each},`)));
      return [name, `${[header, ...own].join('\n')}\n`];
    }),
  );
}

async function download(name: string, path: string) {
  const response = await fetch(`${server.url}/exports/${path}`, { headers: { cookie: person(name).cookie } });
  const text = await response.text();
  return { status: response.status, headers: response.headers, text, body: JSON.parse(text) as Data };
}

/** Everything recorded of an aircraft, apart from its name within the house. */
async function record(name: string, registration: string): Promise<Data> {
  const { aircraft }: Data = await person(name).data('query ($id: ID!) { aircraft(id: $id) { dossier } }', {
    id: registration.toLowerCase(),
  });
  return aircraft && { ...aircraft.dossier, aircraftId: '' };
}

describe('who may', () => {
  it.each([
    ['nobody', 'house', 401, 'SIGNED_OUT'],
    ['nobody', 'aircraft/tw-100a', 401, 'SIGNED_OUT'],
    ['nobody', 'schema', 401, 'SIGNED_OUT'],
    ['dispatcher@one', 'house', 403, 'FORBIDDEN'],
    ['dispatcher@one', 'aircraft/tw-100a', 403, 'FORBIDDEN'],
    ['technician@one', 'house', 403, 'FORBIDDEN'],
    ['manager@two', 'aircraft/tw-100a', 404, 'NOT_FOUND'],
    ['manager@two', 'house', 404, 'NOT_FOUND'],
    ['manager@one', 'aircraft/none', 404, 'NOT_FOUND'],
  ])('%s is refused %s', async (name, path, status, code) => {
    expect(await download(name, path)).toMatchObject({ status, body: { errors: [{ extensions: { code } }] } });
  });

  it.each([
    ['technician@one', 'aircraft/tw-100a', 1],
    ['auditor@one', 'aircraft/tw-100a', 1],
    ['auditor@one', 'house', taken.length],
    ['manager@one', 'house', taken.length],
  ])('%s gets %s', async (name, path, count) => {
    const { status, headers, body } = await download(name, path);
    expect(status).toBe(200);
    expect(headers.get('content-disposition')).toMatch(/^attachment; filename="[a-z0-9-]+\.json"$/);
    expect(headers.get('cache-control')).toBe('no-store');
    expect(body.aircraft).toHaveLength(count);
  });
});

describe('a house that is written out', () => {
  let file: string;
  beforeAll(async () => {
    file = (await download('manager@one', 'house')).text;
  });

  it('is of the documented form, with who recorded what and when', () => {
    const read = readAircraftFile(JSON.parse(file));
    expect(read).toMatchObject({ ok: true });
    const [entry] = JSON.parse(file).aircraft[0].entries as Data[];
    expect(entry).toMatchObject({ number: 1, by: 'Manager One', change: { kind: 'aircraft.add' } });
    expect(entry.recordedAt).toMatch(/^\d{4}-\d{2}-\d{2}T/);
  });

  it('is, in another house, the same again: first as a trial, then recorded, then nothing new', async () => {
    const files = { 'house.json': file };
    const entries = JSON.parse(file).aircraft.reduce((sum: number, each: Data) => sum + each.entries.length, 0);
    const tried = await importOf(person('manager@two'), files);
    expect(tried).toMatchObject({
      state: 'checked',
      report: {
        badCount: 0,
        changes: entries,
        aircraft: { added: taken.length },
        files: [{ name: 'house.json', kind: 'aircraft records', rows: taken.length, good: taken.length, bad: 0 }],
      },
    });
    expect(await record('manager@two', 'TW-100A')).toBeNull();
    expect(await importOf(person('manager@two'), files, { mode: 'load' })).toMatchObject({ state: 'loaded' });
    for (const registration of taken)
      expect(await record('manager@two', registration)).toEqual(await record('manager@one', registration));
    expect(await importOf(person('manager@two'), files, { mode: 'load' })).toMatchObject({
      state: 'loaded',
      report: { changes: 0, aircraft: { added: 0, changed: 0, unchanged: taken.length } },
    });
    const back = await download('manager@two', 'house');
    expect(await importOf(person('manager@one'), { 'back.json': back.text }, { mode: 'load' })).toMatchObject({
      state: 'loaded',
      report: { changes: 0, newTypes: [], newOperators: [] },
    });
  });

  it('has what came since added, and nothing taken back', async () => {
    const revision = (await record('manager@one', 'TW-100A')).revision as number;
    const reading = readMeter(1_200_000, '2026-11-25T10:00Z');
    expect((await person('manager@one').record('tw-100a', revision, [reading])).errors).toBeUndefined();
    const { text } = await download('technician@one', 'aircraft/tw-100a');
    expect(await importOf(person('manager@two'), { 'one.json': text }, { mode: 'load' })).toMatchObject({
      state: 'loaded',
      report: { changes: 1, aircraft: { added: 0, changed: 1, unchanged: 0 } },
    });
    expect(await record('manager@two', 'TW-100A')).toEqual(await record('manager@one', 'TW-100A'));
    const older = await importOf(person('manager@two'), { 'house.json': file }, { mode: 'load' });
    expect(older).toMatchObject({ state: 'loaded', report: { changes: 0 } });
    expect(older.report.remarks).toMatchObject([{ text: expect.stringContaining('TW-100A has gone on since') }]);
  });

  it('is refused whole where one aircraft went another way here', async () => {
    const revision = (await record('manager@two', 'TW-101B')).revision as number;
    const reading = readMeter(1_250_000, '2026-11-25T10:00Z');
    expect((await person('manager@two').record('tw-101b', revision, [reading])).errors).toBeUndefined();
    const other = readMeter(1_300_000, '2026-11-25T11:00Z');
    expect((await person('manager@one').record('tw-101b', revision, [other])).errors).toBeUndefined();
    const { text } = await download('manager@one', 'house');
    const refused = await importOf(person('manager@two'), { 'house.json': text }, { mode: 'load' });
    expect(refused).toMatchObject({
      state: 'refused',
      report: {
        badCount: 1,
        bad: [{ value: 'TW-101B', reason: 'TW-101B is recorded here with another history.' }],
        files: [{ good: taken.length - 1, bad: 1 }],
      },
    });
  });

  it('is refused where somebody changed it, with the place', async () => {
    const damaged = JSON.parse(file) as Data;
    damaged.aircraft[0].entries[3].change.kind = 'nothing.known';
    const refused = await importOf(person('manager@two'), { 'bad.json': JSON.stringify(damaged) }, { mode: 'load' });
    expect(refused).toMatchObject({
      state: 'refused',
      report: { badCount: 1, bad: [{ file: 'bad.json', column: 'aircraft.0.entries.3.change.kind' }] },
    });
    const cut = await importOf(person('manager@two'), { 'cut.json': file.slice(0, 5000) }, { mode: 'load' });
    expect(cut).toMatchObject({ state: 'refused', report: { badCount: 1, files: [{ kind: null }] } });
  });
});

it('says its form', async () => {
  const { status, body } = await download('dispatcher@one', 'schema');
  const written = readFileSync(new URL('../../docs/aircraft-records.schema.json', import.meta.url), 'utf8');
  expect({ status, body }).toEqual({ status: 200, body: JSON.parse(written) });
});
