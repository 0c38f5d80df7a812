import type pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { founding, password } from './cast.js';
import { Client } from './client.js';
import { asOwner } from './owner.js';
import { Server } from './server.js';

let server: Server;
let owner: pg.Client;
beforeAll(async () => {
  server = await Server.start({ WORKER: 'off' });
  owner = await asOwner(server);
});
afterAll(async () => {
  await owner.end();
  await server.remove();
});

const found = (input: unknown) =>
  server.run('house/found-cli.js', typeof input === 'string' ? input : JSON.stringify(input));
const whole = {
  ...founding.first,
  bases: [
    { id: 'field', name: 'Field', zone: 'America/Chicago' },
    { id: 'strip', name: 'North strip', zone: 'America/Denver' },
  ],
};
const withManager = (more: object) => ({ ...whole, manager: { ...whole.manager, ...more } });

describe('npm run found', () => {
  it.each([
    ['no JSON', 'founding', /Give \{ "organisation"/],
    ['nobody to begin with', { organisation: whole.organisation }, /Give \{ "organisation"/],
    ['a person without a password', { ...whole, people: [{ ...whole.people[0], password: undefined }] }, /people like/],
    ['an id that cannot be one', { ...whole, organisation: { id: 'Our Shop', name: 'Our Shop' } }, /small letters/],
    ['a password that is too short', withManager({ password: 'short' }), /10 characters|ten characters/i],
    ['an address that is none', withManager({ email: 'manager' }), /name@example\.com/],
    [
      'a zone that nobody knows',
      { ...whole, bases: [{ id: 'b', name: 'B', zone: 'Mars/Base' }] },
      /Mars\/Base is not a time zone/,
    ],
    [
      'one id for two',
      { ...whole, operators: [...whole.operators, { id: 'north', name: 'Again' }] },
      /north is there twice/,
    ],
    [
      'an operator that is not among them',
      { ...whole, people: [{ ...whole.people[0], role: 'dispatcher', operatorId: 'west' }] },
      /no operator west/,
    ],
  ])('says what is wrong with %s, in words and with nothing written', async (_, input, says) => {
    const { code, output } = await found(input);
    expect({ code, output }).toEqual({ code: 1, output: expect.stringMatching(says) });
    expect(output).not.toMatch(/at .*\.js/);
    expect((await owner.query('select 1 from organisations')).rowCount).toBe(0);
  });

  it('goes on where it was cut off before anybody was there, and then says that it is founded', async () => {
    // As a process leaves it that was killed after its first step.
    await owner.query(`insert into organisations (organisation_id, name) values ('shop-one', 'Shop One')`);
    await owner.query(
      `insert into bases (organisation_id, id, name, zone) values ('shop-one', 'field', 'Field', 'America/Chicago')`,
    );
    const { code, output } = await found(whole);
    expect({ code, output }).toEqual({ code: 0, output: expect.stringContaining('founded Shop One with 6 people') });
    const manager = new Client(server.url);
    expect((await manager.signIn('manager@one.example', password)).errors).toBeUndefined();
    const { house } = await manager
      .data('{ house { operators { id } bases { id zone } } people { id } }')
      .then(({ house, people }) => ({ house: { ...house, people: people.length } }));
    expect(house).toEqual({
      operators: [{ id: 'north' }, { id: 'south' }],
      bases: [
        { id: 'field', zone: 'America/Chicago' },
        { id: 'strip', zone: 'America/Denver' },
      ],
      people: 6,
    });
    const again = await found(whole);
    expect(again).toEqual({ code: 1, output: expect.stringContaining('There is an organisation shop-one already.') });
  });
});

describe('somebody who belongs to two organisations with one address', () => {
  it('is asked which one is meant where one password opens both, and comes into the one named', async () => {
    const same = { ...founding.second.manager, email: 'manager@one.example' };
    expect((await found({ ...founding.second, manager: same })).code).toBe(0);
    const client = new Client(server.url);
    const unsure = await client.signIn('manager@one.example', password);
    expect(unsure.errors?.[0]).toMatchObject({
      message: 'This address belongs to several organisations: Shop One (shop-one), Shop Two (shop-two).',
      extensions: { code: 'BAD_INPUT', field: 'organisation' },
    });
    expect(client.cookie).toBe('');
    const { signIn } = await client.data(
      `mutation { signIn(email: "manager@one.example", password: "${password}", organisation: "shop-two") { organisation { id } } }`,
    );
    expect(signIn.organisation.id).toBe('shop-two');
  });
});
