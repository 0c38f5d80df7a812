import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type pg from 'pg';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { add, daysAgo, defineMeter, founding, password, readMeter } from './cast.js';
import { Client } from './client.js';
import type { Data } from './client.js';
import { asOwner, ownerUrl } from './owner.js';
import { Server } from './server.js';
import { Subscriber } from './subscriber.js';

const TOKEN = 'a-token-for-whoever-watches';
let server: Server;
let client: Client;
let owner: pg.Client;
let revision = 0;

beforeAll(async () => {
  server = await Server.start({ METRICS_TOKEN: TOKEN });
  const { code, output } = await server.run('house/found-cli.js', JSON.stringify(founding.first));
  if (code !== 0) throw new Error(output);
  client = new Client(server.url);
  await client.signIn('technician@one.example', password);
  owner = await asOwner(server);
  const first = await client.record('op-plane', 0, [add('TW-OPS'), defineMeter()]);
  expect(first.errors).toBeUndefined();
  revision = 2;
});
afterAll(async () => {
  await owner.end().catch(() => undefined);
  await server.remove();
});

const ready = async (): Promise<{ status: number; body: Data }> => {
  const response = await fetch(`${server.url}/health/ready`);
  return { status: response.status, body: await response.json() };
};

/** The JSON lines that the server wrote, those of one request if asked. */
const lines = (id?: string): Data[] =>
  server.said
    .split('\n')
    .filter((line) => line.startsWith('{'))
    .map((line) => JSON.parse(line) as Data)
    .filter((line) => id === undefined || line.id === id || String(line.causes ?? '').includes(id));

