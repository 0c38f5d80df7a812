import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { daysAgo } from './cast.js';
import { Client } from './client.js';
import type { Data } from './client.js';
import { Server } from './server.js';

/** The demo, because it has rows of every kind; nothing but this test changes it. */
let server: Server;
let manager: Client;
let aircraftId: string;
let calibrationId: string;

beforeAll(async () => {
  server = await Server.start({ DEMO: 'on', WORKER: 'off' });
  manager = new Client(server.url);
  for (let times = 0; times < 3; times += 1) await manager.signIn('manager@wendle.example', 'wing-and-tally');
  const { readyBoard } = await manager.data('{ readyBoard(first: 1) { edges { node { aircraft { id } } } } }');
  aircraftId = readyBoard.edges[0].node.aircraft.id;
  // The set that the demo's entries name, found out of tolerance: all of them are traced.
  const { addTestSet: set } = await manager.data(
    'mutation { addTestSet(serial: "WA-TS-07", name: "Ramp set") { id revision } }',
  );
  await manager.data('mutation { addTestSet(serial: "WA-TS-08", name: "Bench set") { id } }');
  const { addCalibration } = await manager.data(
    'mutation ($input: NewCalibrationInput!) { addCalibration(input: $input) { calibrations { id } } }',
    {
      input: {
        testSetId: set.id,
        expectedRevision: set.revision,
        checkedOn: daysAgo(0),
        asFound: 'OUT_OF_TOLERANCE',
      },
    },
  );
  calibrationId = addCalibration.calibrations[0].id;
}, 300_000);
afterAll(() => server.remove());

const now = `${new Date().toISOString().slice(0, 16)}Z`;
const year = `${new Date(Date.now() + 365 * 86_400_000).toISOString().slice(0, 16)}Z`;

/** Every list that is given out in pages, with what it is asked for beside the page. */
const lists: Readonly<Record<string, () => string>> = {
  'Aircraft.history': () => '',
  'Query.audit': () => '',
  'Query.catalogue': () => '',
  'Query.databaseCurrency': () => `at: "${now}"`,
  'Query.dueAhead': () => `from: "${now}", to: "${year}"`,
  'Query.findings': () => `at: "${now}"`,
  'Query.houseEntries': () => '',
  'Query.meterSheet': () => '',
  'Query.readyBoard': () => `at: "${now}"`,
  'Query.reverseTrace': () => `calibrationId: "${calibrationId}"`,
  'Query.takingOn': () => '',
};

function pageOf(list: string): string {
  const [type, field] = list.split('.');
  const more = lists[list]?.() ?? '';
  const asked = `page: ${field}(${more} first: $first, after: $after) {
    totalCount edges { cursor } pageInfo { hasNextPage hasPreviousPage endCursor } }`;
  return `query ($first: Int, $after: String) { ${type === 'Aircraft' ? `in: aircraft(id: "${aircraftId}") { ${asked} }` : asked} }`;
}

async function page(list: string, first: number, after: string | null): Promise<Data> {
  const data = await manager.data(pageOf(list), { first, after });
  return (data.in ?? data).page;
}

const cursorsOf = ({ edges }: Data): string[] => edges.map(({ cursor }: Data) => cursor);

describe('lists in pages', () => {
  it('are all tried here', async () => {
    const { __schema: schema } = await manager.data('{ __schema { types { name fields { name args { name } } } } }');
    const found = schema.types.flatMap(({ name, fields }: Data) =>
      (fields ?? [])
        .filter(({ args }: Data) => args.some((arg: Data) => arg.name === 'after'))
        .map((field: Data) => `${name}.${field.name}`),
    );
    expect(found.sort()).toEqual(Object.keys(lists));
  });

  it.each(Object.keys(lists))('%s gives each row once, in the same order, however long the pages', async (list) => {
    // A screen takes no more of these at once.
    const whole = await page(list, list === 'Query.takingOn' ? 25 : 500, null);
    const all = cursorsOf(whole);
    expect(all.length).toBeGreaterThan(2);
    expect(new Set(all).size).toBe(all.length);
    const size = Math.ceil(all.length / 3);
    const seen: string[] = [];
    let last: Data = { pageInfo: { endCursor: null } };
    for (let pages = 0; seen.length < all.length && pages < 4; pages += 1) {
      last = await page(list, size, last.pageInfo.endCursor);
      expect(last.pageInfo.hasPreviousPage).toBe(pages > 0);
      expect(last.totalCount).toBe(whole.totalCount);
      seen.push(...cursorsOf(last));
    }
    expect(seen).toEqual(all);
    expect(last.pageInfo.hasNextPage).toBe(whole.pageInfo.hasNextPage);
    // From the very last row on there is nothing, and that is no fault.
    if (!whole.pageInfo.hasNextPage) expect((await page(list, 5, all.at(-1) ?? '')).edges).toEqual([]);
  });

  it.each(Object.keys(lists))('%s refuses a cursor that it did not give', async (list) => {
    const [cursor = ''] = cursorsOf(await page(list, 1, null));
    const key = JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8')) as string[];
    const forged = [
      key.map(() => 'x\u0000'),
      key.map((part) => `${part}9999999999999999999`),
      [...key, 'one more'],
      key.slice(1),
    ];
    for (const parts of forged) {
      const answer = await manager.ask(pageOf(list), {
        first: 1,
        after: Buffer.from(JSON.stringify(parts)).toString('base64url'),
      });
      // A text may be any text: then it is only another place in the list.
      if (answer.errors) expect(answer.errors[0]?.extensions.code).toBe('BAD_INPUT');
      else expect(parts.length).toBe(key.length);
    }
  });
});
