import { randomUUID } from 'node:crypto';
import { beforeAll, expect, it } from 'vitest';
import type { Change, EquipmentType } from '../../libs/rules/src/index.js';
import { typeOf, unitOf } from '../../libs/rules/testing/builders.js';
import { add, daysAgo, flyable, hold } from './cast.js';
import type { Client, Data } from './client.js';
import { as } from './people.js';

let technician: Client;
let profile: string;

const question = `query ($id: ID!, $profile: ID!) { aircraft(id: $id) { names wayBack(profile: $profile) {
  now complete ways { hours { low typical high } hoursRestOn partsUnknown loses assumes changesAt hoursLeft
    steps { job subjects change facts hours { typical } } } } } }`;

beforeAll(async () => {
  technician = await as('technician@one.example');
  const answer = await technician.record('way-back', 0, [add('TW-W01'), hold('squawk', `${daysAgo(1)}T00:00Z`, null)]);
  expect(answer.errors).toBeUndefined();
  const { readyBoard }: Data = await technician.data('{ readyBoard { profiles { id } } }');
  profile = readyBoard.profiles[0].id;
});

it('answers an aircraft of which little is recorded without making a yes up', async () => {
  const { aircraft }: Data = await technician.data(question, { id: 'way-back', profile });
  expect(aircraft.wayBack.now).not.toBe('YES');
  for (const way of aircraft.wayBack.ways) {
    expect(way.steps.some((step: Data) => step.job === 'lift-hold')).toBe(true);
    expect(way.hours.low).toBeLessThanOrEqual(way.hours.typical);
  }
});

it('is there for a dispatcher, and not for another house', async () => {
  const dispatcher = await as('dispatcher@one.example');
  const { aircraft }: Data = await dispatcher.data(question, { id: 'way-back', profile });
  expect(aircraft.wayBack).toEqual((await technician.data(question, { id: 'way-back', profile })).aircraft.wayBack);
  const stranger = await as('technician@two.example');
  expect((await stranger.data(question, { id: 'way-back', profile })).aircraft).toBeNull();
});

it('names a profile that does not exist', async () => {
  expect(await technician.problem(question, { id: 'way-back', profile: 'no-such-profile' })).toMatchObject({
    code: 'NOT_FOUND',
    field: 'profile',
  });
});

it('fits the version of a product that is in force, whatever its manual calls the revision of the one aboard', async () => {
  const version = (name: string, revision: string, functions: EquipmentType['functions']) => {
    const { id: _id, ...body } = typeOf({ id: 'wb-box', name, revision, functions });
    return body;
  };
  const { enterType }: Data = await technician.data(
    'mutation ($input: EnterTypeInput!) { enterType(input: $input) { id } }',
    { input: { key: randomUUID(), body: version('Box as entered first', '9', ['audio']) } },
  );
  const unit = unitOf({ id: 'box', typeId: enterType.id, place: 'remote', serial: '7' });
  const performed = { date: daysAgo(20), at: null };
  const recorded = await technician.record('way-back-box', 0, [
    add('TW-W02'),
    ...flyable(),
    { kind: 'unit.install', version: 1, unit, performed, touched: ['behind-panel'], mass: null } as Change,
  ]);
  expect(recorded.errors).toBeUndefined();
  const locator = {
    ...version('Box with a transmitter', '10', ['elt']),
    authorisations: [{ tso: 'C126b', class: null }],
  };
  await technician.data('mutation ($input: ReviseTypeInput!) { reviseType(input: $input) { id } }', {
    input: { key: randomUUID(), expectedId: enterType.id, body: locator },
  });
  const { aircraft }: Data = await technician.data(question, { id: 'way-back-box', profile: 'vfr-cross-country' });
  const fitted = aircraft.wayBack.ways.flatMap(({ steps }: Data) => steps.filter(({ job }: Data) => job === 'fit-elt'));
  expect(fitted.map(({ subjects }: Data) => subjects)).toContainEqual(['Box with a transmitter']);
});
