import { expect, test } from 'vitest';
import { angleBetween } from './angles.js';
import { floorTo, roundTo } from './rounding.js';

test('halves go away from zero though binary fractions hold them just below', () => {
  expect([roundTo(2.675, 2), roundTo(-2.675, 2), roundTo(1.005, 2), roundTo(0.5, 0), roundTo(-0.4, 0)]).toEqual([
    2.68, -2.68, 1.01, 1, 0,
  ]);
  expect(Object.is(roundTo(-0.4, 0), 0)).toBe(true);
});

test('floors do not lose a value that is whole at the precision', () => {
  expect([floorTo(39.6825, 2), floorTo(0.29, 2), floorTo(1.1 * 1.1, 2)]).toEqual([39.68, 0.29, 1.21]);
});

test('angles go the short way round', () => {
  expect([angleBetween(359, 1), angleBetween(0, 360), angleBetween(90, 270), angleBetween(10, 10.1)]).toEqual([
    2, 0, 180, 0.1,
  ]);
});
