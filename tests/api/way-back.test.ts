import { beforeAll, expect, it } from 'vitest';
import { add, daysAgo, hold } from './cast.js';
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
