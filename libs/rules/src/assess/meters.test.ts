import { describe, expect, it } from 'vitest';
import type { Dossier } from '../dossier/dossier.js';
import type { Policy } from '../catalogue/policy.js';
import { policyAt } from '../catalogue/policy.js';
import { instantOf, minutesOf } from '../time/instant.js';
import { readingEnds, readingGoodForDays, hoursUntil, latestReading, metersAt, readingLimits } from './meters.js';

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

describe('until when a reading carries limits', () => {
  const policy = (version: number, from: string, days: number): Policy => ({
    kind: 'reading-age',
    version,
    from,
    body: { days, noticeDays: null },
  });
  const usual = meters({ utilisation: { perMonth: null, readingGoodForDays: null } });
  // tach was read on 1 March at 12:00.
  const ends = (...policies: readonly Policy[]) => readingEnds(usual, 'tach', policies, 'UTC');

  it.each<readonly [string, readonly Policy[], string]>([
    ['31 days where no policy is set', [], '2026-04-01T12:00Z'],
    ['as a policy of before says', [policy(1, '2026-01-01', 10)], '2026-03-11T12:00Z'],
    ['as a policy of its own day says, which counts from midnight', [policy(1, '2026-03-01', 40)], '2026-04-10T12:00Z'],
    ['31 days where the policy comes when it has ended', [policy(1, '2026-04-02', 10)], '2026-04-01T12:00Z'],
    ['to the day of a policy that asks for less than has passed', [policy(1, '2026-03-20', 10)], '2026-03-20T00:00Z'],
    ['longer by a policy that comes before its end', [policy(1, '2026-03-20', 60)], '2026-04-30T12:00Z'],
    [
      'by the later of two, which asks for less',
      [policy(1, '2026-01-01', 60), policy(2, '2026-03-20', 25)],
      '2026-03-26T12:00Z',
    ],
    [
      'by the first of two where it ends before the second comes',
      [policy(1, '2026-01-01', 5), policy(2, '2026-03-20', 60)],
      '2026-03-06T12:00Z',
    ],
    [
      'until the second comes, of which too many days have passed',
      [policy(1, '2026-01-01', 60), policy(2, '2026-03-20', 5)],
      '2026-03-20T00:00Z',
    ],
  ])('%s', (_, policies, end) => {
    expect(ends(...policies)).toBe(end);
    for (const [at, good] of [
      [-1, true],
      [0, false],
    ] as const) {
      const instant = instantOf(minutesOf(end) + at);
      const days = policyAt(policies, 'reading-age', instant, 'UTC')?.body.days ?? null;
      expect(instant < (metersAt(usual, 0, false, days)['tach']?.goodBefore ?? '')).toBe(good);
    }
    expect(readingLimits(usual, policies, 'UTC')).toContain(end);
  });

  it('without a gap where the policy that lets it count longer begins as the old count ends', () => {
    // Midnight of 2 April in Fiji is noon of the day before, UTC.
    expect(readingEnds(usual, 'tach', [policy(1, '2026-04-02', 60)], 'Pacific/Fiji')).toBe('2026-04-30T12:00Z');
    expect(readingEnds(usual, 'tach', [policy(1, '2026-04-03', 60)], 'Pacific/Fiji')).toBe('2026-04-01T12:00Z');
  });

  it('never, of a meter without a reading or not read with the others', () => {
    for (const meter of ['unread', 'nothing', 'still']) expect(readingEnds(usual, meter, [], 'UTC')).toBeNull();
    const loose = meters({ readings: { loose: reading(1, '2026-03-01T12:00Z') } });
    expect(readingEnds(loose, 'loose', [], 'UTC')).toBeNull();
  });

  it('changes at the end by each policy and at the day of each', () => {
    expect(readingLimits(meters(), [policy(1, '2026-03-05', 5)], 'UTC')).toEqual([
      '2026-03-11T12:00Z',
      '2026-03-06T12:00Z',
      '2026-03-12T12:00Z',
      '2026-03-07T12:00Z',
      '2026-03-11T11:59Z',
      '2026-03-06T11:59Z',
      '2026-03-05T00:00Z',
    ]);
  });
});
