import { describe, expect, test } from 'vitest';
import { TimeError } from './errors.js';
import { minutesOf } from './instant.js';
import { civilDateAt, isZone, offsetAt, startOfDay, startOfDayAfter, zoneDataVersion, zoneNames } from './zones.js';

describe('zones', () => {
  test('every zone answers, in whole minutes within 15 hours of UTC, and begins each month', () => {
    const wrong: string[] = [];
    for (const zone of zoneNames) {
      for (const date of ['1990-01-01', '2011-12-31', '2026-07-01', '2061-12-31']) {
        const start = startOfDay(date, zone);
        if (civilDateAt(start, zone) !== date) wrong.push(`${zone} ${date}`);
        const offset = offsetAt(zone, minutesOf(start));
        if (!Number.isInteger(offset) || Math.abs(offset) > 900) wrong.push(`${zone} ${offset}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(zoneNames.length).toBeGreaterThan(400);
    expect(zoneDataVersion).toMatch(/^20\d\d[a-z]$/);
  });

  test('a day of change has 23, 25 or 23.5 hours', () => {
    const hours = (date: string, zone: string) =>
      (minutesOf(startOfDayAfter(date, zone)) - minutesOf(startOfDay(date, zone))) / 60;
    expect(hours('2026-03-08', 'America/Denver')).toBe(23);
    expect(hours('2026-11-01', 'America/Denver')).toBe(25);
    expect(hours('2026-11-02', 'America/Denver')).toBe(24);
    expect(hours('2026-10-04', 'Australia/Lord_Howe')).toBe(23.5);
    expect(hours('2026-03-08', 'America/Phoenix')).toBe(24);
  });

  test.each(['', 'Denver', 'america/denver', 'EST5EDT|', null])('%s is no zone', (name) => {
    expect(isZone(name)).toBe(false);
    expect(() => offsetAt(name as string, 0)).toThrow(TimeError);
    expect(() => offsetAt(name as string, 0)).toThrow(
      expect.objectContaining({
        name: 'TimeError',
        code: 'not-a-zone',
        message: expect.stringMatching(/^".*" is no zone.*America\/Denver/),
      }),
    );
  });
});
