import { expect, it } from 'vitest';
import { angleBetween } from './angles.js';
import { antennaDragLb, distanceBetween } from './antenna.js';

it.each([
  ['along and across', { xIn: 30, yIn: 4 }, { xIn: 0, yIn: -36 }, 50],
  ['to a tenth', { xIn: 0, yIn: 0 }, { xIn: 1, yIn: 1 }, 1.4],
  ['on the last inch that an aircraft has', { xIn: 10_000, yIn: 0 }, { xIn: -10_000, yIn: 0 }, 20_000],
  ['beyond it', { xIn: 10_000.1, yIn: 0 }, { xIn: 0, yIn: 0 }, null],
  ['ahead beyond it', { xIn: 0, yIn: 0 }, { xIn: 0, yIn: -10_000.1 }, null],
  ['one place along not recorded', { xIn: null, yIn: 0 }, { xIn: 0, yIn: 0 }, null],
  ['one place across not recorded', { xIn: 0, yIn: 0 }, { xIn: 0, yIn: null }, null],
])('distance between antennas, %s', (_, one, other, inches) => {
  expect(distanceBetween(one, other)).toBe(inches);
});

it.each([
  [{ frontalAreaSqFt: -0.1, neverExceedMph: 100 }, 'frontalAreaSqFt'],
  [{ frontalAreaSqFt: 100.1, neverExceedMph: 100 }, 'frontalAreaSqFt'],
  [{ frontalAreaSqFt: 1, neverExceedMph: -1 }, 'neverExceedMph'],
  [{ frontalAreaSqFt: 1, neverExceedMph: 1000.1 }, 'neverExceedMph'],
])('drag of %j is refused', (input, field) => {
  expect(() => antennaDragLb(input)).toThrow(expect.objectContaining({ field }) as Error);
});

it('drag grows with the square of the speed', () => {
  const at = (neverExceedMph: number) => antennaDragLb({ frontalAreaSqFt: 1, neverExceedMph });
  expect(at(0)).toBe(0);
  expect(at(200) / at(100)).toBeCloseTo(4, 2);
});

it.each([
  [359, 1, 2],
  [1, 359, 2],
  [0, 180, 180],
  [10, 191, 179],
  [725, 5, 0],
  [0, 0.1234, 0.123],
])('between %d and %d lie %d degrees', (a, b, degrees) => {
  expect(angleBetween(a, b)).toBe(degrees);
});
