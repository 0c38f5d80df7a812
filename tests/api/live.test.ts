import { once } from 'node:events';
import type { Client as Owner } from 'pg';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import WebSocket from 'ws';
import { add, daysAgo, defineMeter, founding, password, readMeter } from './cast.js';
import { Client } from './client.js';
import { Gate } from './gate.js';
import { asOwner, ownerUrl } from './owner.js';
import { Server } from './server.js';
import { Subscriber } from './subscriber.js';

/** Far above what it takes, so that a busy machine fails nothing; what it took is printed. */
const SOON = { timeout: 5000, interval: 10 };
const listeners = `application_name = 'tallywing listener'`;

let first: Server;
let second: Server;
let owner: Owner;
const open: Subscriber[] = [];

beforeAll(async () => {
  // What is told here is what people do: a worker would add what the calendar does.
  first = await Server.start({ WORKER: 'off' });
  for (const each of Object.values(founding)) {
    const { code, output } = await first.run('house/found-cli.js', JSON.stringify(each));
    if (code !== 0) throw new Error(output);
  }
  second = await Server.beside(first, { WORKER: 'off' });
  owner = await asOwner(first);
});
afterEach(async () => {
  await Promise.all(open.splice(0).map((each) => each.leave()));
});
afterAll(async () => {
  await owner.end();
  await second.stop();
  await first.remove();
});

async function signedIn(server: Server, email = 'technician@one.example'): Promise<Client> {
  const client = new Client(server.url);
  const answer = await client.signIn(email, password);
  expect(answer.errors).toBeUndefined();
  return client;
}

/** Subscribes at a process and waits for the counter as it stands. */
async function subscribed(server: Server, { cookie }: Client): Promise<Subscriber> {
  const board = subscribe(server, { cookie });
  await expect.poll(() => board.counters.length, SOON).toBe(1);
  return board;
}

function subscribe(server: Server, headers: Readonly<Record<string, string>>, query?: string): Subscriber {
  const board = new Subscriber(server.url, headers, query);
  open.push(board);
  return board;
}

let made = 0;

/** A new aircraft with one reading; gives its id. */
async function addOne(client: Client): Promise<string> {
  made += 1;
  const id = `live-${made}`;
  const work = [add(`TW-L${made}Q`), defineMeter(), readMeter(100_000, `${daysAgo(2)}T12:00Z`)];
  const answer = await client.record(id, 0, work);
  expect(answer.errors).toBeUndefined();
  return id;
}

/** Waits until a board was told of a counter, and says how long it took since `from`. */
async function told(board: Subscriber, counter: number, from: number, what: string): Promise<number> {
  await expect.poll(() => board.latest, SOON).toBe(counter);
  const took = Math.round((board.heardAt[board.counters.indexOf(counter)] ?? 0) - from);
  console.log(`${what}: ${took} ms after the work was answered`);
  return took;
}

/** The status with which the server answers the wish to open a socket. */
async function handshake(
  headers: Readonly<Record<string, string>>,
  path = '/graphql',
  server = first,
): Promise<number> {
  const socket = new WebSocket(`${server.url.replace('http', 'ws')}${path}`, 'graphql-transport-ws', { headers });
  return await new Promise((done, fail) => {
    socket.once('open', () => {
      socket.terminate();
      done(101);
    });
    socket.once('unexpected-response', (_request, response) => done(response.statusCode ?? 0));
    socket.once('error', fail);
  });
}

