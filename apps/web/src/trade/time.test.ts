import { localTimeAt } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { instantAt, untilWords } from './time.js';

test('a local time and its instant are the same moment, in summer and winter', () => {
  for (const local of ['2026-01-15T08:00', '2026-07-15T08:00', '2026-03-08T12:00', '2026-11-01T12:00']) {
    for (const zone of ['America/Denver', 'Pacific/Honolulu', 'Europe/Berlin', 'UTC']) {
      const instant = instantAt(local, zone);
      expect(instant && localTimeAt(instant, zone), `${local} ${zone}`).toBe(local);
    }
  }
});

test('a time that the clocks leave out moves past the gap', () => {
  const instant = instantAt('2026-03-08T02:30', 'America/Denver');
  expect(instant && localTimeAt(instant, 'America/Denver')).toBe('2026-03-08T03:30');
});

test('a time that happens twice is the first of the two', () => {
  expect(instantAt('2026-11-01T01:30', 'America/Denver')).toBe('2026-11-01T07:30Z');
});

test('text that is no time gives none', () => {
  expect(instantAt('', 'UTC')).toBeNull();
  expect(instantAt('2026-02-31T25:00', 'UTC')).toBeNull();
});

test('what ends with a day holds through it; anything else until its minute', () => {
  expect(untilWords('2027-07-01T06:00Z', 'America/Denver')).toBe('through 30 Jun 2027');
  expect(untilWords('2026-12-25T21:00Z', 'America/Denver')).toBe('until 25 Dec 2026 14:00');
  expect(untilWords('2027-01-01T07:00Z', 'America/Denver', '2026-11-25T12:00Z')).toBe('through 31 Dec');
  expect(untilWords('2027-01-01T08:00Z', 'America/Denver', '2026-11-25T12:00Z')).toBe('until 1 Jan 2027 01:00');
});
