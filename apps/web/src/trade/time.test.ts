import { localTimeAt } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { instantAt, whenWords } from './time.js';

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

test('words use the time of the base', () => {
  expect(whenWords('2026-12-03T21:05Z', 'America/Denver')).toBe('3 Dec 2026 14:05');
});
