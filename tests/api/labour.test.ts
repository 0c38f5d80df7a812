import { beforeAll, describe, expect, it } from 'vitest';
import { add, daysAgo, flyable, hold } from './cast.js';
import type { Client, Data } from './client.js';
import { as } from './people.js';

const table =
  'version setBy hourly currency jobs { job hours { low typical high } parts own usual { typical } usualStatus }';
const labour = `{ labour { ${table} } }`;
const set = `mutation ($input: SetLabourInput!) { setLabour(input: $input) { ${table} } }`;
const vorCheck = { job: 'vor-check', low: 0.2, typical: 0.4, high: 1, parts: null };
const liftHold = { job: 'lift-hold', low: 1, typical: 2, high: 4, parts: 10 };

let manager: Client;
beforeAll(async () => {
  manager = await as('manager@one.example');
});
const version = async (client = manager): Promise<number> => (await client.data(labour)).labour.version as number;
const rowOf = ({ jobs }: Data, job: string): Data => jobs.find((each: Data) => each.job === job);

describe('hours and prices of a house', () => {
  it('start as the usual ones', async () => {
    const stranger = await as('manager@two.example');
    const { labour: found }: Data = await stranger.data(labour);
    expect(found).toMatchObject({ version: 0, setBy: null, hourly: null, currency: null });
    expect(rowOf(found, 'transponder-test')).toEqual({
      job: 'transponder-test',
      hours: { low: 0.8, typical: 1.5, high: 2 },
      parts: null,
      own: false,
      usual: { typical: 1.5 },
      usualStatus: 'common-practice',
    });
  });

  it('take the place of the usual ones, job by job, and of nobody else’s', async () => {
    const input = { expectedVersion: await version(), hourly: 95.5, currency: 'Kr', jobs: [vorCheck] };
    const { setLabour }: Data = await manager.data(set, { input });
    expect(setLabour).toMatchObject({ version: input.expectedVersion + 1, setBy: 'Manager One', hourly: 95.5 });
    expect(rowOf(setLabour, 'vor-check')).toMatchObject({
      own: true,
      hours: { low: 0.2, typical: 0.4, high: 1 },
      usual: { typical: 0.2 },
    });
    expect(rowOf(setLabour, 'weigh')).toMatchObject({ own: false, hours: { typical: 3 } });
    expect(await version(await as('manager@two.example'))).toBe(0);
  });

  it('are what the way back reckons with, in money where an hour has a price', async () => {
    const technician = await as('technician@one.example');
    const started = await technician.record('labour-plane', 0, [add('TW-L01', { seats: 1 }), ...flyable()]);
    const { revision } = started.data.commitChanges;
    await technician.record('labour-plane', revision, [hold('squawk', `${daysAgo(1)}T00:00Z`, null)]);
    const ask = async (): Promise<Data> =>
      (
        await technician.data(
          `query ($id: ID!, $profile: ID!) { aircraft(id: $id) { wayBack(profile: $profile) { currency ways {
           money { typical } hours { typical } steps { job hours { typical } } } } } }`,
          { id: 'labour-plane', profile: 'vfr-cross-country' },
        )
      ).aircraft.wayBack;
    await manager.data(set, {
      input: { expectedVersion: await version(), hourly: 100, currency: 'Kr', jobs: [liftHold] },
    });
    expect(await ask()).toEqual({
      currency: 'Kr',
      ways: [
        {
          money: { typical: 210 },
          hours: { typical: 2 },
          steps: [{ job: 'lift-hold', hours: { typical: 2 } }],
        },
      ],
    });
    await manager.data(set, { input: { expectedVersion: await version(), jobs: [] } });
    expect(await ask()).toMatchObject({ currency: null, ways: [{ money: null, hours: { typical: 0.1 } }] });
  });

  it('two managers: the second is told, and loses nothing of the first', async () => {
    const expectedVersion = await version();
    await manager.data(set, { input: { expectedVersion, jobs: [vorCheck] } });
    expect(await manager.problem(set, { input: { expectedVersion, jobs: [] } })).toMatchObject({
      code: 'STALE_REVISION',
      revision: expectedVersion + 1,
      changedBy: 'Manager One',
    });
    expect(rowOf((await manager.data(labour)).labour, 'vor-check').own).toBe(true);
  });

  it('one of many at once wins', async () => {
    const expectedVersion = await version();
    const answers = await Promise.all(
      Array.from({ length: 8 }, () => manager.ask(set, { input: { expectedVersion, jobs: [vorCheck] } })),
    );
    expect(answers.filter((each) => each.errors === undefined)).toHaveLength(1);
    expect(await version()).toBe(expectedVersion + 1);
  });

  it.each([
    ['input.jobs.1.typical', { jobs: [vorCheck, { ...liftHold, typical: 5 }] }],
    ['input.jobs.0.low', { jobs: [{ ...vorCheck, low: -1 }] }],
    ['input.jobs.0.job', { jobs: [{ ...vorCheck, job: 'polish' }] }],
    ['input.jobs.1.job', { jobs: [vorCheck, vorCheck] }],
    ['input.currency', { hourly: 10, jobs: [] }],
    ['input.hourly', { hourly: 0, currency: 'Kr', jobs: [] }],
  ])('%s is named when it is wrong', async (field, wrong) => {
    const input = { expectedVersion: await version(), ...wrong };
    expect(await manager.problem(set, { input })).toMatchObject({ code: 'BAD_INPUT', field });
  });

  it('a technician reads and does not set; a dispatcher does neither', async () => {
    const technician = await as('technician@one.example');
    expect((await technician.data(labour)).labour.jobs.length).toBeGreaterThan(40);
    const input = { expectedVersion: 0, jobs: [] };
    expect(await technician.problem(set, { input })).toMatchObject({ code: 'FORBIDDEN' });
    expect(await (await as('dispatcher@one.example')).problem(labour)).toMatchObject({ code: 'FORBIDDEN' });
  });
});
