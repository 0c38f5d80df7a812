import { expect, test } from 'vitest';
import { TimeError } from '../time/errors.js';
import { nextHundredHour } from './hundred-hour.js';

test('ten hours beyond on the way to the inspection are allowed, a hundredth more is not', () => {
  expect(nextHundredHour({ due: 650, done: 660, enRoute: true })).toEqual({ next: 750, overflown: 10, allowed: true });
  expect(nextHundredHour({ due: 650, done: 660.01, enRoute: true })).toEqual({
    next: 750,
    overflown: 10.01,
    allowed: false,
  });
});

test('on the due point there is no excess, on the way or not', () => {
  expect(nextHundredHour({ due: 650, done: 650, enRoute: false })).toEqual({ next: 750, overflown: 0, allowed: true });
  expect(nextHundredHour({ due: 650, done: 650.01, enRoute: false })).toEqual({
    next: 750,
    overflown: 0.01,
    allowed: false,
  });
});

test('tenths do not drift', () => {
  expect(nextHundredHour({ due: 128.3, done: 28.3, enRoute: false })).toEqual({
    next: 128.3,
    overflown: 0,
    allowed: true,
  });
});

test.each([
  { due: -1, done: 0, enRoute: false },
  { due: 100, done: NaN, enRoute: false },
  { due: 100.123, done: 100, enRoute: false },
])('%o is refused', (input) => {
  expect(() => nextHundredHour(input)).toThrow(TimeError);
});
