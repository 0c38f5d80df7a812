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

  test.each<readonly [unknown, RegExp]>([
    [NaN, /NaN is not a number of hours. Give decimal hours/],
    [Infinity, /Infinity is not a number of hours/],
    ['12', /12 is not a number of hours/],
    [null, /null is not a number of hours/],
    [-0.01, /-0.01 hours is out of range. Give hours from 0 to 10000000/],
    [10_000_000.01, /out of range/],
    [12.345, /12.345 hours has more than two decimals. Round it/],
    [0.001, /more than two decimals/],
  ])('%s hours are refused with the way out', (hours, wayOut) => {
    expect(() => toCentihours(hours as number)).toThrow(TimeError);
    expect(() => toCentihours(hours as number)).toThrow(
      expect.objectContaining({ code: 'not-hours', message: expect.stringMatching(wayOut) }),
    );
  });

  test('none and the most are hours', () => {
    expect([toCentihours(0), toCentihours(10_000_000)]).toEqual([0, 1_000_000_000]);
  });

  test.each([0.5, NaN])('%d hundredths are refused', (centihours) => {
    expect(() => toDecimalHours(centihours)).toThrow(
      expect.objectContaining({
        code: 'not-hours',
        message: `${centihours} is not a whole number of hundredths of an hour.`,
      }),
    );
  });
});
