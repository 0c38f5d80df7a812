import { expect, it } from 'vitest';
import { circuitOf } from '../../testing/builders.js';
import type { Circuit } from '../dossier/installation.js';
import { effectsOf } from './circuits.js';

it.each<[string, Partial<Circuit>, string]>([
  ['nobody looked at', {}, 'nothing'],
  ['of which a load is recorded', { loadA: 2 }, 'plan release'],
  ['of which it is recorded when it is used', { usedIn: [] }, 'plan release'],
  [
    'of which the ampacity is recorded',
    { ampacity: { by: 'table', freeAirA: null, bundleFactor: null, altitudeFactor: null } },
    'plan release',
  ],
])('a circuit %s stops %s', (_, part, stops) => {
  expect(
    effectsOf(circuitOf({ id: 'c', ...part }))
      .map((each) => each.stops)
      .join(' '),
  ).toBe(stops);
});
