import { expect, test } from 'vitest';
import { isFor, screensFor } from './screens.js';

test.each([
  ['/', ['fleet.read'], true],
  ['/audit', ['fleet.read'], false],
  ['/audit/', ['fleet.read'], false],
  ['/audit', ['audit.read'], true],
  // What is not in the navigation says itself whom it is for.
  ['/aircraft/tw-1', [], true],
  ['/catalogue/new', [], true],
  ['/sessions', [], true],
] as const)('%s with %j: %s', (path, may, shown) => {
  expect(isFor(path, may)).toBe(shown);
});

test('what the navigation offers is shown, and nothing else of it', () => {
  const may = ['fleet.read', 'rules.read'];
  const offered = screensFor(may).map(({ path }) => path);
  expect(offered).toEqual(['/', '/findings', '/due', '/databases', '/rules']);
  for (const path of offered) expect(isFor(path, may)).toBe(true);
});
