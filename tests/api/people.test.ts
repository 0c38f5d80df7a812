import { beforeAll, describe, expect, it } from 'vitest';
import { password } from './cast.js';
import { Client } from './client.js';
import type { Data } from './client.js';
import { as } from './people.js';
import { shared } from './shared.js';

const fields = 'id name email role active revision operator { id } certificate { kind number ratings }';
const add = `mutation ($input: NewPersonInput!) { addPerson(input: $input) { ${fields} } }`;
const amend = `mutation ($input: AmendPersonInput!) { amendPerson(input: $input) { ${fields} } }`;
const setPassword = 'mutation ($input: NewPasswordInput!) { setPassword(input: $input) { revision } }';
const deactivate = 'mutation ($input: PersonSeenInput!) { deactivatePerson(input: $input) { active revision } }';
const reactivate = 'mutation ($input: PersonSeenInput!) { reactivatePerson(input: $input) { active revision } }';
const viewer = '{ viewer { id role } }';
const entries =
  '{ houseEntries(first: 500) { totalCount edges { node { kind by subject { id name } before after } } } }';

let manager: Client;
let auditor: Client;
beforeAll(async () => {
  manager = await as('manager@one.example');
  auditor = await as('auditor@one.example');
});

let count = 0;
async function newPerson(more: Readonly<Record<string, unknown>> = {}): Promise<Data> {
  count += 1;
  const input = {
    email: `new-${count}@one.example`,
    name: `New Person ${count}`,
    password,
    role: 'TECHNICIAN',
    ...more,
  };
  return (await manager.data(add, { input })).addPerson;
}

async function signedIn(email: string, secret = password): Promise<Client> {
  const client = new Client(shared.url);
  expect((await client.signIn(email, secret)).errors).toBeUndefined();
  return client;
}

const lastEntry = async (client = manager): Promise<Data> =>
  (await client.data(entries)).houseEntries.edges[0].node as Data;

