import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { addDays, anniversary, daysBetween, lastGoodDay } from '../../libs/rules/src/time/calendar.js';
import { civilDateOf, dayNumber, isCivilDate } from '../../libs/rules/src/time/instant.js';

const counts = Array.from({ length: 60 }, (_, i) => i + 1);

/** Every day from 1 January 1990 to 31 December 2060, by the reference library. */
const days: string[] = [];
for (let day = Temporal.PlainDate.from('1990-01-01'); day.year <= 2060; day = day.add({ days: 1 })) {
  days.push(day.toString());
}

describe('civil dates against Temporal, every day 1990 to 2060', () => {
  test('each day follows the one before', () => {
    const start = dayNumber('1990-01-01');
    const wrong = days.filter(
      (day, i) => !isCivilDate(day) || dayNumber(day) !== start + i || civilDateOf(start + i) !== day,
    );
    expect(days).toHaveLength(25_933);
    expect(wrong).toEqual([]);
  });

  test('calendar months run to the end of the month: every day, counts 1 to 60', () => {
    const ends = new Map<string, string[]>();
    for (let month = Temporal.PlainYearMonth.from('1990-01'); month.year <= 2060; month = month.add({ months: 1 })) {
      ends.set(
        month.toString(),
        counts.map((count) => {
          const later = month.add({ months: count });
          return later.toPlainDate({ day: later.daysInMonth }).toString();
        }),
      );
    }
    const wrong: string[] = [];
    for (const day of days) {
      const expected = ends.get(day.slice(0, 7)) ?? [];
      for (const count of counts) {
        const found = lastGoodDay(day, count);
        if (found !== expected[count - 1]) wrong.push(`${day} + ${count}: ${found}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test('anniversaries: the ends of every month with counts 1 to 60, every day with 12 and 24', () => {
    const wrong: string[] = [];
    for (const day of days) {
      const reference = Temporal.PlainDate.from(day);
      const edge = reference.day === 1 || reference.day > 27;
      for (const count of edge ? counts : [12, 24]) {
        if (anniversary(day, count) !== reference.add({ months: count }).toString()) wrong.push(`${day} + ${count}`);
      }
    }
    expect(wrong).toEqual([]);
  }, 30_000);

  test('days: every day with 1, 28, 30, 90 and 365 days, and back', () => {
    const wrong: string[] = [];
    for (const [i, day] of days.entries()) {
      for (const count of [1, 28, 30, 90, 365]) {
        const expected = days[i + count];
        if (expected === undefined) continue;
        const found = addDays(day, count);
        if (found !== expected || daysBetween(day, found) !== count || addDays(found, -count) !== day) wrong.push(day);
      }
    }
    expect(wrong).toEqual([]);
  });
});

describe('published and worked calendar examples', () => {
  test.each([
    ['annual done 15 Jun 2009: flyable through 30 Jun 2010 (training page, secondary)', '2009-06-15', 12, '2010-06-30'],
    ['annual 10 Feb 2023', '2023-02-10', 12, '2024-02-29'],
    ['91.411 test 10 Feb 2023', '2023-02-10', 24, '2025-02-28'],
    ['annual 29 Feb 2024', '2024-02-29', 12, '2025-02-28'],
    ['ELT inspected 3 Mar 2026 (91.207(d))', '2026-03-03', 12, '2027-03-31'],
    ['condition inspection 5 Jul 2026 (91.327(b)(2))', '2026-07-05', 12, '2027-07-31'],
    ['annual 1 Jan 2025', '2025-01-01', 12, '2026-01-31'],
    ['annual 31 Jan 2025', '2025-01-31', 12, '2026-01-31'],
    ['91.411 leap 10 Feb 2022', '2022-02-10', 24, '2024-02-29'],
  ])('%s', (_name, done, months, expected) => {
    expect(lastGoodDay(done, months)).toBe(expected);
  });

  test.each([
    ['VOR check 31 Jan 2026, 30 days (91.171)', '2026-01-31', 30, '2026-03-02'],
    ['VOR check 1 Feb 2028, 30 days (91.171)', '2028-02-01', 30, '2028-03-02'],
    ['ELT removed 1 Jan 2026, 90 days (91.207(f)(10))', '2026-01-01', 90, '2026-04-01'],
  ])('%s', (_name, done, count, expected) => {
    expect(addDays(done, count)).toBe(expected);
  });
});