describe('a board that is open', () => {
  it('is told of work that was recorded at another process, with the counter that the organisation then has', async () => {
    const here = await signedIn(first);
    const board = await subscribed(second, await signedIn(second, 'north@one.example'));
    for (let times = 1; times <= 3; times += 1) {
      const before = board.latest;
      await addOne(here);
      const took = await told(board, before + 1, performance.now(), 'told by the other process');
      expect(took).toBeLessThan(SOON.timeout);
    }
    const { viewer } = await here.data('{ viewer { organisation { counter } } }');
    expect(viewer.organisation.counter).toBe(board.latest);
  });

  it('is told of a plan that somebody keeps, and not of work that was refused or only looked at', async () => {
    const here = await signedIn(first);
    const id = await addOne(here);
    const board = await subscribed(first, here);
    const before = board.latest;
    const refused = await here.record(id, 3, [readMeter(1, `${daysAgo(1)}T12:00Z`)]);
    expect(refused.errors?.[0]?.extensions.code).toBe('REFUSED');
    await here.data('{ readyBoard { totalCount } findings { totalCount } }');
    await here.data(`mutation { createJob(input: { aircraftId: "${id}", title: "Look at the tachometer" }) { id } }`);
    await told(board, before + 1, performance.now(), 'told of a plan');
    expect(board.counters).toEqual([before, before + 1]);
  });

  it('never hears of another organisation', async () => {
    const [one, two] = [await signedIn(first), await signedIn(first, 'technician@two.example')];
    const [ours, theirs] = [await subscribed(second, one), await subscribed(second, two)];
    const [before, theirBefore] = [ours.latest, theirs.latest];
    for (let times = 0; times < 3; times += 1) await addOne(two);
    await expect.poll(() => theirs.latest, SOON).toBe(theirBefore + 3);
    await addOne(one);
    await expect.poll(() => ours.latest, SOON).toBe(before + 1);
    expect(ours.counters).toEqual([before, before + 1]);
    expect(theirs.latest).toBe(theirBefore + 3);
  });

  it('is told once of many pieces of work in one moment', async () => {
    const here = await signedIn(first);
    const ids = await Promise.all(Array.from({ length: 6 }, () => addOne(here)));
    const board = await subscribed(second, here);
    const before = board.latest;
    const at = `${daysAgo(1)}T12:00Z`;
    const payloads: (string | undefined)[] = [];
    const hear = ({ payload }: { payload?: string | undefined }) => payloads.push(payload);
    owner.on('notification', hear);
    await owner.query('listen tallywing_house');
    const answers = await Promise.all(ids.map((id) => here.record(id, 3, [readMeter(100_100, at)])));
    expect(answers.every((answer) => answer.errors === undefined)).toBe(true);
    await expect.poll(() => board.latest, SOON).toBe(before + ids.length);
    expect(board.counters.length).toBeLessThanOrEqual(1 + ids.length);
    // Between the processes travel the house and the ids of requests, and nothing of what happened in it.
    await expect.poll(() => payloads.length, SOON).toBeGreaterThan(0);
    await owner.query('unlisten tallywing_house');
    owner.off('notification', hear);
    for (const payload of payloads) expect(payload).toMatch(/^shop-one [0-9a-f-]{13}(,[0-9a-f-]{13})*$/);
    expect(payloads.length).toBeLessThan(ids.length);
  });
});

describe('a session that ends', () => {
  it.each([
    ['signed out', (client: Client) => client.data('mutation { signOut }')],
    ['revoked', () => owner.query('update sessions set revoked_at = now() where revoked_at is null')],
    ['expired', () => owner.query(`update sessions set expires_at = now() - interval '1 second'`)],
    ['a member who may no longer sign in', () => member('second', { active: false })],
    ['a role that may read nothing', () => member('second', { role: 'none' })],
  ])('closes its boards at every process, and nothing more is told: %s', async (_how, end) => {
    const colleague = await signedIn(first, 'second@one.example');
    const boards = [await subscribed(first, colleague), await subscribed(second, colleague)];
    await end(colleague);
    for (const board of boards)
      await expect.poll(() => board.closings, SOON).toEqual([{ code: 4401, reason: 'Signed out' }]);
    const heard = boards.map((board) => board.counters.length);
    await member('second', { active: true, role: 'technician' });
    const other = await signedIn(first);
    const witness = await subscribed(second, other);
    const before = witness.latest;
    await addOne(other);
    await expect.poll(() => witness.latest, SOON).toBe(before + 1);
    expect(boards.map((board) => board.counters.length)).toEqual(heard);
  });

  async function member(id: string, { active = true, role = 'technician' }): Promise<void> {
    await owner.query(`update members set active = $2, role = $3 where organisation_id = 'shop-one' and id = $1`, [
      id,
      active,
      role,
    ]);
  }
});

