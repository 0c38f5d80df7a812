import { getIntrospectionQuery, buildClientSchema } from 'graphql';
import type { GraphQLField, GraphQLObjectType, GraphQLSchema, IntrospectionQuery } from 'graphql';
import type pg from 'pg';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { mayDo, roles } from '../../apps/api/dist/identity/access.js';
import type { Role } from '../../apps/api/dist/identity/access.js';
import { operations } from '../../apps/api/dist/identity/operations.js';
import { attemptsAt } from './attempts.js';
import type { Attempt, Ids } from './attempts.js';
import { add, daysAgo, defineMeter, flyable, founding, hold, password, readMeter } from './cast.js';
import { Client } from './client.js';
import type { Answer } from './client.js';
import { asOwner } from './owner.js';
import { Server } from './server.js';
import { Subscriber } from './subscriber.js';

/**
 * Every door of the API, tried by everybody: the table of operations says what is to come of it. The doors are taken from the
 * running server's own schema and from the table, which operations.test.ts holds against the code.
 */
let server: Server;
let owner: pg.Client;
let schema: GraphQLSchema;
let ids: Ids;
let marks: readonly string[];
let attempts = 0;

/** Who knocks: of the first house by role, of the second by role, and three who are nobody. */
const insiders: Record<string, Role> = {
  'manager@one.example': 'manager',
  'technician@one.example': 'technician',
  'dispatcher@one.example': 'dispatcher',
  'north@one.example': 'dispatcher',
  'auditor@one.example': 'auditor',
};
const strangers: Record<string, Role> = Object.fromEntries(roles.map((role) => [`${role}@two.example`, role]));
const nobodies = ['signed out', 'session ended', 'no longer a member', 'cookie made up'] as const;
const everybody = [...Object.keys(insiders), ...Object.keys(strangers), ...nobodies];
const clients = new Map<string, Client>();

beforeAll(async () => {
  // What a worker notes by itself meanwhile is nobody's attempt.
  server = await Server.start({ WORKER: 'off' });
  const second = {
    ...founding.second,
    people: roles
      .filter((role) => role !== 'manager')
      .map((role) => ({
        id: `${role}-two`,
        email: `${role}@two.example`,
        name: `${role} two`,
        role,
        operatorId: null,
        password,
      })),
  };
  for (const house of [founding.first, second]) {
    const { code, output } = await server.run('house/found-cli.js', JSON.stringify(house));
    if (code !== 0) throw new Error(output);
  }
  await furnish();
  for (const name of everybody) clients.set(name, await knock(name));
  owner = await asOwner(server);
  const introspected = await client('manager@one.example').ask(getIntrospectionQuery());
  schema = buildClientSchema(introspected.data as IntrospectionQuery);
  ids = await firstRows();
  marks = await textsOfTheFirstOnly();
});

afterAll(async () => {
  console.log(`attempts at the doors of the API: ${attempts}`);
  await owner.end();
  await server.remove();
});

describe('what the first house has', () => {
  it('is worth looking for, and its own people see it', async () => {
    for (const table of [
      'aircraft',
      'jobs',
      'members',
      'operators',
      'bases',
      'flight_profiles',
      'imports',
      'test_sets',
      'calibrations',
      'agencies',
    ])
      expect([...ids.keys()]).toContain(table);
    for (const mark of ['TW-ISO', 'North Flyers', 'A secret of shop one', 'Technician One'])
      expect(marks).toContain(mark);
    const seen = await Promise.all(
      fieldsOf('query')
        .flatMap((field) => attemptsAt('query', field, ids))
        .map((attempt) => ask('manager@one.example', attempt)),
    );
    for (const mark of ['TW-ISO', 'North Flyers', 'A secret of shop one', 'Technician One'])
      expect(JSON.stringify(seen)).toContain(mark);
  });
});

