import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { daysAgo } from './cast.js';
import { Client } from './client.js';
import type { Data } from './client.js';
import { Server } from './server.js';

/** What the screens ask, of the demo, because it has rows of every kind. */
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

describe('what is asked with a filter', () => {
  it.each([
    ['effect', 'effect', (value: string) => `[${value}]`],
    ['topic', 'topic', (value: string) => `[${value}]`],
    ['rule', 'ruleId', (value: string) => JSON.stringify(value)],
  ])('are the findings of one %s, and no others', async (_, field, spelt) => {
    const nodes = async (filter: string): Promise<Data[]> => {
      const { findings } = await manager.data(
        `{ findings(at: "${now}", first: 500${filter}) { totalCount edges { node { id effect topic ruleId } } } }`,
      );
      expect(findings.totalCount).toBe(findings.edges.length);
      return findings.edges.map(({ node }: Data) => node);
    };
    const all = await nodes('');
    const values = [...new Set(all.map((each) => String(each[field])))];
    expect(values.length).toBeGreaterThan(1);
    for (const value of values.slice(0, 4))
      expect(await nodes(`, filter: { ${field}: ${spelt(value)} }`)).toEqual(
        all.filter((each) => each[field] === value),
      );
  });

  it('are the due items of one topic, from a moment to another, and an end before the start is refused', async () => {
    const nodes = async (ask: string): Promise<Data[]> => {
      const { dueAhead } = await manager.data(
        `{ dueAhead(first: 500, ${ask}) { totalCount edges { node { id topic expected } } } }`,
      );
      expect(dueAhead.totalCount).toBe(dueAhead.edges.length);
      return dueAhead.edges.map(({ node }: Data) => node);
    };
    const all = await nodes(`from: "2000-01-01T00:00Z", to: "2100-01-01T00:00Z"`);
    const [{ topic, expected }] = all as [Data];
    expect(await nodes(`from: "2000-01-01T00:00Z", to: "2100-01-01T00:00Z", filter: { topic: [${topic}] }`)).toEqual(
      all.filter((each) => each.topic === topic),
    );
    const later = all.filter((each) => each.expected > expected);
    expect(later.length).toBeLessThan(all.length);
    const [{ expected: second }] = later as [Data];
    expect(await nodes(`from: "${second}", to: "2100-01-01T00:00Z"`)).toEqual(later);
    expect(await manager.problem(`{ dueAhead(from: "${year}", to: "${now}") { totalCount } }`)).toMatchObject({
      code: 'BAD_INPUT',
      field: 'to',
    });
  });

  it('are the types of the catalogue with one function', async () => {
    const nodes = async (filter: string): Promise<Data[]> => {
      const { catalogue } = await manager.data(
        `{ catalogue(first: 500${filter}) { totalCount edges { node { id functions } } } }`,
      );
      expect(catalogue.totalCount).toBe(catalogue.edges.length);
      return catalogue.edges.map(({ node }: Data) => node);
    };
    const all = await nodes('');
    const some = all.filter(({ functions }) => functions.includes('gnss'));
    expect(some.length).toBeGreaterThan(0);
    expect(some.length).toBeLessThan(all.length);
    expect(await nodes(', filter: { function: "gnss" }')).toEqual(some);
    expect(await nodes(', filter: { function: "no such function" }')).toEqual([]);
  });

  it('is not a number of weeks beyond what is kept', async () => {
    const weeks = 'query ($back: Int, $ahead: Int) { openFindings(weeksBack: $back, weeksAhead: $ahead) { week } }';
    expect(await manager.problem(weeks, { back: 1000 })).toMatchObject({ code: 'BAD_INPUT', field: 'weeksBack' });
    expect(await manager.problem(weeks, { ahead: -1 })).toMatchObject({ code: 'BAD_INPUT', field: 'weeksAhead' });
  });
});