describe('a connection that is not let in', () => {
  it('without a session', async () => {
    for (const cookie of ['', 'tallywing_session=nobody']) {
      const board = subscribe(first, { cookie });
      await expect.poll(() => board.closings, SOON).toEqual([{ code: 4401, reason: 'Signed out' }]);
      expect(board.counters).toEqual([]);
    }
  });

  it('with a role that may read nothing, and the process goes on', async () => {
    const { cookie } = await signedIn(first, 'second@one.example');
    await owner.query(`update members set role = 'none' where id = 'second'`);
    const board = subscribe(first, { cookie });
    await expect.poll(() => board.closings, SOON).toEqual([{ code: 4401, reason: 'Signed out' }]);
    await owner.query(`update members set role = 'technician' where id = 'second'`);
    expect((await fetch(`${first.url}/health/live`)).status).toBe(200);
  });

  it('from a page of somebody else, with the cookie of somebody signed in', async () => {
    const { cookie } = await signedIn(first);
    expect(await handshake({ cookie, origin: 'https://elsewhere.example' })).toBe(403);
    expect(await handshake({ cookie, origin: 'null' })).toBe(403);
    expect(await handshake({ cookie, origin: first.url })).toBe(101);
    expect(await handshake({ cookie }, '/elsewhere')).toBe(404);
  });

  it('beyond what one session may open', async () => {
    const { cookie } = await signedIn(first);
    const sockets = await Promise.all(
      Array.from({ length: 25 }, async () => {
        const socket = new WebSocket(`${first.url.replace('http', 'ws')}/graphql`, 'graphql-transport-ws', {
          headers: { cookie },
        });
        await once(socket, 'open');
        return socket;
      }),
    );
    await expect.poll(() => sockets.filter((socket) => socket.readyState === WebSocket.CLOSED).length, SOON).toBe(1);
    for (const socket of sockets) socket.terminate();
  });
});

describe('what may be sent over the socket', () => {
  const aliases = Array.from({ length: 13 }, (_, n) => `a${n}: houseChanged { counter }`).join(' ');
  it.each([
    ['a query', '{ readyBoard { totalCount } }', /Only subscriptions/],
    ['a mutation', 'mutation { signOut }', /Only subscriptions/],
    ['two fields at once', 'subscription { houseChanged { counter } b: houseChanged { counter } }', /only one/i],
    ['one field under many names', `subscription { ${aliases} }`, /more than 12 times/],
    ['many fields', `subscription { houseChanged { ${'counter '.repeat(1501)} } }`, /more than 1500 fields/],
    ['a deep one', `subscription { houseChanged { counter } } query Deep ${nested(17)}`, /more than 16 levels/],
    ['what the schema does not have', 'subscription { houseChanged { secrets } }', /Cannot query field/],
    ['no GraphQL', 'subscription {', /Syntax Error/],
  ])('is not %s', async (_what, query, words) => {
    const board = subscribe(first, { cookie: (await signedIn(first)).cookie }, query);
    await expect.poll(() => board.problems.length, SOON).toBeGreaterThan(0);
    const [problem] = board.problems as { message: string; extensions: { code: string; wayOut: string } }[];
    expect(board.problems.map((each) => (each as { message: string }).message).join('\n')).toMatch(words);
    expect(problem?.extensions.code).toBe('BAD_INPUT');
    expect(problem?.extensions.wayOut).toBeTruthy();
    expect(board.counters).toEqual([]);
  });

  it('is not much at once: the socket is closed', async () => {
    const board = subscribe(
      first,
      { cookie: (await signedIn(first)).cookie },
      `#${'x'.repeat(20_000)}\n{ viewer { id } }`,
    );
    await expect.poll(() => board.closings.map(({ code }) => code), SOON).toEqual([1009]);
    expect(board.counters).toEqual([]);
  });

  it('beyond four subscriptions on one connection', async () => {
    const socket = new WebSocket(`${first.url.replace('http', 'ws')}/graphql`, 'graphql-transport-ws', {
      headers: { cookie: (await signedIn(first)).cookie },
    });
    const heard: { readonly type: string; readonly id?: string; readonly payload?: unknown }[] = [];
    socket.on('message', (raw: Buffer) => heard.push(JSON.parse(raw.toString('utf8')) as (typeof heard)[number]));
    await once(socket, 'open');
    const send = (message: object) => socket.send(JSON.stringify(message));
    send({ type: 'connection_init' });
    await expect.poll(() => heard.map(({ type }) => type), SOON).toContain('connection_ack');
    for (const id of ['1', '2', '3', '4', '5'])
      send({ type: 'subscribe', id, payload: { query: 'subscription { houseChanged { counter } }' } });
    await expect
      .poll(() => heard.filter(({ type }) => type === 'error'), SOON)
      .toMatchObject([{ id: '5', payload: [{ message: 'One connection carries 4 subscriptions.' }] }]);
    await expect
      .poll(() => new Set(heard.filter(({ type }) => type === 'next').map(({ id }) => id)).size, SOON)
      .toBe(4);
    socket.terminate();
  });

  it('a subscription by POST is refused and told where it goes', async () => {
    const answer = await (await signedIn(first)).ask('subscription { houseChanged { counter } }');
    expect(answer.data?.houseChanged).toBeUndefined();
    expect(answer.errors?.[0]?.extensions).toMatchObject({
      code: 'BAD_INPUT',
      wayOut: expect.stringMatching(/web socket/),
    });
  });

  function nested(levels: number): string {
    return `${'{ viewer '.repeat(levels - 1)}{ id }${' }'.repeat(levels - 1)}`;
  }
});

