import { expect, test } from 'vitest';
import { CalculationError } from './errors.js';
import { viewAngle } from './view.js';

test('straight ahead is 0, as far off as away is 45', () => {
  expect(viewAngle({ offsetIn: 0, distanceIn: 30 })).toBe(0);
  expect(viewAngle({ offsetIn: 30, distanceIn: 30 })).toBe(45);
  expect(viewAngle({ offsetIn: -30, distanceIn: 30 })).toBe(-45);
});

test.each([
  { offsetIn: 1, distanceIn: 0 },
  { offsetIn: NaN, distanceIn: 30 },
  { offsetIn: 1, distanceIn: -30 },
])('%o is refused', (input) => {
  expect(() => viewAngle(input)).toThrow(CalculationError);
});
