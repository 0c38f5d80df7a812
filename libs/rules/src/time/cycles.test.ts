import { describe, expect, test } from 'vitest';
import { databaseCycle, databaseCycleAt } from './cycles.js';
import { TimeError } from './errors.js';
import { civilDateOf, dayNumber } from './instant.js';

describe('cycles', () => {
  test('are total from 1990 to 2060 and refuse the days beside', () => {
    expect(databaseCycle('1990-01-01')).toEqual({ id: '8913', effective: '1989-12-14', next: '1990-01-11' });
    expect(databaseCycle('2005-06-01').id).toMatch(/^05\d\d$/);
    expect(databaseCycle('2060-12-31').id).toMatch(/^60/);
    for (const date of ['1989-12-31', '2061-01-01']) expect(() => databaseCycle(date)).toThrow(TimeError);
    expect(databaseCycleAt('1990-01-01T00:00Z').id).toBe('8913');
    expect(databaseCycleAt('2060-12-31T23:59Z').id).toMatch(/^60/);
    for (const instant of ['1989-12-31T23:59Z', '2061-01-01T00:00Z'])
      expect(() => databaseCycleAt(instant)).toThrow(
        expect.objectContaining({
          code: 'out-of-range',
          message: expect.stringMatching(/^\S+ lies outside 1990 to 2060/),
        }),
      );
  });

  test('each day lies from its cycle’s first day to before the next', () => {
    for (let day = dayNumber('1990-01-01'); day <= dayNumber('2060-12-31'); day += 1) {
      const date = civilDateOf(day);
      const { id, effective, next } = databaseCycle(date);
      if (!/^\d{4}$/.test(id) || !id.startsWith(effective.slice(2, 4))) expect.fail(`${date}: ${id}`);
      if (!(effective <= date && date < next && dayNumber(next) - dayNumber(effective) === 28)) expect.fail(date);
    }
  });

  test('no date at all is refused', () => {
    expect(() => databaseCycle('19 Feb 2026')).toThrow(TimeError);
    expect(() => databaseCycleAt('2026-02-19')).toThrow(TimeError);
  });
});