describe.each(['query', 'mutation'] as const)('every %s', (kind) => {
  it.each(nobodies)('is refused to %s', async (name) => {
    const before = await everythingStored();
    for (const field of fieldsOf(kind)) {
      if (needed(kind, field) === 'anybody') continue;
      for (const attempt of attemptsAt(kind, field, ids)) {
        const answer = await ask(name, attempt);
        expect({ field: field.name, code: rootProblem(answer) }).toEqual({ field: field.name, code: 'SIGNED_OUT' });
        expect({ field: field.name, leaked: leaked(answer, attempt) }).toEqual({ field: field.name, leaked: [] });
      }
    }
    expect(await everythingStored()).toEqual(before);
  });

  it.each(Object.entries(insiders))('is refused to %s where the table of roles says so', async (name, role) => {
    const before = await everythingStored();
    for (const field of fieldsOf(kind)) {
      const needs = needed(kind, field);
      if (needs === 'anybody' || mayDo(actor(role), needs)) continue;
      for (const attempt of attemptsAt(kind, field, ids)) {
        const answer = await ask(name, attempt);
        expect({ field: field.name, code: rootProblem(answer) }).toEqual({ field: field.name, code: 'FORBIDDEN' });
        expect({ field: field.name, leaked: leaked(answer, attempt) }).toEqual({ field: field.name, leaked: [] });
      }
    }
    expect(await everythingStored()).toEqual(before);
  });

  it.each(Object.entries(strangers))('shows and changes nothing of this house for %s', async (name, role) => {
    const before = await everythingStored();
    for (const field of fieldsOf(kind)) {
      const needs = needed(kind, field);
      if (needs === 'anybody') continue;
      const allowed = mayDo(actor(role), needs);
      const codes: string[] = [];
      const told: string[] = [];
      for (const attempt of attemptsAt(kind, field, ids)) {
        if (allowed) await stayIn(name);
        const answer = await ask(name, attempt);
        codes.push(rootProblem(answer));
        told.push(`${answer.errors?.[0]?.extensions.field}: ${answer.errors?.[0]?.message}`);
        expect({ field: field.name, leaked: leaked(answer, attempt) }).toEqual({ field: field.name, leaked: [] });
        if (!allowed)
          expect({ field: field.name, code: codes.at(-1) }).toEqual({ field: field.name, code: 'FORBIDDEN' });
      }
      if (!allowed) continue;
      expect(codes, `${field.name} by ${name}`).not.toContain('FORBIDDEN');
      expect(codes, `${field.name} by ${name}`).not.toContain('SIGNED_OUT');
      // A request that was turned away at the door would prove nothing about what lies behind.
      const turnedAway = codes.every((code) => code === 'BAD_INPUT' || code === 'INTERNAL');
      expect(
        turnedAway
          ? `${field.name}: give tests/api/attempts.ts a sensible value, so that the attempt gets past the form (${told.join('; ')})`
          : '',
      ).toBe('');
    }
    expect(await everythingStored()).toEqual(before);
  });
});

describe('every subscription', () => {
  it.each(everybody)('%s', async (name) => {
    const role = insiders[name] ?? strangers[name];
    const before = await everythingStored();
    for (const field of fieldsOf('subscription')) {
      for (const { query } of attemptsAt('subscription', field, ids)) {
        attempts += 1;
        const needs = needed('subscription', field);
        const allowed = needs === 'anybody' || (role !== undefined && mayDo(actor(role), needs));
        const subscriber = new Subscriber(server.url, { cookie: client(name).cookie }, query);
        await expect
          .poll(
            () => (allowed ? subscriber.counters.length : subscriber.closings.length + subscriber.problems.length),
            {
              timeout: 10_000,
            },
          )
          .toBeGreaterThan(0);
        if (!allowed) expect(subscriber.counters).toEqual([]);
        expect(leaked([subscriber.problems, subscriber.closings], { query, variables: {} })).toEqual([]);
        await subscriber.leave();
      }
    }
    expect(await everythingStored()).toEqual(before);
  });
});

