import type pg from 'pg';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { password } from './cast.js';
import { Client } from './client.js';
import { founded } from './founded.js';
import { Gate } from './gate.js';
import { asOwner, ownerUrl } from './owner.js';
import { Server } from './server.js';

/** Two processes that serve on one database. */
let first: Server;
let second: Server;
let owner: pg.Client;
let someone: (name: string) => Client;

beforeAll(async () => {
  first = await Server.start({ WORKER: 'off' });
  second = await Server.beside(first, { WORKER: 'off' });
  owner = await asOwner(first);
  someone = await founded(first);
});
beforeEach(() => owner.query('delete from sign_in_failures'));
afterAll(async () => {
  await owner.end();
  await second.stop();
  await first.remove();
});

const right = (server: Server, email: string) => tried(server, email, password);
async function tried(server: Server, email: string, typed: string): Promise<string> {
  const { errors } = await new Client(server.url).signIn(email, typed);
  return errors?.[0]?.extensions.code ?? 'in';
}
const minutesGoBy = (minutes: number) =>
  owner.query(`update sign_in_failures set failed_at = failed_at - $1 * interval '1 minute'`, [minutes]);

describe('guesses of a password', () => {
  it('are counted together by two processes, five for one account from one address, also after one of them starts again', async () => {
    const email = 'auditor@one.example';
    const codes: string[] = [];
    for (const server of [first, second, first, second, first]) codes.push(await tried(server, email, 'a guess'));
    expect(codes).toEqual(Array<string>(5).fill('SIGN_IN_FAILED'));
    expect([await right(first, email), await right(second, email)]).toEqual(['TOO_MANY', 'TOO_MANY']);
    await second.stop();
    await second.restart();
    expect(await right(second, email)).toBe('TOO_MANY');
    expect(await right(second, 'manager@one.example')).toBe('in');
  });

  it.each([
    [13, 'TOO_MANY'],
    [16, 'in'],
  ])('that are %i minutes old leave the right password %s', async (minutes, expected) => {
    const email = 'technician@one.example';
    for (let guess = 0; guess < 5; guess += 1) await tried(first, email, 'a guess');
    await minutesGoBy(minutes);
    const { errors } = await new Client(second.url).signIn(email, password);
    expect(errors?.[0]?.extensions.code ?? 'in').toBe(expected);
    // What is left of fifteen minutes, less what this test took.
    if (errors) expect(errors[0]?.extensions['retryAfterSeconds']).toBeLessThanOrEqual((15 - minutes) * 60);
    if (errors) expect(errors[0]?.extensions['retryAfterSeconds']).toBeGreaterThan(0);
  });

  it('are forgotten for that account and address with the right password, and go on counting for the address', async () => {
    const email = 'technician@one.example';
    for (let guess = 0; guess < 4; guess += 1) await tried(first, email, 'a guess');
    expect(await right(second, email)).toBe('in');
    for (let guess = 0; guess < 4; guess += 1) await tried(second, email, 'a guess');
    expect(await right(first, email)).toBe('in');
    const { rows } = await owner.query<{ n: number }>(
      'select count(*)::int as n from sign_in_failures group by key order by n',
    );
    expect(rows.map(({ n }) => n)).toEqual([8, 8]);
  });

  it('of many accounts from one address are stopped at the forty-first', async () => {
    const codes: string[] = [];
    for (let guess = 0; guess < 41; guess += 1)
      codes.push(await tried(guess % 2 === 0 ? first : second, `nobody-${guess}@one.example`, 'a guess'));
    expect(codes).toEqual([...Array<string>(40).fill('SIGN_IN_FAILED'), 'TOO_MANY']);
  });

  it('sent all at once do not let the right one in that was on its way when the fifth failed', async () => {
    const email = 'auditor@one.example';
    for (let guess = 0; guess < 5; guess += 1) await tried(first, email, 'a guess');
    await owner.query('create temp table guesses as table sign_in_failures; delete from sign_in_failures');
    await owner.query('begin; lock table members in access exclusive mode');
    const coming = right(second, email);
    const waiting = async () => (await owner.query('select 1 from pg_locks where not granted')).rowCount;
    await expect.poll(waiting, { timeout: 10_000, interval: 20 }).toBe(1);
    await owner.query('insert into sign_in_failures table guesses; commit');
    expect(await coming).toBe('TOO_MANY');
  });

  it('of the own password by somebody signed in are counted by all processes too', async () => {
    const change = 'mutation ($input: MyPasswordInput!) { changeMyPassword(input: $input) }';
    const input = { current: 'a guess', next: 'copper-and-canvas' };
    const here = someone('manager@two');
    const there = new Client(second.url);
    there.cookie = here.cookie;
    const codes: string[] = [];
    for (const client of [here, there, here, there, here, there])
      codes.push((await client.problem(change, { input })).code);
    expect(codes).toEqual([...Array<string>(5).fill('BAD_INPUT'), 'TOO_MANY']);
  });
});

describe('what is kept of them', () => {
  it('is hashed, and what is older than a quarter of an hour goes with the next', async () => {
    await tried(first, 'nobody@one.example', 'a guess');
    await minutesGoBy(16);
    await tried(second, 'auditor@one.example', 'a guess');
    const { rows } = await owner.query<{ key: string; old: boolean }>(
      `select key, failed_at < now() - interval '10 minutes' as old from sign_in_failures`,
    );
    expect(rows.map(({ old }) => old)).toEqual([false, false, false]);
    for (const { key } of rows) expect(key).toMatch(/^[0-9a-f]{64}$/);
  });

  it.each(['select * from sign_in_failures', 'delete from sign_in_failures'])(
    'is closed to the application: %s',
    async (statement) => {
      await owner.query('begin; set local role tallywing_app');
      await expect(owner.query(statement)).rejects.toMatchObject({ code: '42501' });
      await owner.query('rollback');
    },
  );
});

describe('while the database does not answer', () => {
  it('nobody comes in, and afterwards what failed before still counts', { timeout: 120_000 }, async () => {
    const direct = ownerUrl(first);
    const gate = await Gate.before(Number(direct.port));
    direct.port = String(gate.port);
    const third = await Server.beside(first, { DATABASE_URL: direct.href, WORKER: 'off' });
    try {
      const email = 'auditor@one.example';
      for (let guess = 0; guess < 5; guess += 1) await tried(third, email, 'a guess');
      gate.shut();
      expect(await right(third, 'manager@one.example')).toBe('UNAVAILABLE');
      expect(await right(third, email)).toBe('UNAVAILABLE');
      gate.reopen();
      expect(await right(third, email)).toBe('TOO_MANY');
      expect(await right(third, 'manager@one.example')).toBe('in');
    } finally {
      await third.stop();
      await gate.remove();
    }
  });

  it('also when only the count of failures cannot be read or written', async () => {
    await owner.query('alter table sign_in_failures rename to elsewhere');
    try {
      expect(await right(first, 'manager@one.example')).toBe('INTERNAL');
    } finally {
      await owner.query('alter table elsewhere rename to sign_in_failures');
    }
    expect(await right(first, 'manager@one.example')).toBe('in');
  });
});
