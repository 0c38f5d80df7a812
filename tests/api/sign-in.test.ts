import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { password } from './cast.js';
import { Client } from './client.js';
import { asOwner } from './owner.js';
import { as } from './people.js';
import { shared } from './shared.js';

const viewer = '{ viewer { id name role may organisation { id name } operator { id } } }';

describe('signing in', () => {
  it('sets a cookie that scripts cannot read and other sites cannot send', async () => {
    const response = await fetch(`${shared.url}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        query: `mutation { signIn(email: "manager@one.example", password: "${password}") { id } }`,
      }),
    });
    const [cookie = ''] = response.headers.getSetCookie();
    expect(cookie).toMatch(/^tallywing_session=[\w-]{43};/);
    expect(cookie).toContain('HttpOnly');
    expect(cookie).toContain('SameSite=Strict');
    expect(cookie).not.toContain('Secure');
  });

  it('tells who is signed in and what they may do', async () => {
    const technician = await as('technician@one.example');
    const data = await technician.data(viewer);
    expect(data.viewer).toMatchObject({
      name: 'Technician One',
      role: 'TECHNICIAN',
      organisation: { id: 'shop-one', name: 'Shop One' },
      operator: null,
    });
    expect(data.viewer.may).toContain('aircraft.record');
    expect(data.viewer.may).not.toContain('people.write');
    const north = await as('north@one.example');
    expect((await north.data(viewer)).viewer).toMatchObject({ role: 'DISPATCHER', operator: { id: 'north' } });
  });

  it('is nobody without a session', async () => {
    expect((await new Client(shared.url).data(viewer)).viewer).toBeNull();
    const forged = new Client(shared.url);
    forged.cookie = 'tallywing_session=aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa';
    expect((await forged.data(viewer)).viewer).toBeNull();
  });

  it('says the same for an unknown address and a wrong password', async () => {
    const client = new Client(shared.url);
    const unknown = await client.signIn('nobody@one.example', password);
    const wrong = await client.signIn('auditor@one.example', 'something else');
    expect(unknown.errors?.[0]?.extensions).toMatchObject({ code: 'SIGN_IN_FAILED', field: 'password' });
    expect(wrong.errors?.[0]?.message).toBe(unknown.errors?.[0]?.message);
    expect(client.cookie).toBe('');
  });

  it('slows down guessing for one account, and lets others in', async () => {
    const client = new Client(shared.url);
    const codes: (string | undefined)[] = [];
    for (let guess = 0; guess < 7; guess += 1) {
      codes.push((await client.signIn('second@one.example', `guess number ${guess}`)).errors?.[0]?.extensions.code);
    }
    expect(codes).toEqual([...Array<string>(5).fill('SIGN_IN_FAILED'), 'TOO_MANY', 'TOO_MANY']);
    const right = await client.signIn('second@one.example', password);
    expect(right.errors?.[0]?.extensions).toMatchObject({ code: 'TOO_MANY' });
    expect(right.errors?.[0]?.extensions['retryAfterSeconds']).toBeGreaterThan(60);
    expect((await client.signIn('manager@one.example', password)).errors).toBeUndefined();
  });

  it('ends with signing out, also for a copy of the cookie', async () => {
    const client = await as('manager@one.example');
    const copy = new Client(shared.url);
    copy.cookie = client.cookie;
    expect((await copy.data(viewer)).viewer).not.toBeNull();
    await client.data('mutation { signOut }');
    expect((await copy.data(viewer)).viewer).toBeNull();
  });

  it.each([
    ['in use again after four minutes: nothing is written', 4, 4, { seen: 4, lasts: 12 * 60 - 4 }],
    ['in use again after six minutes: twelve hours more', 6, 6, { seen: 0, lasts: 12 * 60 }],
    ['never longer than seven days after it began', 6, 7 * 24 * 60 - 60, { seen: 0, lasts: 60 }],
    ['unused for twelve hours and a minute: over', 12 * 60 + 1, 12 * 60 + 1, null],
  ])('%s', async (_, unusedMinutes, oldMinutes, expected) => {
    const client = await as('manager@one.example');
    const id = createHash('sha256')
      .update(/=([\w-]+)/.exec(client.cookie)?.[1] ?? '')
      .digest('hex');
    const owner = await asOwner(shared);
    const minutes = (each: string) => `${each} * interval '1 minute'`;
    try {
      const { rowCount } = await owner.query(
        `update sessions set created_at = now() - ${minutes('$2')}, last_seen_at = now() - ${minutes('$3')},
           expires_at = now() - ${minutes('$3')} + interval '12 hours' where id = $1`,
        [id, oldMinutes, unusedMinutes],
      );
      expect(rowCount).toBe(1);
      if (expected === null) {
        expect((await client.data(viewer)).viewer).toBeNull();
        return;
      }
      expect((await client.data(viewer)).viewer).not.toBeNull();
      const { rows } = await owner.query<{ seen: number; lasts: number }>(
        `select round(extract(epoch from now() - last_seen_at) / 60)::int as seen,
           round(extract(epoch from expires_at - now()) / 60)::int as lasts from sessions where id = $1`,
        [id],
      );
      expect(rows).toEqual([expected]);
    } finally {
      await owner.end();
    }
  });

  it('takes commands from its own pages only', async () => {
    const client = await as('manager@one.example');
    const foreign = await client.ask(viewer, {}, { origin: 'https://elsewhere.example' });
    expect(foreign).toMatchObject({ status: 403, errors: [{ extensions: { code: 'FORBIDDEN' } }] });
    expect((await client.ask(viewer, {}, { origin: shared.url })).status).toBe(200);
    const simple = await fetch(`${shared.url}/graphql?query=${encodeURIComponent(viewer)}`, {
      headers: { cookie: client.cookie },
    });
    expect(simple.status).toBe(400);
  });
});

describe('roles', () => {
  const asks = {
    board: '{ readyBoard(first: 1) { totalCount } }',
    people: '{ people { id } }',
    jobs: '{ jobs { id } }',
    rules: '{ ruleBook { id } }',
    record:
      'mutation { commitChanges(input: { aircraftId: "x", expectedRevision: 0, key: "12345678", changes: [{ holdLift: { holdId: "h", at: "2026-01-01T00:00Z", reason: "r" } }] }) { revision } }',
  };
  const expected: Record<string, Record<keyof typeof asks, string>> = {
    'manager@one.example': { board: 'none', people: 'none', jobs: 'none', rules: 'none', record: 'REFUSED' },
    'technician@one.example': { board: 'none', people: 'FORBIDDEN', jobs: 'none', rules: 'none', record: 'REFUSED' },
    'dispatcher@one.example': {
      board: 'none',
      people: 'FORBIDDEN',
      jobs: 'FORBIDDEN',
      rules: 'none',
      record: 'FORBIDDEN',
    },
    'auditor@one.example': { board: 'none', people: 'none', jobs: 'FORBIDDEN', rules: 'none', record: 'FORBIDDEN' },
    nobody: {
      board: 'SIGNED_OUT',
      people: 'SIGNED_OUT',
      jobs: 'SIGNED_OUT',
      rules: 'SIGNED_OUT',
      record: 'SIGNED_OUT',
    },
  };
  it.each(Object.entries(expected))('%s', async (email, codes) => {
    const client = await as(email === 'nobody' ? null : email);
    const found = Object.fromEntries(
      await Promise.all(
        Object.entries(asks).map(async ([name, query]) => [name, (await client.problem(query)).code] as const),
      ),
    );
    expect(found).toEqual(codes);
  });
});