describe('people', () => {
  it('lets a manager add somebody with a certificate, who can then sign in', async () => {
    const person = await newPerson({
      email: ' New-Signer@one.example ',
      certificate: { kind: 'MECHANIC', number: 'T-M-1', ratings: ['POWERPLANT', 'AIRFRAME'] },
    });
    expect(person).toMatchObject({
      email: 'new-signer@one.example',
      role: 'TECHNICIAN',
      active: true,
      revision: 1,
      certificate: { kind: 'MECHANIC', number: 'T-M-1', ratings: ['AIRFRAME', 'POWERPLANT'] },
    });
    const client = await signedIn('new-signer@one.example');
    expect((await client.data(viewer)).viewer).toEqual({ id: person.id, role: 'TECHNICIAN' });
    expect((await auditor.data(`{ people { ${fields} } }`)).people).toContainEqual(person);
  });

  it.each([
    ['a text that is no address', { email: 'nobody' }, 'input.email'],
    ['an address that is taken', { email: 'technician@one.example' }, 'input.email'],
    ['an empty name', { name: '  ' }, 'input.name'],
    ['a password of nine characters', { password: '123456789' }, 'input.password'],
    ['an operator for a technician', { operatorId: 'north' }, 'input.operatorId'],
  ])('refuses %s and names the field', async (_, wrong, field) => {
    const input = { email: 'wrong@one.example', name: 'Wrong', password, role: 'TECHNICIAN', ...wrong };
    expect(await manager.problem(add, { input })).toMatchObject({ code: 'BAD_INPUT', field });
  });

  it('takes a password of ten characters, and refuses an operator that is not there', async () => {
    await newPerson({ password: '1234567890' });
    const input = { email: 'lost@one.example', name: 'Lost', password, role: 'DISPATCHER', operatorId: 'east' };
    expect(await manager.problem(add, { input })).toMatchObject({ code: 'NOT_FOUND', field: 'input.operatorId' });
  });

  it('changes role, operator and certificate, which count at the next request', async () => {
    const person = await newPerson();
    const client = await signedIn(person.email);
    const input = {
      personId: person.id,
      expectedRevision: 1,
      name: 'Renamed Person',
      role: 'DISPATCHER',
      operatorId: 'south',
      certificate: null,
    };
    expect((await manager.data(amend, { input })).amendPerson).toMatchObject({
      name: 'Renamed Person',
      role: 'DISPATCHER',
      operator: { id: 'south' },
      revision: 2,
    });
    expect((await client.data('{ operators { id } }')).operators).toEqual([{ id: 'south' }]);
    expect(await client.problem('{ jobs { id } }')).toMatchObject({ code: 'FORBIDDEN' });
    expect(await lastEntry()).toMatchObject({
      kind: 'person.amend',
      by: 'Manager One',
      subject: { id: person.id, name: 'Renamed Person' },
      before: { name: person.name, role: 'technician', operatorId: null },
      after: { name: 'Renamed Person', role: 'dispatcher', operatorId: 'south' },
    });
  });

  it('keeps one manager from overwriting what another did meanwhile, and says who', async () => {
    const person = await newPerson();
    const other = await newPerson({ role: 'MANAGER', name: 'Other Manager' });
    const second = await signedIn(other.email);
    const input = { personId: person.id, expectedRevision: 1, name: person.name, role: 'AUDITOR' };
    await second.data(amend, { input });
    const answer = await manager.ask(amend, { input: { ...input, role: 'TECHNICIAN' } });
    expect(answer.errors?.[0]).toMatchObject({
      message: `The entry of ${person.name} was changed by Other Manager meanwhile.`,
      extensions: { code: 'STALE_REVISION', revision: 2, changedBy: 'Other Manager' },
    });
    const { people } = await manager.data('{ people { id role } }');
    expect(people).toContainEqual({ id: person.id, role: 'AUDITOR' });
    await manager.data(deactivate, { input: { personId: other.id, expectedRevision: 1 } });
  });

  it('writes nothing where nothing differs', async () => {
    const person = await newPerson();
    const before = (await manager.data(entries)).houseEntries.totalCount;
    const input = { personId: person.id, expectedRevision: 1, name: person.name, role: 'TECHNICIAN' };
    expect((await manager.data(amend, { input })).amendPerson.revision).toBe(1);
    expect((await manager.data(entries)).houseEntries.totalCount).toBe(before);
  });
});

describe('deactivating', () => {
  it('ends every session at once, keeps the person out, and can be undone', async () => {
    const person = await newPerson();
    const [one, two] = [await signedIn(person.email), await signedIn(person.email)];
    const seen = { personId: person.id, expectedRevision: 1 };
    expect((await manager.data(deactivate, { input: seen })).deactivatePerson).toEqual({ active: false, revision: 2 });
    expect((await one.data(viewer)).viewer).toBeNull();
    expect((await two.data(viewer)).viewer).toBeNull();
    expect((await new Client(shared.url).signIn(person.email, password)).errors?.[0]?.extensions.code).toBe(
      'SIGN_IN_FAILED',
    );
    expect((await manager.data(reactivate, { input: { ...seen, expectedRevision: 2 } })).reactivatePerson).toEqual({
      active: true,
      revision: 3,
    });
    // The old cookie stays dead: only signing in opens the door again.
    expect((await one.data(viewer)).viewer).toBeNull();
    await signedIn(person.email);
  });

  it('never takes the last active manager', async () => {
    const only = await as('manager@two.example');
    const { people } = await only.data('{ people { id name role revision } }');
    const me = people.find((each: Data) => each.role === 'MANAGER');
    const seen = { personId: me.id, expectedRevision: me.revision };
    expect(await only.problem(deactivate, { input: seen })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'input.personId',
      wayOut: 'Make somebody else a manager first.',
    });
    expect(await only.problem(amend, { input: { ...seen, name: me.name, role: 'AUDITOR' } })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'input.role',
    });
    expect((await only.data(viewer)).viewer.role).toBe('MANAGER');
  });

  it('lets of two managers who remove each other at the same moment only one succeed', async () => {
    const only = await as('manager@two.example');
    const input = { email: 'rival@two.example', name: 'Rival Two', password, role: 'MANAGER' };
    const rival = (await only.data(add, { input })).addPerson;
    const other = await signedIn('rival@two.example');
    const { people } = await only.data('{ people { id revision } }');
    const demote = (person: { id: string; revision: number }) => ({
      input: { personId: person.id, expectedRevision: person.revision },
    });
    const mine = people.find((each: Data) => each.id === 'manager');
    const answers = await Promise.all([only.ask(deactivate, demote(rival)), other.ask(deactivate, demote(mine))]);
    expect(answers.filter((each) => each.errors === undefined)).toHaveLength(1);
    const left = answers[0].errors === undefined ? only : other;
    const now = (await left.data('{ people { id role active revision } }')).people;
    expect(now.filter((each: Data) => each.role === 'MANAGER' && each.active)).toHaveLength(1);
    // The cast is left as it was found.
    if (left === other) {
      await other.data(reactivate, demote(now.find((each: Data) => each.id === 'manager')));
      const again = await as('manager@two.example');
      await again.data(deactivate, demote(now.find((each: Data) => each.id === rival.id)));
    }
  });
});

