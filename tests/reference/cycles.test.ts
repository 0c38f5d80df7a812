import { describe, expect, test } from 'vitest';
import { databaseCycle, databaseCycleAt } from '../../libs/rules/src/time/cycles.js';
import { civilDateOf, dayNumber } from '../../libs/rules/src/time/instant.js';

/** First cycle of each year, the rest follow every 28 days. All of 2020 and 28 Jan 2021: a State's published table. */
const firstOfYear = {
  2020: ['2020-01-02', 14],
  2021: ['2021-01-28', 13],
  2022: ['2022-01-27', 13],
  2023: ['2023-01-26', 13],
  2024: ['2024-01-25', 13],
  2025: ['2025-01-23', 13],
  2026: ['2026-01-22', 13],
  2027: ['2027-01-21', 13],
  2028: ['2028-01-20', 13],
} as const;

const published2020 = [
  '2020-01-02',
  '2020-01-30',
  '2020-02-27',
  '2020-03-26',
  '2020-04-23',
  '2020-05-21',
  '2020-06-18',
  '2020-07-16',
  '2020-08-13',
  '2020-09-10',
  '2020-10-08',
  '2020-11-05',
  '2020-12-03',
  '2020-12-31',
];

/** 56-day dates named by FAA publications, 10 Aug 2023 to 24 Dec 2026, with their cycles. */
const fiftySixDays: Record<string, string> = {
  '2023-08-10': '2308',
  '2023-10-05': '2310',
  '2023-11-30': '2312',
  '2024-01-25': '2401',
  '2024-03-21': '2403',
  '2024-05-16': '2405',
  '2024-07-11': '2407',
  '2024-09-05': '2409',
  '2024-10-31': '2411',
  '2024-12-26': '2413',
  '2025-02-20': '2502',
  '2025-04-17': '2504',
  '2025-06-12': '2506',
  '2025-08-07': '2508',
  '2025-10-02': '2510',
  '2025-11-27': '2512',
  '2026-01-22': '2601',
  '2026-03-19': '2603',
  '2026-05-14': '2605',
  '2026-07-09': '2607',
  '2026-09-03': '2609',
  '2026-10-29': '2611',
  '2026-12-24': '2613',
};

describe('28-day cycles, ICAO Annex 15 6.2', () => {
  test('all fourteen dates of 2020 as published', () => {
    expect(published2020.map((date) => databaseCycle(date))).toEqual(
      published2020.map((effective, i) => ({
        id: `20${String(i + 1).padStart(2, '0')}`,
        effective,
        next: published2020[i + 1] ?? '2021-01-28',
      })),
    );
  });

  test.each(Object.entries(firstOfYear))('%s: first date, count and numbers of the year', (year, [first, count]) => {
    const numbers = Array.from({ length: count }, (_, i) => {
      const cycle = databaseCycle(civilDateOf(dayNumber(first) + 28 * i));
      expect(cycle.effective.slice(0, 4)).toBe(year);
      return cycle.id;
    });
    expect(numbers).toEqual(numbers.map((_, i) => year.slice(2) + String(i + 1).padStart(2, '0')));
    expect(databaseCycle(civilDateOf(dayNumber(first) - 1)).id.slice(0, 2)).not.toBe(year.slice(2));
    expect(databaseCycle(civilDateOf(dayNumber(first) + 28 * count)).id.slice(2)).toBe('01');
  });

  test.each(Object.entries(fiftySixDays))('the 56-day date %s is %s', (date, id) => {
    expect(databaseCycle(date)).toMatchObject({ id, effective: date });
  });

  test('0901Z dates of FAA airspace rules (81 FR 65535, 82 FR 25959, 82 FR 45713) lie on the grid', () => {
    for (const date of ['2016-11-10', '2017-06-22', '2017-08-17', '2017-12-07']) {
      expect(databaseCycle(date).effective).toBe(date);
    }
  });

  test('years with fourteen cycles are 1998, 2020 and 2043 (two public implementations agree)', () => {
    const years = new Map<string, number>();
    for (let day = dayNumber('1990-01-01'); day <= dayNumber('2060-12-31'); day += 1) {
      const date = civilDateOf(day);
      if (databaseCycle(date).effective === date) years.set(date.slice(0, 4), (years.get(date.slice(0, 4)) ?? 0) + 1);
    }
    expect([...years].filter(([, count]) => count === 14).map(([year]) => year)).toEqual(['1998', '2020', '2043']);
    expect([...years].filter(([, count]) => count !== 14 && count !== 13)).toEqual([]);
  });

  test('the old cycle is in force until 0901Z of the effective date', () => {
    expect(databaseCycleAt('2026-02-19T09:00Z').id).toBe('2601');
    expect(databaseCycleAt('2026-02-19T09:01Z').id).toBe('2602');
    expect(databaseCycle('2026-02-19').id).toBe('2602');
    expect(databaseCycleAt('2020-01-02T09:00Z')).toEqual({ id: '1913', effective: '2019-12-05', next: '2020-01-02' });
  });
});
