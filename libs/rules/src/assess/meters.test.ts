import { describe, expect, it } from 'vitest';
import type { Dossier } from '../dossier/dossier.js';
import { readingGoodForDays, hoursUntil, latestReading, metersAt, readingLimits } from './meters.js';

const meter = (id: string, perFlightHour: number) => ({
  id,
  name: id,
  kind: 'tachometer' as const,
  perFlightHour,
  offset: 0,
});
const reading = (value: number, asOf: string) => ({ value, asOf, by: 'Desk' });
const meters = (part: Partial<Dossier['meters']> = {}): Pick<Dossier, 'meters'> => ({
  meters: {
    definitions: [meter('tach', 800), meter('hobbs', 1000), meter('still', 0), meter('unread', 1000)],
    timeInService: 'tach',
    readings: {
      tach: reading(1000, '2026-03-01T12:00Z'),
      hobbs: reading(2000, '2026-03-02T12:00Z'),
      still: reading(30, '2026-03-01T11:59Z'),
    },
    utilisation: { perMonth: null, readingGoodForDays: 10 },
    ...part,
  },
});

describe('what meters show', () => {
  it('after hours of flight, rounded up, and until when that can be said', () => {
    expect(metersAt(meters(), 101)).toEqual({
      tach: { value: 1081, goodBefore: '2026-03-11T12:00Z' },
      hobbs: { value: 2101, goodBefore: '2026-03-12T12:00Z' },
      // Read a minute more than a day before the latest reading: not with the others.
      still: { value: 30, goodBefore: null },
    });
  });

  it('as if they will be read in time, but not where hours between readings are unknown', () => {
    expect(metersAt(meters(), 0, true)).toMatchObject({
      tach: { goodBefore: '9999-12-31T23:59Z' },
      still: { goodBefore: null },
    });
  });

  it('is nothing without a reading', () => {
    expect(metersAt(meters({ readings: {} }), 100)).toEqual({});
    expect(latestReading(meters({ readings: {} }))).toBeNull();
  });
});

it('readings grow old after the days of the house, or 31', () => {
  expect(readingLimits(meters(), undefined, 'UTC')).toEqual([
    '2026-03-11T12:00Z',
    '2026-03-12T12:00Z',
    '2026-03-11T11:59Z',
  ]);
  const usual = meters({ utilisation: { perMonth: null, readingGoodForDays: null } });
  expect(readingLimits(usual, undefined, 'UTC')[0]).toBe('2026-04-01T12:00Z');
  expect(readingGoodForDays(usual, null)).toBe(31);
  expect(readingGoodForDays(usual, 14)).toBe(14);
  expect(latestReading(meters())).toBe('2026-03-02T12:00Z');
});

it('flight hours until a limit are rounded down; none for a meter that stands still, was never read or does not exist', () => {
  expect(hoursUntil(meters(), 'tach', 1081)).toBe(101);
  expect(hoursUntil(meters(), 'hobbs', 1990)).toBe(-10);
  expect(['still', 'unread', 'nothing'].map((id) => hoursUntil(meters(), id, 5000))).toEqual([null, null, null]);
});
