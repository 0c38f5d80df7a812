import { describe, expect, test } from 'vitest';
import { addDays, anniversary, compareDates, daysBetween, lastGoodDay } from './calendar.js';
import { TimeError } from './errors.js';

describe('calendar months', () => {
  test('the day of the month does not matter', () => {
    expect(['2025-01-01', '2025-01-15', '2025-01-31'].map((done) => lastGoodDay(done, 12))).toEqual(
      Array(3).fill('2026-01-31'),
    );
  });

  test('no months is the end of the month itself; a hundred years is the most', () => {
    expect(lastGoodDay('2026-02-03', 0)).toBe('2026-02-28');
    expect(lastGoodDay('2026-02-03', 1200)).toBe('2126-02-28');
  });

  test.each([-1, 1.5, NaN, Infinity, 1201])('%d months are refused', (months) => {
    expect(() => lastGoodDay('2026-02-03', months)).toThrow(TimeError);
    expect(() => anniversary('2026-02-03', months)).toThrow(/0 to 1200/);
    expect(() => lastGoodDay('2026-02-03', months)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
  });

  test('a day that does not exist is refused', () => {
    expect(() => lastGoodDay('2026-02-30', 12)).toThrow(TimeError);
  });
});

describe('anniversaries', () => {
  test('keep the day, or take the last day of the month', () => {
    expect(anniversary('2026-03-15', 12)).toBe('2027-03-15');
    expect(anniversary('2024-02-29', 12)).toBe('2025-02-28');
    expect(anniversary('2026-01-31', 1)).toBe('2026-02-28');
    expect(anniversary('2026-12-31', 2)).toBe('2027-02-28');
  });
});

describe('days', () => {
  test('over ends of months and years', () => {
    expect(addDays('2026-01-31', 30)).toBe('2026-03-02');
    expect(addDays('2028-01-31', 30)).toBe('2028-03-01');
    expect(addDays('2026-01-01', -1)).toBe('2025-12-31');
    expect(daysBetween('2026-01-01', '2026-04-01')).toBe(90);
    for (const days of [0.5, NaN, 2 ** 53])
      expect(() => addDays('2026-01-01', days)).toThrow(
        expect.objectContaining({ code: 'out-of-range', message: expect.stringMatching(/Give a whole number/) }),
      );
  });

  test('compare', () => {
    expect(compareDates('2026-01-02', '2026-01-01')).toBeGreaterThan(0);
    expect(compareDates('2025-12-31', '2026-01-01')).toBeLessThan(0);
    expect(compareDates('2026-01-01', '2026-01-01')).toBe(0);
  });
});
