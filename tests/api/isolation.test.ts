import { beforeAll, describe, expect, it } from 'vitest';
import { add, daysAgo, defineMeter, hold, readMeter } from './cast.js';
import type { Client, Data } from './client.js';
import { as } from './people.js';

// That nobody of another organisation sees or changes anything is walk.test.ts; this is what the two have in common anyway.
let owner: Client;
let stranger: Client;

beforeAll(async () => {
  owner = await as('technician@one.example');
  stranger = await as('manager@two.example');
  const answer = await owner.record('iso-plane', 0, [
    add('TW-ISO', { operatorId: 'north' }),
    defineMeter(),
    readMeter(100_000, `${daysAgo(2)}T12:00Z`),
    hold('iso', `${daysAgo(1)}T00:00Z`, null),
  ]);
  expect(answer.errors).toBeUndefined();
});

describe('another organisation', () => {
  it('may use the same registration and id for an aircraft of its own', async () => {
    const answer = await stranger.record('iso-plane', 0, [add('TW-ISO')]);
    expect(answer.errors).toBeUndefined();
    expect((await stranger.data('{ aircraft(id: "iso-plane") { revision operator { id } } }')).aircraft).toEqual({
      revision: 1,
      operator: null,
    });
    expect((await owner.data('{ aircraft(id: "iso-plane") { revision operator { id } } }')).aircraft).toEqual({
      revision: 4,
      operator: { id: 'north' },
    });
  });
});

describe('a dispatcher of one operator', () => {
  it('sees that operator and nobody else', async () => {
    await owner.record('iso-south', 0, [add('TW-SOU', { operatorId: 'south' })]);
    const north = await as('north@one.example');
    const seen = await north.data(`{
      mine: aircraft(id: "iso-plane") { registration } other: aircraft(id: "iso-south") { registration } operators { id }
      readyBoard(first: 500) { edges { node { aircraft { operator { id } } } } }
      findings(first: 500) { edges { node { aircraft { operator { id } } } } } }`);
    expect(seen.mine).toEqual({ registration: 'TW-ISO' });
    expect(seen.other).toBeNull();
    expect(seen.operators).toEqual([{ id: 'north' }]);
    const owners = [...seen.readyBoard.edges, ...seen.findings.edges].map(
      (edge: Data) => edge.node.aircraft.operator?.id,
    );
    expect(new Set(owners)).toEqual(new Set(['north']));
  });

  it('gets no names of staff and no history', async () => {
    const north = await as('north@one.example');
    expect((await north.data('{ aircraft(id: "iso-plane") { dossier } }')).aircraft.dossier).toBeNull();
    expect(await north.problem('{ aircraft(id: "iso-plane") { history { totalCount } } }')).toMatchObject({
      code: 'FORBIDDEN',
    });
  });
});