describe('what is logged', () => {
  it('carries the id that somebody in front gave, through the work to the boards that were told', async () => {
    const id = 'front-door-0001';
    const board = new Subscriber(server.url, { cookie: client.cookie });
    await vi.waitFor(() => expect(board.latest).toBeGreaterThan(-1));
    const response = await fetch(`${server.url}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: client.cookie, 'x-request-id': id },
      body: JSON.stringify({
        query: 'mutation Reading($input: CommitChangesInput!) { commitChanges(input: $input) { revision } }',
        operationName: 'Reading',
        variables: {
          input: {
            aircraftId: 'op-plane',
            expectedRevision: revision,
            key: 'operation-reading-1',
            changes: [{ meterRead: { meter: 'tach', dial: 100_000, asOf: `${daysAgo(2)}T12:00Z`, by: 'Hangar log' } }],
          },
        },
      }),
    });
    expect(response.headers.get('x-request-id')).toBe(id);
    const answer = (await response.json()) as Data;
    expect(answer.errors).toBeUndefined();
    revision = answer.data.commitChanges.revision;
    await vi.waitFor(() =>
      expect(lines(id).map(({ message }) => message)).toEqual(expect.arrayContaining(['request', 'boards told'])),
    );
    expect(lines(id).find(({ message }) => message === 'request')).toMatchObject({
      level: 'info',
      operation: 'Reading',
      status: 200,
      organisation: 'shop-one',
      member: 'technician',
      recorded: ['op-plane 3'],
    });
    expect(lines(id).find(({ message }) => message === 'boards told')).toMatchObject({
      organisation: 'shop-one',
      boards: 1,
    });
    await board.leave();
  });

  it.each(['short', 'has space inside', 'x'.repeat(80), '"}\\n{"forged":1'])(
    'does not take %s for an id',
    async (given) => {
      const response = await fetch(`${server.url}/graphql`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-request-id': given },
        body: '{"query":"{ people { id } }"}',
      });
      const id = response.headers.get('x-request-id');
      expect(id).toMatch(/^[0-9a-f-]{13}$/);
      // What was answered can be found in the log by what the person was told.
      expect(((await response.json()) as Data).errors[0].extensions).toMatchObject({
        code: 'SIGNED_OUT',
        requestId: id,
      });
    },
  );

  it('never holds what people typed, who they are, or what lets them in', async () => {
    const secrets = [
      'wrong-guess-of-a-password',
      password,
      'technician@one.example',
      'nobody@one.example',
      'Technician One',
    ];
    const other = new Client(server.url);
    await other.signIn('technician@one.example', 'wrong-guess-of-a-password');
    await other.signIn('nobody@one.example', 'wrong-guess-of-a-password');
    await other.signIn('technician@one.example', password);
    await other.ask('{ viewer { name email } }');
    await other.ask('{ viewer { "Technician One" } }');
    await other.ask('mutation ($input: MyPasswordInput!) { changeMyPassword(input: $input) }', {
      input: { current: 'wrong-guess-of-a-password', next: 'wrong-guess-of-a-password' },
    });
    await fetch(`${server.url}/calendar/a-secret-of-a-calendar.ics`);
    const token = other.cookie.split('=')[1] ?? 'none';
    // Something that breaks inside, with a value in the database's own words.
    await owner.query(`alter table jobs add constraint no_such check (title <> 'Technician One secret title')`);
    const broken = await client.ask(
      'mutation { createJob(input: { aircraftId: "op-plane", title: "Technician One secret title" }) { id } }',
    );
    await owner.query('alter table jobs drop constraint no_such');
    expect(broken.errors?.[0]?.extensions.code).toBe('INTERNAL');
    const reference = String(broken.errors?.[0]?.extensions['reference']);
    await vi.waitFor(() => expect(lines(reference).map(({ message }) => message)).toContain('failure'));
    expect(lines(reference).find(({ message }) => message === 'failure')).toMatchObject({ code: '23514', reference });
    for (const secret of [...secrets, token, 'a-secret-of-a-calendar', 'secret title', '$argon2'])
      expect(server.said.includes(secret), secret).toBe(false);
  });
});

describe('figures', () => {
  it('count requests, work, problems, connections, boards and room, without naming anybody', async () => {
    const response = await fetch(`${server.url}/metrics`);
    expect(response.headers.get('content-type')).toMatch(/^text\/plain; version=0\.0\.4/);
    const text = await response.text();
    expect(text).toMatch(/^tallywing_http_request_seconds_count\{method="POST",route="graphql",status="200"\} [1-9]/m);
    expect(text).toMatch(/^tallywing_record_work_seconds_count\{outcome="recorded"\} 2$/m);
    expect(text).toMatch(/^tallywing_problems_total\{code="SIGNED_OUT"\} [1-9]/m);
    expect(text).toMatch(/^tallywing_problems_total\{code="SIGN_IN_FAILED"\} 2$/m);
    expect(text).toMatch(/^tallywing_database_connections\{state="waiting"\} 0$/m);
    expect(text).toMatch(/^tallywing_database_disk_free_bytes \d{6,}/m);
    expect(text).toMatch(/^tallywing_live_sockets \d+$/m);
    expect(text).not.toMatch(/shop-one|technician|op-plane|TW-OPS/);
  });

  it('count what waits in the queue, and what failed there before', async () => {
    // No worker knows this task, so that nobody takes it off.
    const task = 'a-task-of-nobody';
    await owner.query(`select tallywing_queue.add_job('${task}', job_key := key, run_at := at)
      from (values ('one', now()), ('two', now()), ('three', now() + interval '1 day')) as given (key, at)`);
    await owner.query(`update tallywing_queue._private_jobs set attempts = 3 where key = 'two'`);
    try {
      const text = await (await fetch(`${server.url}/metrics`)).text();
      expect(Number(/^tallywing_queue_jobs\{state="waiting"\} (\d+)$/m.exec(text)?.[1])).toBeGreaterThanOrEqual(2);
      expect(text).toMatch(/^tallywing_queue_jobs\{state="failing"\} 1$/m);
    } finally {
      await owner.query(`select tallywing_queue.remove_job(key) from unnest(array['one', 'two', 'three']) as key`);
    }
  });

  it('are for this computer, or for whoever has the token', async () => {
    const ask = async (headers: Record<string, string>): Promise<number> =>
      (await fetch(`${server.url}/metrics`, { headers })).status;
    expect(await ask({ 'x-forwarded-for': '192.0.2.7' })).toBe(403);
    expect(await ask({ 'x-forwarded-for': '192.0.2.7', authorization: `Bearer ${TOKEN}` })).toBe(200);
    expect(await ask({ authorization: 'Bearer another' })).toBe(403);
  });
});

describe('health', () => {
  it('is ready while all is well', async () => {
    const { status, body } = await ready();
    expect(status).toBe(200);
    expect(body.status).toBe('ready');
  });

  const broken: [string, string, string, RegExp][] = [
    [
      'a role that bypasses row policies',
      'alter role tallywing_app bypassrls',
      'alter role tallywing_app nobypassrls',
      /the application role may bypass row policies/,
    ],
    [
      'a table whose policy is not forced',
      'alter table aircraft no force row level security',
      'alter table aircraft force row level security',
      /table aircraft has no forced row policy/,
    ],
    [
      'a migration that is missing',
      `update _prisma_migrations set rolled_back_at = now() where migration_name = '20261128000000_audit'`,
      `update _prisma_migrations set rolled_back_at = null where migration_name = '20261128000000_audit'`,
      /the migration 20261128000000_audit is missing from the database/,
    ],
    [
      'tables newer than the software',
      `insert into _prisma_migrations (id, checksum, migration_name, finished_at) values ('x', 'x', '29991231000000_later', now())`,
      `delete from _prisma_migrations where id = 'x'`,
      /the database is newer than this software: 29991231000000_later/,
    ],
  ];
  it.each(broken)('names %s, until it is mended', async (_, breaking, mending, says) => {
    await owner.query(breaking);
    try {
      const { status, body } = await ready();
      expect(status).toBe(503);
      expect(body.status).toBe('not ready');
      expect(body.because.join('; ')).toMatch(says);
      expect((await fetch(`${server.url}/health/live`)).status).toBe(200);
    } finally {
      await owner.query(mending);
    }
    expect((await ready()).status).toBe(200);
  });

  it('is not served by software that is older than the tables', async () => {
    await owner.query(
      `insert into _prisma_migrations (id, checksum, migration_name, finished_at) values ('x', 'x', '29991231000000_later', now())`,
    );
    try {
      const { code, output } = await server.run('aircraft/rebuild-cli.js');
      expect(code).toBe(2);
      expect(output).toMatch(
        /newer than this software: it has 29991231000000_later\. Start the newer version, or restore/,
      );
    } finally {
      await owner.query(`delete from _prisma_migrations where id = 'x'`);
    }
  });

  it('is not served while a role could see every organisation', async () => {
    await owner.query('alter role tallywing_app bypassrls');
    try {
      const { code, output } = await server.run('aircraft/rebuild-cli.js');
      expect(code).toBe(2);
      expect(output).toContain('The database does not keep organisations apart: the application role may bypass');
    } finally {
      await owner.query('alter role tallywing_app nobypassrls');
    }
  });

  it('says that there is no room, keeps nothing of the work, and takes it once there is', async () => {
    await owner.query(`create function no_room() returns trigger language plpgsql as $$ begin
        raise exception 'could not extend file "base/1/2": No space left on device' using errcode = '53100'; end $$;
      create trigger no_room before insert on changes for each row execute function no_room()`);
    const key = 'operation-no-room';
    const work = [readMeter(100_050, `${daysAgo(2)}T13:00Z`)];
    const refused = await client.record('op-plane', revision, work, key);
    await owner.query('drop trigger no_room on changes; drop function no_room');
    expect(refused.errors?.[0]).toMatchObject({
      message: 'The disk of the database is full.',
      extensions: {
        code: 'UNAVAILABLE',
        wayOut: expect.stringMatching(/^Nothing was changed\. Tell whoever runs/) as string,
      },
    });
    const before = await client.data('{ aircraft(id: "op-plane") { revision } }');
    expect(before.aircraft.revision).toBe(revision);
    const taken = await client.record('op-plane', revision, work, key);
    expect(taken.errors).toBeUndefined();
    revision = taken.data.commitChanges.revision;
  });

  it('says that the database is lost, takes no work meanwhile, and is well when it is back', async () => {
    await owner.end();
    const postmaster = join(server.dataDir, 'postgres', 'postmaster.pid');
    process.kill(Number(readFileSync(postmaster, 'utf8').split('\n')[0]), 'SIGKILL');
    const during: { status: number; body: Data }[] = [];
    await vi.waitFor(
      async () => {
        during.push(await ready());
        expect(during.at(-1)?.status).toBe(503);
      },
      { timeout: 5000, interval: 20 },
    );
    expect(during.at(-1)?.body.because).toContain('the database does not answer');
    expect((await fetch(`${server.url}/health/live`)).status).toBe(200);
    // Nobody starts it by hand: the application does, and finds it at the same place.
    await vi.waitFor(async () => expect((await ready()).status).toBe(200), { timeout: 60_000, interval: 200 });
    const answer = await client.record('op-plane', revision, [readMeter(100_100, `${daysAgo(1)}T12:00Z`)]);
    expect(answer.errors).toBeUndefined();
    expect(server.said).toContain('the built-in database was gone and is started again');
    owner = await asOwner(server);
  });
});

describe('a PostgreSQL of somebody else', () => {
  const apart = () => new URL(ownerUrl(server).href.replace(/\/\/.*@/, '//plain_login:of-no-consequence@'));

  it('is taken with a role that owns its database and may nothing more, once it was lent the three roles', async () => {
    await owner.query(`create role plain_login login password 'of-no-consequence'`);
    await owner.query('create database plain_shop owner plain_login');
    const url = apart();
    url.pathname = '/plain_shop';
    const settings = { DATABASE_URL: url.href };
    await expect(Server.beside(server, settings)).rejects.toThrow(
      /permission denied.*"tallywing_app"[\s\S]*A PostgreSQL of your own/,
    );
    // As docs/operating.md says.
    await owner.query('grant tallywing_app, tallywing_door, tallywing_queue to plain_login');
    const started = await Server.beside(server, settings);
    try {
      // The step that failed was undone as a whole and is done now.
      expect(started.said).toMatch(/tables brought up to date: 20261125000000_init, .*20261128030000_sign_in_failures/);
      await vi.waitFor(async () => expect((await fetch(`${started.url}/health/ready`)).status).toBe(200));
      // A worker begins at once; what it began with is done.
      await vi.waitFor(async () => {
        const figures = await (await fetch(`${started.url}/metrics`)).text();
        expect(figures).toMatch(/^tallywing_queue_jobs\{state="waiting"\} 0$/m);
      });
    } finally {
      await started.stop();
      await owner.query('drop database plain_shop with (force)');
      await owner.query('drop role plain_login');
    }
  });
});

describe('behind a proxy', () => {
  it('counts the people and not the proxy, and gives the cookie to TLS alone', async () => {
    const proxied = await Server.beside(server, { TRUST_PROXY: 'on', WORKER: 'off' });
    const from = async (address: string, typed: string, scheme = 'https') =>
      await fetch(`${proxied.url}/graphql`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-forwarded-for': address, 'x-forwarded-proto': scheme },
        body: JSON.stringify({
          query: 'mutation ($email: String!, $password: String!) { signIn(email: $email, password: $password) { id } }',
          variables: { email: 'auditor@one.example', password: typed },
        }),
      });
    const codeOf = async (response: Response): Promise<string> =>
      ((await response.json()) as Data).errors?.[0].extensions.code ?? 'in';
    try {
      for (let guess = 0; guess < 5; guess += 1) await from('192.0.2.1', 'a guess');
      expect(await codeOf(await from('192.0.2.1', password))).toBe('TOO_MANY');
      const letIn = await from('192.0.2.2', password);
      expect(letIn.headers.getSetCookie()[0]).toContain('; Secure');
      expect(await codeOf(letIn)).toBe('in');
      expect((await from('192.0.2.2', password, 'http')).headers.getSetCookie()[0]).not.toContain('Secure');
      // Without the setting anybody could write that header: it is not believed.
      const plain = await fetch(`${server.url}/graphql`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-forwarded-for': '192.0.2.3', 'x-forwarded-proto': 'https' },
        body: JSON.stringify({
          query: `mutation { signIn(email: "auditor@one.example", password: "${password}") { id } }`,
        }),
      });
      expect(plain.headers.getSetCookie()[0]).not.toContain('Secure');
      const { rows } = await owner.query<{ address: string }>(
        `select distinct detail ->> 'address' as address from audit_entries where kind = 'sign-in' and member_id = 'auditor' order by 1`,
      );
      expect(rows.map(({ address }) => address)).toEqual(['127.0.0.1', '192.0.2.2']);
    } finally {
      await proxied.stop();
    }
  });
});
