import { describe, expect, test } from 'vitest';
import { TimeError } from './errors.js';
import { civilDateOf, dayNumber, instantOf, isCivilDate, isInstant, minutesOf, partsOf } from './instant.js';

describe('civil dates', () => {
  test.each(['2026-02-28', '2024-02-29', '2000-02-29', '0001-01-01', '9999-12-31'])('%s is a day', (date) => {
    expect(isCivilDate(date)).toBe(true);
    expect(civilDateOf(dayNumber(date))).toBe(date);
  });

  test.each([
    '2026-02-29',
    '1900-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-4-03',
    '2026-04-00',
    '2026/04-03',
    '2026-04/03',
    '202:-04-03',
    '202/-04-03',
    '2026-1a-03',
    '2026-01-0 ',
    '0000-01-01',
    '20260101',
    '2026-01-01T',
    '',
    'today',
    null,
    20260101,
  ])('%s is none', (text) => {
    expect(isCivilDate(text)).toBe(false);
    expect(() => dayNumber(text as string)).toThrow(TimeError);
  });

  test('the message names the text and the way out', () => {
    expect(() => partsOf('2026-02-29')).toThrow(
      expect.objectContaining({ code: 'not-a-date', message: expect.stringMatching(/^"2026-02-29" .*YYYY-MM-DD/) }),
    );
    expect(() => dayNumber('x'.repeat(60))).toThrow(`"${'x'.repeat(40)}" is not a calendar day`);
    expect(() => dayNumber(null as unknown as string)).toThrow(/^null is not a calendar day/);
  });

  test('1 January 1970 is day 0, and the years end at 9999', () => {
    expect(dayNumber('1970-01-01')).toBe(0);
    expect(dayNumber('1969-12-31')).toBe(-1);
    expect(() => civilDateOf(dayNumber('9999-12-31') + 1)).toThrow(/0001 to 9999/);
    expect(civilDateOf(dayNumber('0001-01-01'))).toBe('0001-01-01');
    expect(() => civilDateOf(dayNumber('0001-01-01') - 1)).toThrow(/^Day -719163 lies outside/);
    expect(() => civilDateOf(0.5)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
    expect(() => civilDateOf(NaN)).toThrow(TimeError);
  });
});

describe('instants', () => {
  test.each([
    ['1970-01-01T00:00Z', 0],
    ['1969-12-31T23:59Z', -1],
    ['2026-02-19T09:01Z', 29_524_861],
    ['1970-01-01T23:59Z', 1439],
  ])('%s is minute %i', (instant, minutes) => {
    expect(isInstant(instant)).toBe(true);
    expect(minutesOf(instant)).toBe(minutes);
    expect(instantOf(minutes)).toBe(instant);
  });

  test.each([
    '2026-02-19T24:00Z',
    '2026-02-19T09:60Z',
    '2026-02-19T09:01',
    '2026-02-19T09:01:00Z',
    '2026-02-30T00:00Z',
    '2026-02-19 09:01Z',
    '2026-02-19T09-01Z',
    '2026-02-19T09:01X',
    '2026-02-19T0a:01Z',
    '2026-02-19T09:0aZ',
    '2026-02-19T09:01Z ',
    '',
    null,
    29_524_861,
    [...'2026-02-19T09:01Z'],
  ])('%s is none', (text) => {
    expect(isInstant(text)).toBe(false);
    expect(() => minutesOf(text as string)).toThrow(
      expect.objectContaining({ code: 'not-an-instant', message: expect.stringMatching(/^.*YYYY-MM-DDTHH:MMZ/) }),
    );
  });
});
