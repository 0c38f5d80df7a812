import { describe, expect, it } from 'vitest';
import * as form from './forms.js';
import { CellProblem } from './problems.js';

function refused(read: () => unknown): string {
  try {
    read();
  } catch (error) {
    if (error instanceof CellProblem) return error.reason;
    throw error;
  }
  return 'taken';
}

describe('dates', () => {
  it.each([
    ['2026-03-01', '2026-03-01'],
    ['2026/3/1', '2026-03-01'],
    ['2026.03.01', '2026-03-01'],
    ['1 Mar 2026', '2026-03-01'],
    ['01-MARCH-2026', '2026-03-01'],
    ['2024-02-29', '2024-02-29'],
  ])('%s is %s', (cell, day) => {
    expect(form.date.read(cell)).toBe(day);
  });

  it.each([
    ['2026-02-29', 'There is no day 2026-02-29.'],
    ['2026-13-01', 'There is no day 2026-13-01.'],
    ['31 Apr 2026', 'There is no day 31 Apr 2026.'],
    ['03/07/2026', 'It is not certain which part is the day.'],
    ['13/14/2026', 'It is not certain which part is the day.'],
    ['1/3/26', 'It is not certain which part is the day.'],
    ['46082', "This looks like a spreadsheet's day number."],
    ['2026', 'The day is missing.'],
    ['2026-03', 'The day is missing.'],
    ['1 Foo 2026', '1 Foo 2026 names no month.'],
    ['0026-03-01', '0026-03-01 lies outside anything this record can hold.'],
    ['soon', 'This is not a day.'],
  ])('%s is refused', (cell, reason) => {
    expect(refused(() => form.date.read(cell))).toBe(reason);
  });

  it('reads a time, and a day alone as noon', () => {
    expect(form.instant.read('2026-03-01T14:30Z')).toBe('2026-03-01T14:30Z');
    expect(form.instant.read('2026-03-01 9:05')).toBe('2026-03-01T09:05Z');
    expect(form.instant.read('1 Mar 2026')).toBe('2026-03-01T12:00Z');
    expect(refused(() => form.instant.read('2026-03-01T24:00Z'))).toBe('There is no such time.');
  });
});

describe('hours', () => {
  it.each([
    ['1234.5', 123_450],
    ['1,234.5', 123_450],
    ['1234,5', 123_450],
    ['0.29', 29],
    ['0', 0],
    ['200000', 20_000_000],
  ])('%s is %i hundredths', (cell, hundredths) => {
    expect(form.hours.read(cell)).toBe(hundredths);
  });

  it.each([
    ['-0.1', 'Hours cannot be negative.'],
    ['200000.01', 'That is more hours than an aircraft can have.'],
    ['12.345', 'Hours have at most two decimals.'],
    ['12:30', 'Hours and minutes are not decimal hours.'],
    ['1.234,5', 'This is not a number.'],
    ['1e3', 'This is not a number.'],
  ])('%s is refused', (cell, reason) => {
    expect(refused(() => form.hours.read(cell))).toBe(reason);
  });
});

describe('words', () => {
  const kinds = form.word(['annual-inspection', 'vor-check']);
  it('does not mind letter case, blanks and underscores', () => {
    expect(['Annual Inspection', 'VOR_check', 'vor-check'].map((cell) => kinds.read(cell))).toEqual([
      'annual-inspection',
      'vor-check',
      'vor-check',
    ]);
  });

  it('names the words there are', () => {
    expect(refused(() => kinds.read('oil'))).toBe('oil is not a word of this list.');
  });

  it('reads lists by blanks or bars, each word once', () => {
    expect(form.words(['com', 'gnss']).read('com | GNSS com')).toEqual(['com', 'gnss']);
  });

  it('reads yes and no, and nothing else', () => {
    expect(['yes', 'Y', 'TRUE', '1', 'no', 'n', 'False', '0'].map((cell) => form.yesNo.read(cell))).toEqual([
      true,
      true,
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
    expect(refused(() => form.yesNo.read('maybe'))).toBe('This is neither yes nor no.');
  });
});