describe('databases', () => {
  it('stand at the moment asked for as their own dates say', async () => {
    const rows = async (at: string): Promise<Data[]> =>
      (
        await manager.data(
          `{ databaseCurrency(at: "${at}", first: 500) { edges { node { unitId database state loaded { effective expires } next { effective } } } } }`,
        )
      ).databaseCurrency.edges.map(({ node }: Data) => node);
    for (const at of [now, year])
      for (const { state, loaded } of await rows(at)) {
        const dates = [loaded?.effective ?? null, loaded?.expires ?? null] as const;
        if (dates[0] !== null && dates[0] > at) expect(state).toBe('NOT_YET');
        else if (dates[1] === null) expect(state).toBe('CANNOT_TELL');
        else if (dates[1] <= at) expect(state).toBe('EXPIRED');
        else expect(state).toBe(dates[0] === null ? 'CANNOT_TELL' : 'CURRENT');
      }
    const states = async (at: string) => new Set((await rows(at)).map(({ state }) => state));
    expect(await states(now)).toContain('CURRENT');
    expect(await states(year)).not.toContain('CURRENT');
  });
});

describe('an aircraft', () => {
  it('says of each finding why, in the words of the finding, and nothing under a key that is none', async () => {
    const { aircraft } = await manager.data(
      `{ aircraft(id: "${aircraftId}") { findings(at: "${now}") { key text outcome } none: reason(key: "no-rule|at-all") { text } } }`,
    );
    expect(aircraft.none).toBeNull();
    expect(aircraft.findings.length).toBeGreaterThan(0);
    for (const { key, text, outcome } of aircraft.findings.slice(0, 10)) {
      const { aircraft: one } = await manager.data(
        'query ($id: ID!, $key: String!, $at: Instant) { aircraft(id: $id) { reason(key: $key, at: $at) { text outcome asks clause remedies { kind } } } }',
        { id: aircraftId, key, at: now },
      );
      expect(one.reason).toMatchObject({ text, outcome });
      expect(one.reason.clause).toMatchObject({ outcome: expect.any(String) as string });
    }
  });

  it('whose yes ends on a day names what is open on that day, in the words of then', async () => {
    const { readyBoard } = await manager.data(
      `{ readyBoard(at: "${now}", first: 50) { edges { node { aircraft { id } verdicts { ready changesAt because { key text } } } } } }`,
    );
    let told = 0;
    for (const { node } of readyBoard.edges) {
      const ends = (node.verdicts as Data[]).filter(({ ready, changesAt }) => ready === 'YES' && changesAt !== null);
      for (const { changesAt, because } of ends) {
        const { aircraft } = await manager.data(
          'query ($id: ID!, $at: Instant) { aircraft(id: $id) { findings(at: $at) { key text } } }',
          { id: node.aircraft.id, at: changesAt },
        );
        const then = new Map((aircraft.findings as Data[]).map(({ key, text }) => [key, text]));
        for (const { key, text } of because as Data[]) expect({ key, text }).toEqual({ key, text: then.get(key) });
        told += because.length;
      }
    }
    expect(told).toBeGreaterThan(20);
  });

  it('has a line of the coming year for each profile, without a gap, that begins with what holds now', async () => {
    const { aircraft } = await manager.data(
      `{ aircraft(id: "${aircraftId}") { verdicts { ready standing profile { id } } } }`,
    );
    for (const { ready, standing, profile } of aircraft.verdicts) {
      const { aircraft: one } = await manager.data(
        'query ($id: ID!, $profile: ID!) { aircraft(id: $id) { line(profile: $profile) { from to ready standing because { text } endsBecause { text } } } }',
        { id: aircraftId, profile: profile.id },
      );
      expect(one.line[0]).toMatchObject({ ready, standing });
      for (const [n, each] of one.line.entries()) {
        expect(each.from < each.to).toBe(true);
        if (n > 0) expect(each.from).toBe(one.line[n - 1].to);
        for (const { text } of [...each.because, ...each.endsBecause]) expect(text).toMatch(/\w/);
      }
      expect(one.line.at(-1).to.slice(0, 10)).toBe(
        new Date(Date.UTC(new Date().getUTCFullYear() + 1, new Date().getUTCMonth(), new Date().getUTCDate()))
          .toISOString()
          .slice(0, 10),
      );
    }
  });
});