describe('when something breaks', () => {
  const listening = async () => (await owner.query(`select 1 from pg_stat_activity where ${listeners}`)).rowCount;

  it('work is noticed although the listening connections were ended, and they come back by themselves', async () => {
    const here = await signedIn(first);
    const board = await subscribed(second, here);
    const before = board.latest;
    const ended = await owner.query(`select pg_terminate_backend(pid) from pg_stat_activity where ${listeners}`);
    expect(ended.rowCount).toBe(2);
    await addOne(here);
    await told(board, before + 1, performance.now(), 'noticed after the listening connections were ended');
    await expect.poll(listening, { timeout: 30_000, interval: 50 }).toBe(2);
    await addOne(here);
    await told(board, before + 2, performance.now(), 'told after listening came back');
  });

  it('the net notices work at a process that cannot listen at all', { timeout: 120_000 }, async () => {
    const here = await signedIn(first);
    const direct = ownerUrl(first);
    const gate = await Gate.before(Number(direct.port));
    const DATABASE_URL = direct.href;
    direct.port = String(gate.port);
    const third = await Server.beside(first, { DATABASE_URL, DATABASE_DIRECT_URL: direct.href, WORKER: 'off' });
    try {
      const board = await subscribed(third, here);
      await expect.poll(() => gate.passing, SOON).toBe(1);
      gate.shut();
      await expect.poll(listening, SOON).toBe(2);
      for (let times = 0; times < 3; times += 1) {
        const before = board.latest;
        await addOne(here);
        await told(board, before + 1, performance.now(), 'noticed by the net');
      }
      expect(gate.passing).toBe(0);
      gate.reopen();
      await expect.poll(listening, { timeout: 30_000, interval: 50 }).toBe(3);
    } finally {
      await third.stop();
      await gate.remove();
    }
  });

  it(
    'a board is not left to believe in a database that does not answer, and nobody new is let in',
    { timeout: 120_000 },
    async () => {
      const here = await signedIn(first);
      const direct = ownerUrl(first);
      const gate = await Gate.before(Number(direct.port));
      direct.port = String(gate.port);
      const third = await Server.beside(first, { DATABASE_URL: direct.href, WORKER: 'off' });
      try {
        const board = await subscribed(third, here);
        gate.shut();
        await expect
          .poll(() => board.closings, { timeout: 30_000, interval: 50 })
          .toEqual([{ code: 1013, reason: 'Try again later' }]);
        expect(await handshake({ cookie: here.cookie }, '/graphql', third)).toBe(503);
        gate.reopen();
        const again = await subscribed(third, here);
        await addOne(here);
        await expect.poll(() => again.latest, SOON).toBe(board.latest + 1);
      } finally {
        await third.stop();
        await gate.remove();
      }
    },
  );

  it('a process that stops says so, and the board comes back with what it missed', async () => {
    const here = await signedIn(first);
    const third = await Server.beside(first, { WORKER: 'off' });
    const board = new Subscriber(third.url, { cookie: here.cookie }, undefined, true);
    open.push(board);
    await expect.poll(() => board.counters.length, SOON).toBe(1);
    const before = board.latest;
    await third.stop();
    await expect.poll(() => board.closings[0]?.code, SOON).toBe(1001);
    await addOne(here);
    await third.restart();
    await expect.poll(() => board.latest, { timeout: 30_000, interval: 50 }).toBe(before + 1);
    await third.stop();
  });
});
