import { expect, it } from 'vitest';
import { TimeError } from '../time/errors.js';
import { dateTimeWords, dateWords, whenWords } from './dates.js';

it('dates are written with the name of the month', () => {
  expect(dateWords('2026-12-03')).toBe('3 Dec 2026');
  expect(dateWords('2027-01-31T09:01Z')).toBe('31 Jan 2027');
  expect(dateTimeWords('2027-01-31T09:01')).toBe('31 Jan 2027 09:01');
  expect(dateTimeWords('2027-01-31')).toBe('31 Jan 2027');
});

it('what is not a date is not made into one', () => {
  for (const text of ['2026-13-03', '2026-00-03', 'since 2026-12-03', '12026-12-03', ''])
    expect(dateWords(text)).toBe(text);
});

it('a moment is told in the time of the base; the start of its day is the day', () => {
  expect(whenWords('2026-03-19T09:01Z', 'America/Denver')).toBe('19 Mar 2026 03:01');
  expect(whenWords('2026-03-19T06:00Z', 'America/Denver')).toBe('19 Mar 2026');
  expect(whenWords('2026-03-19T06:01Z', 'America/Denver')).toBe('19 Mar 2026 00:01');
  expect(() => whenWords('2026-03-19', 'America/Denver')).toThrow(TimeError);
});