describe('a new password', () => {
  it('replaces the old one, ends the sessions, and stands nowhere', async () => {
    const person = await newPerson();
    const client = await signedIn(person.email);
    const input = { personId: person.id, expectedRevision: 1, password: 'brass-and-spruce' };
    await manager.data(setPassword, { input });
    expect((await client.data(viewer)).viewer).toBeNull();
    const old = await new Client(shared.url).signIn(person.email, password);
    expect(old.errors?.[0]?.extensions.code).toBe('SIGN_IN_FAILED');
    await signedIn(person.email, 'brass-and-spruce');
    expect(await lastEntry(auditor)).toMatchObject({ kind: 'person.password', after: { sessionsEnded: 1 } });
    expect(JSON.stringify(await auditor.data(entries))).not.toMatch(/brass-and-spruce|argon2|lantern-and-rivet/);
  });
});

describe('sessions', () => {
  const mine = '{ mySessions { id userAgent since lastSeen here person { id } } }';
  it('shows me mine and ends one, or all others', async () => {
    const person = await newPerson();
    const [here, there, elsewhere] = [
      await signedIn(person.email),
      await signedIn(person.email),
      await signedIn(person.email),
    ];
    const { mySessions } = await here.data(mine);
    expect(mySessions).toHaveLength(3);
    expect(mySessions.every((each: Data) => each.person.id === person.id)).toBe(true);
    expect(mySessions.filter((each: Data) => each.here)).toHaveLength(1);
    const theirs = (await there.data(mine)).mySessions.find((each: Data) => each.here);
    expect(theirs.id).toMatch(/^[0-9a-f]{16}$/);
    expect((await here.data('mutation ($id: ID!) { endSession(id: $id) }', { id: theirs.id })).endSession).toBe(true);
    expect((await there.data(viewer)).viewer).toBeNull();
    expect((await elsewhere.data(viewer)).viewer).not.toBeNull();
    expect((await here.data('mutation { endOtherSessions }')).endOtherSessions).toBe(1);
    expect((await elsewhere.data(viewer)).viewer).toBeNull();
    expect((await here.data(viewer)).viewer).not.toBeNull();
    expect((await here.data('mutation { endOtherSessions }')).endOtherSessions).toBe(0);
  });

  it('ends nobody else’s, but a manager does', async () => {
    const person = await newPerson();
    const target = await signedIn(person.email);
    const id = (await target.data(mine)).mySessions[0].id;
    const end = 'mutation ($id: ID!) { endSession(id: $id) }';
    const technician = await as('technician@one.example');
    expect(await technician.problem(end, { id })).toMatchObject({ code: 'NOT_FOUND' });
    expect(await (await as('manager@two.example')).problem(end, { id })).toMatchObject({ code: 'NOT_FOUND' });
    expect((await target.data(viewer)).viewer).not.toBeNull();
    const { sessions } = await manager.data('{ sessions { id person { id name } } }');
    expect(sessions).toContainEqual({ id, person: { id: person.id, name: person.name } });
    expect((await manager.data(end, { id })).endSession).toBe(true);
    expect((await target.data(viewer)).viewer).toBeNull();
    await signedIn(person.email);
    await signedIn(person.email);
    const all = 'mutation ($personId: ID!) { endSessionsOf(personId: $personId) }';
    expect((await manager.data(all, { personId: person.id })).endSessionsOf).toBe(2);
    expect(await lastEntry()).toMatchObject({
      kind: 'person.sessions',
      subject: { id: person.id },
      after: { sessionsEnded: 2 },
    });
  });
});

