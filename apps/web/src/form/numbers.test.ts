import { expect, test } from 'vitest';
import { hoursText, readHours } from '../trade/hours.js';
import { gaugeText, numberText, readGauge, readNumber } from './numbers.js';

test('numbers are read as typed, and what is none stays as it was typed', () => {
  expect(readNumber(' 12.5 ')).toBe(12.5);
  expect(readNumber('-30')).toBe(-30);
  expect(readNumber('\u221230')).toBe(-30);
  expect(readNumber('12.')).toBe(12);
  expect(readNumber('')).toBeNull();
  expect(readNumber('12,5')).toBe('12,5');
  expect(readNumber('1e3')).toBe('1e3');
});

test('hours become whole hundredths without passing through a fraction', () => {
  expect(readHours('1234.5')).toBe(123450);
  expect(readHours('28.29')).toBe(2829);
  expect(readHours('7')).toBe(700);
  expect(readHours('7.')).toBe(700);
  expect(readHours('1.234')).toBe('1.234');
  expect(readHours('-1')).toBe('-1');
  expect(readHours('')).toBeNull();
});

test('a wire larger than size 1 is written as the trade writes it', () => {
  expect(['2/0', '00', '0', '20', '-1', ''].map(readGauge)).toEqual([-1, -1, 0, 20, -1, null]);
  expect(readGauge('2/')).toBe('2/');
  expect([-3, 0, 1, 24, null, '2/'].map(gaugeText)).toEqual(['4/0', '1/0', '1', '24', '', '2/']);
});

test('what is shown reads back to the same value', () => {
  for (const hours of [0, 5, 10, 123450, 2829]) expect(readHours(hoursText(hours))).toBe(hours);
  for (const gauge of [24, 1, 0, -3]) expect(readGauge(gaugeText(gauge))).toBe(gauge);
  for (const number of [0, -3, 12.25]) expect(readNumber(numberText(number))).toBe(number);
});
