import { expect, test } from 'vitest';
import { alikeMoves } from './alike.js';
import type { AircraftMove } from './query.js';

const same = (id: string): AircraftMove => ({
  aircraft: { id, registration: id.toUpperCase() },
  units: [],
  verdicts: [],
  capabilities: [],
  opened: [],
  closed: [],
  refused: [],
});
const loses = (id: string, capability: string): AircraftMove => ({
  ...same(id),
  capabilities: [{ capability, was: 'MET', is: 'NOT_MET' }],
  // The keys of two aircraft differ by the ids of their units; what is said does not.
  opened: [{ key: `rule|${id}`, outcome: 'NOT_MET', text: 'The radio lacks its companion.' }],
});

test('aircraft that change alike stand together, the unchanged ones last', () => {
  const moves = [same('a'), loses('b', 'nav-gnss'), loses('c', 'nav-vor'), same('d'), loses('e', 'nav-gnss')];
  expect(alikeMoves(moves).map((group) => group.map(({ aircraft }) => aircraft.id))).toEqual([
    ['b', 'e'],
    ['c'],
    ['a', 'd'],
  ]);
});
