import { expect, test } from 'vitest';
import { countWords, dateTimeWords, dateWords, hoursWords, idWords, listWords, withDates } from './words.js';

test('dates are written with the name of the month', () => {
  expect(dateWords('2026-12-03')).toBe('3 Dec 2026');
  expect(dateWords('2027-01-31T09:01Z')).toBe('31 Jan 2027');
  expect(dateTimeWords('2027-01-31T09:01')).toBe('31 Jan 2027 09:01');
});

test('what is not a date is not made into one', () => {
  expect(dateWords('2026-13-03')).toBe('2026-13-03');
  expect(dateWords('')).toBe('');
});

test('hours keep the hundredth only where there is one', () => {
  expect(hoursWords(1240)).toBe('12.4 h');
  expect(hoursWords(1245)).toBe('12.45 h');
  expect(hoursWords(0)).toBe('0.0 h');
  expect(hoursWords(-130)).toBe('-1.3 h');
});

test('lists and counts read as a sentence does', () => {
  expect(listWords([])).toBe('');
  expect(listWords(['a'])).toBe('a');
  expect(listWords(['a', 'b', 'c'])).toBe('a, b and c');
  expect(listWords(['a', 'b'], 'or')).toBe('a or b');
  expect(countWords(1, 'finding')).toBe('1 finding');
  expect(countWords(0, 'finding')).toBe('0 findings');
  expect(countWords(2, 'entry', 'entries')).toBe('2 entries');
  expect(idWords('STOPS_AIRCRAFT')).toBe('Stops aircraft');
});

test('dates inside a sentence are written out, everything else stays', () => {
  expect(withDates('Fell due: 2027-10-21 or 9050.2 h.')).toBe('Fell due: 21 Oct 2027 or 9050.2 h.');
  expect(withDates('Part 2027-10-2100 and 2027-10-21T09:01Z')).toBe('Part 2027-10-2100 and 2027-10-21T09:01Z');
});