describe('every route', () => {
  const routes = Object.keys(operations).filter((name) => /^[A-Z]+ \//.test(name));
  it.each(routes)('%s', async (route) => {
    const [method = '', path = ''] = route.split(' ');
    const needs = operations[route] ?? 'anybody';
    const before = await everythingStored();
    for (const name of everybody) {
      const role = insiders[name] ?? strangers[name];
      const allowed = needs === 'anybody' || (role !== undefined && mayDo(actor(role), needs));
      if (allowed && name in insiders && method !== 'GET') continue;
      for (const id of /:\w+/.test(path) ? ids.values() : ['none']) {
        attempts += 1;
        const response = await fetch(server.url + path.replace(/:\w+/g, encodeURIComponent(id)), {
          method,
          headers: { cookie: client(name).cookie },
          redirect: 'manual',
          ...(method === 'GET' ? {} : { body: someFile() }),
        });
        const body = await response.text();
        const told = { name, id, status: response.status };
        if (role === undefined && !allowed) expect(told).toEqual({ name, id, status: 401 });
        else if (!allowed) expect(told).toEqual({ name, id, status: 403 });
        else expect([401, 403, 500]).not.toContain(response.status);
        if (!(name in insiders))
          expect({ ...told, leaked: leaked(body, { query: id, variables: {} }) }).toEqual({ ...told, leaked: [] });
      }
    }
    expect(await everythingStored()).toEqual(before);
  });
});

describe('what is noted meanwhile', () => {
  it('is of the people of the house alone, and that they were refused', async () => {
    const noted = async () =>
      (
        await owner.query<{ who: string; kind: string }>(
          `select distinct member_id as who, kind from audit_entries where organisation_id = 'shop-one' order by 1, 2`,
        )
      ).rows;
    const refused = ['auditor', 'dispatcher', 'north', 'technician'].map((who) => ({ who, kind: 'refused' }));
    await expect.poll(noted, { timeout: 10_000 }).toEqual(expect.arrayContaining(refused));
    const rows = await noted();
    expect(rows.filter(({ kind }) => kind === 'refused')).toEqual(refused);
    const members = Object.keys(insiders).map((email) => email.split('@')[0]);
    expect(rows.filter(({ who }) => ![...members, 'second'].includes(who))).toEqual([]);
  });
});

/** Last, because here things do happen. */
describe('the people of the house itself', () => {
  it.each(Object.entries(insiders))('%s may do what the table of roles says', async (name, role) => {
    for (const kind of ['query', 'mutation'] as const) {
      for (const field of fieldsOf(kind)) {
        const needs = needed(kind, field);
        if (needs === 'anybody' || !mayDo(actor(role), needs)) continue;
        for (const attempt of attemptsAt(kind, field, ids)) {
          await stayIn(name);
          const code = rootProblem(await ask(name, attempt));
          expect(['SIGNED_OUT', 'FORBIDDEN', 'INTERNAL'], `${field.name} by ${name}`).not.toContain(code);
        }
      }
    }
  });
});

const client = (name: string): Client => {
  const known = clients.get(name);
  if (known === undefined) throw new Error(`nobody is called ${name}`);
  return known;
};

async function ask(name: string, { query, variables }: Attempt): Promise<Answer> {
  attempts += 1;
  return await client(name).ask(query, variables);
}

/** The code of what was refused as a whole; parts of an answer that a role does not get are not meant. */
function rootProblem({ errors = [] }: Answer): string {
  return errors.find(({ path }) => path === undefined || path.length === 1)?.extensions.code ?? 'none';
}

function fieldsOf(kind: 'query' | 'mutation' | 'subscription'): GraphQLField<unknown, unknown>[] {
  const type: GraphQLObjectType | null | undefined =
    kind === 'query'
      ? schema.getQueryType()
      : kind === 'mutation'
        ? schema.getMutationType()
        : schema.getSubscriptionType();
  return Object.values(type?.getFields() ?? {});
}

function needed(kind: 'query' | 'mutation' | 'subscription', field: GraphQLField<unknown, unknown>) {
  const name = `${kind.slice(0, 1).toUpperCase()}${kind.slice(1)}.${field.name}`;
  const needs = operations[name];
  if (needs === undefined) throw new Error(`Give ${name} a row in apps/api/src/identity/operations.ts.`);
  return needs;
}

const actor = (role: Role) => ({ organisationId: '', memberId: '', name: '', role });

const leaked = (answer: unknown, { query, variables }: Attempt): string[] => {
  const told = JSON.stringify(answer);
  // What somebody sent may be said back to them.
  const sent = query + JSON.stringify(variables);
  return marks.filter((mark) => told.includes(mark) && !sent.includes(mark));
};

function someFile(): FormData {
  const form = new FormData();
  form.append('files', new Blob(['registration,make\nTW-XX,None\n']), 'aircraft.csv');
  return form;
}

async function signIn(email: string): Promise<Client> {
  const found = new Client(server.url);
  const answer = await found.signIn(email, password);
  if (answer.errors !== undefined) throw new Error(`${email}: ${JSON.stringify(answer.errors)}`);
  return found;
}

async function knock(name: string): Promise<Client> {
  if (name in insiders || name in strangers) return await signIn(name);
  const nobody = new Client(server.url);
  if (name === 'cookie made up') nobody.cookie = `tallywing_session=${'a'.repeat(43)}`;
  if (name === 'session ended') {
    const person = await signIn('manager@one.example');
    nobody.cookie = person.cookie;
    await person.data('mutation { signOut }');
  }
  if (name === 'no longer a member') {
    nobody.cookie = (await signIn('second@one.example')).cookie;
    await (
      await signIn('manager@one.example')
    ).data('mutation { deactivatePerson(input: { personId: "second", expectedRevision: 1 }) { id } }');
  }
  return nobody;
}

/** Whoever ended their own session a moment ago signs in again. */
async function stayIn(name: string): Promise<void> {
  const { viewer } = await client(name).data('{ viewer { id } }');
  if (viewer === null) clients.set(name, await signIn(name));
}

/** At least one row of everything that people make. */
async function furnish(): Promise<void> {
  const manager = await signIn('manager@one.example');
  const technician = await signIn('technician@one.example');
  const recorded = await technician.record('iso-plane', 0, [
    add('TW-ISO', { operatorId: 'north' }),
    defineMeter(),
    readMeter(100_000, `${daysAgo(2)}T12:00Z`),
    hold('iso', `${daysAgo(1)}T00:00Z`, null),
    ...flyable(),
  ]);
  expect(recorded.errors).toBeUndefined();
  await technician.data(
    'mutation { createJob(input: { aircraftId: "iso-plane", title: "A secret of shop one" }) { id } }',
  );
  await manager.data('mutation { addBase(name: "Hidden field", zone: "UTC") { id } }');
  const { addTestSet } = await manager.data(
    'mutation { addTestSet(serial: "TS-HIDDEN", name: "Hidden test set") { id revision } }',
  );
  await manager.data('mutation ($input: NewCalibrationInput!) { addCalibration(input: $input) { id } }', {
    input: {
      testSetId: addTestSet.id,
      expectedRevision: addTestSet.revision,
      checkedOn: daysAgo(30),
      goodUntil: '2040-01-01',
      certificate: 'CERT-HIDDEN',
    },
  });
  await manager.data(
    'mutation { addAgency(input: { kind: REPAIR_STATION, name: "Hidden agency", ratings: [] }) { id } }',
  );
  await manager.data(
    'mutation { setLabour(input: { expectedVersion: 0, hourly: 91.25, currency: "HID", jobs: [] }) { version } }',
  );
  const form = new FormData();
  form.append('files', new Blob(['registration\nTW-HIDDEN\n']), 'hidden-aircraft.csv');
  const sent = await fetch(`${server.url}/imports`, {
    method: 'POST',
    headers: { cookie: manager.cookie },
    body: form,
  });
  expect(sent.status).toBe(202);
  const { id } = (await sent.json()) as { id: string };
  await vi.waitFor(
    async () => {
      const { import: found } = await manager.data('query ($id: ID!) { import(id: $id) { state } }', { id });
      expect(found.state).not.toBe('RUNNING');
    },
    { timeout: 20_000, interval: 100 },
  );
}

async function tables(): Promise<{ readonly name: string; readonly columns: readonly string[] }[]> {
  const { rows } = await owner.query<{ name: string; columns: string[] }>(
    `select table_name::text as name, array_agg(column_name::text) as columns
     from information_schema.columns where table_schema = 'public' group by 1 order by 1`,
  );
  return rows.filter(({ columns }) => columns.includes('organisation_id'));
}

/** One real id of each kind of row that the first house has. */
async function firstRows(): Promise<Ids> {
  const found = new Map<string, string>();
  for (const { name, columns } of await tables()) {
    if (!columns.includes('id')) continue;
    const { rows } = await owner.query<{ id: string }>(
      `select id::text as id from "${name}" where organisation_id = 'shop-one'
       and ($1 <> 'members' or id::text = 'dispatcher') order by 1 limit 1`,
      [name],
    );
    if (rows[0]) found.set(name, name === 'sessions' ? rows[0].id.slice(0, 16) : rows[0].id);
  }
  return found;
}

/** Texts that stand in rows of the first house and nowhere in the second's. */
async function textsOfTheFirstOnly(): Promise<string[]> {
  const stored = async (organisation: string): Promise<string[]> => {
    const found: string[] = [];
    for (const { name } of await tables()) {
      const { rows } = await owner.query<{ row: Record<string, unknown> }>(
        `select to_jsonb(t) as row from "${name}" t where organisation_id = $1`,
        [organisation],
      );
      for (const { row } of rows) collect(row, found);
    }
    return found;
  };
  const second = (await stored('shop-two')).join('\n');
  const words = new Set(await stored('shop-one'));
  return [...words]
    .filter((text) => text.length >= 6 && !second.includes(text) && !common.test(text))
    .concat('iso-plane', 'shop-one');
}

/** Words of the trade and of the rules, that an answer about anybody's aircraft may have, and days. */
const common = /^[a-z]+([-.| ][a-z0-9]+)*$|^\d{4}-\d\d-\d\d|^\d+$|^(UTC|America\/)/;

function collect(value: unknown, found: string[]): void {
  if (typeof value === 'string') found.push(value);
  else if (value !== null && typeof value === 'object') for (const each of Object.values(value)) collect(each, found);
}

/** A fingerprint of every table, as far as it is the first house's. That somebody was refused is noted meanwhile: see below. */
async function everythingStored(): Promise<Record<string, string>> {
  const marksOf: Record<string, string> = {};
  for (const { name } of await tables()) {
    if (name === 'audit_entries') continue;
    const { rows } = await owner.query<{ print: string }>(
      `select count(*) || ' ' || coalesce(md5(string_agg(t::text, ',' order by t::text)), '') as print
       from "${name}" t where organisation_id = 'shop-one'`,
    );
    marksOf[name] = rows[0]?.print ?? '';
  }
  return marksOf;
}
