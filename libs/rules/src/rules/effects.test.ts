import { expect, it } from 'vitest';
import { capabilitiesOf } from './effects.js';

it('a function that carries no capability costs none', () => {
  expect(capabilitiesOf('audio')).toEqual([]);
  expect(capabilitiesOf('gs-receiver')).toEqual(['approach-ils']);
});