describe('roles', () => {
  const seen = { personId: 'technician', expectedRevision: 1 };
  const asks: readonly (readonly [string, string, Record<string, unknown>])[] = [
    ['addPerson', add, { input: { email: 'x@one.example', name: 'X', password, role: 'MANAGER' } }],
    ['amendPerson', amend, { input: { ...seen, name: 'X', role: 'MANAGER' } }],
    ['setPassword', setPassword, { input: { ...seen, password } }],
    ['deactivatePerson', deactivate, { input: seen }],
    ['reactivatePerson', reactivate, { input: seen }],
    ['sessions', '{ sessions { id } }', {}],
    ['endSessionsOf', 'mutation { endSessionsOf(personId: "technician") }', {}],
  ];
  it.each(asks)('%s is for managers', async (_, query, variables) => {
    for (const email of ['technician@one.example', 'dispatcher@one.example', 'auditor@one.example']) {
      expect(await (await as(email)).problem(query, variables), email).toMatchObject({ code: 'FORBIDDEN' });
    }
    expect(await (await as(null)).problem(query, variables)).toMatchObject({ code: 'SIGNED_OUT' });
  });
});

describe('my own password', () => {
  const change = 'mutation ($input: MyPasswordInput!) { changeMyPassword(input: $input) }';
  const next = 'another-lantern-and-rivet';

  it('takes the one in use, ends my other sessions, and leaves an entry without either', async () => {
    const person = await newPerson();
    const [here, there] = [await signedIn(person.email), await signedIn(person.email)];
    expect(await here.problem(change, { input: { current: 'a wrong guess', next } })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'input.current',
    });
    expect(await here.problem(change, { input: { current: password, next: 'too short' } })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'input.next',
    });
    expect((await there.data(viewer)).viewer).not.toBeNull();
    expect((await here.data(change, { input: { current: password, next } })).changeMyPassword).toBe(1);
    expect((await here.data(viewer)).viewer).not.toBeNull();
    expect((await there.data(viewer)).viewer).toBeNull();
    const old = await new Client(shared.url).signIn(person.email, password);
    expect(old.errors?.[0]?.extensions.code).toBe('SIGN_IN_FAILED');
    await signedIn(person.email, next);
    const entry = await lastEntry();
    expect(entry).toMatchObject({ kind: 'person.own-password', by: person.name, after: { sessionsEnded: 1 } });
    expect(JSON.stringify(entry)).not.toMatch(/argon2|lantern/);
  });

  it('is not found out by trying, and a manager may still set another', async () => {
    const person = await newPerson();
    const client = await signedIn(person.email);
    const codes: string[] = [];
    for (let guess = 0; guess < 6; guess += 1)
      codes.push((await client.problem(change, { input: { current: `guess ${guess}`, next } })).code);
    expect(codes).toEqual([...Array<string>(5).fill('BAD_INPUT'), 'TOO_MANY']);
    expect((await client.problem(change, { input: { current: password, next } })).code).toBe('TOO_MANY');
    await manager.data(setPassword, { input: { personId: person.id, expectedRevision: 1, password: next } });
    await signedIn(person.email, next);
  });
});
