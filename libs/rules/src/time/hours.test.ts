import { describe, expect, test } from 'vitest';
import { TimeError } from './errors.js';
import { toCentihours, toDecimalHours } from './hours.js';

describe('hours in whole hundredths', () => {
  test('every tenth from 0 to 10,000 h goes there and back, and 100 h apart stays 100 h apart', () => {
    const wrong: number[] = [];
    for (let tenths = 0; tenths <= 100_000; tenths += 1) {
      const hours = tenths / 10;
      if (toCentihours(hours) !== tenths * 10 || toDecimalHours(tenths * 10) !== hours) wrong.push(hours);
      if (toCentihours((tenths + 1000) / 10) - toCentihours(hours) !== 10_000) wrong.push(hours);
    }
    expect(wrong).toEqual([]);
  });

  test('the noise of a sum is taken away', () => {
    expect(128.3 - 28.3).not.toBe(100);
    expect(toCentihours(128.3 - 100)).toBe(2830);
    expect(toCentihours(0.1 + 0.2)).toBe(30);
    expect(Object.is(toCentihours(-0), 0)).toBe(true);
  });

  test.each([NaN, Infinity, -0.01, 12.345, 0.001, 10_000_000.01])('%d hours are refused with the way out', (hours) => {
    expect(() => toCentihours(hours)).toThrow(TimeError);
    expect(() => toCentihours(hours)).toThrow(/Give|Round/);
  });

  test.each([0.5, NaN])('%d hundredths are refused', (centihours) => {
    expect(() => toDecimalHours(centihours)).toThrow(TimeError);
  });
});
