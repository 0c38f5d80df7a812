import { describe, expect, test } from 'vitest';
import { CalculationError } from './errors.js';
import type { Recurrence } from './recurrence.js';
import { nextDue } from './recurrence.js';

const row = (change: Partial<Recurrence>): Recurrence => ({
  parts: [],
  combine: 'first',
  countFrom: 'done',
  toleranceFor: 'none',
  ...change,
});
const done = { doneDate: '2026-01-31', doneMeters: { tach: 123_400, landings: 900 } };

describe('the recurrence engine', () => {
  test.each([
    ['calendar-months', 24, '2028-01-31'],
    ['calendar-months', 1, '2026-02-28'],
    ['anniversary-months', 1, '2026-02-28'],
    ['anniversary-months', 12, '2027-01-31'],
    ['days', 30, '2026-03-02'],
  ] as const)('%s %i', (kind, count, lastGoodDay) => {
    expect(nextDue(row({ parts: [{ kind, count }] }), done).parts).toEqual([
      { kind: 'date', lastGoodDay, toleratedTo: null },
    ]);
  });

  test('hours, landings and a date, whichever comes last', () => {
    const found = nextDue(
      row({
        combine: 'last',
        parts: [
          { kind: 'hours', meter: 'tach', count: 10_000 },
          { kind: 'landings', meter: 'landings', count: 300 },
          { kind: 'calendar-months', count: 12 },
        ],
      }),
      done,
    );
    expect(found).toEqual({
      combine: 'last',
      toleranceFor: 'none',
      parts: [
        { kind: 'meter', meter: 'tach', at: 133_400, toleratedTo: null },
        { kind: 'meter', meter: 'landings', at: 1200, toleratedTo: null },
        { kind: 'date', lastGoodDay: '2027-01-31', toleratedTo: null },
      ],
    });
  });

  test.each([
    ['done', 123_400, 133_400],
    ['due', 123_400, 132_600],
    ['earlier', 123_400, 132_600],
    ['earlier', 121_000, 131_000],
    ['due', 121_000, 132_600],
  ] as const)('counted from %s: done at %i, due at 122,600', (countFrom, tach, at) => {
    const parts = [{ kind: 'hours', meter: 'tach', count: 10_000 }] as const;
    const found = nextDue(row({ countFrom, parts }), { ...done, doneMeters: { tach }, dueMeters: { tach: 122_600 } });
    expect(found.parts).toMatchObject([{ at }]);
  });

  test('dates too may count from due, and fall back on done where due is not known', () => {
    const parts = [{ kind: 'days', count: 30 }] as const;
    const found = (dueDate: string | null) => nextDue(row({ countFrom: 'due', parts }), { ...done, dueDate }).parts;
    expect(found('2026-01-01')).toMatchObject([{ lastGoodDay: '2026-01-31' }]);
    expect(found(null)).toMatchObject([{ lastGoodDay: '2026-03-02' }]);
  });

  test('a tolerance is shown with its purpose and vanishes without one', () => {
    const parts = [
      { kind: 'hours', meter: 'tach', count: 10_000, tolerance: 1000 },
      { kind: 'days', count: 30, tolerance: 5 },
    ] as const;
    expect(nextDue(row({ parts, toleranceFor: 'en-route' }), done)).toMatchObject({
      toleranceFor: 'en-route',
      parts: [
        { at: 133_400, toleratedTo: 134_400 },
        { lastGoodDay: '2026-03-02', toleratedTo: '2026-03-07' },
      ],
    });
    expect(nextDue(row({ parts }), done).parts).toMatchObject([{ toleratedTo: null }, { toleratedTo: null }]);
  });

  test('a meter that was not recorded is unknown, not zero', () => {
    const parts = [{ kind: 'hours', meter: 'hobbs', count: 5000 }] as const;
    expect(nextDue(row({ parts }), done).parts).toEqual([{ kind: 'unknown', meter: 'hobbs' }]);
  });

  test('a day that was not recorded is unknown', () => {
    const days = [{ kind: 'days', count: 30 }] as const;
    expect(nextDue(row({ parts: days }), { ...done, doneDate: null }).parts).toEqual([
      { kind: 'unknown', meter: null },
    ]);
  });

  test('a row without intervals or with an impossible one is refused', () => {
    expect(() => nextDue(row({}), done)).toThrow(/no interval/);
    for (const count of [0, -1, 1.5, NaN]) {
      expect(() => nextDue(row({ parts: [{ kind: 'days', count }] }), done)).toThrow(CalculationError);
    }
    const parts = [{ kind: 'days', count: 1, tolerance: -1 }] as const;
    expect(() => nextDue(row({ parts, toleranceFor: 'any' }), done)).toThrow(/parts\[0\]\.tolerance/);
  });
});

const byDone = { combine: 'first', countFrom: 'done', toleranceFor: 'any' } as const;

test('calendar months run to the end of a month, an anniversary keeps the day', () => {
  const after = (kind: 'calendar-months' | 'anniversary-months' | 'days') =>
    nextDue({ ...byDone, parts: [{ kind, count: 3 }] }, { doneDate: '2026-01-10', doneMeters: {} }).parts[0];
  expect(after('calendar-months')).toEqual({ kind: 'date', lastGoodDay: '2026-04-30', toleratedTo: null });
  expect(after('anniversary-months')).toEqual({ kind: 'date', lastGoodDay: '2026-04-10', toleratedTo: null });
  expect(after('days')).toEqual({ kind: 'date', lastGoodDay: '2026-01-13', toleratedTo: null });
});

test.each([
  ['done', 100, 90, 200],
  ['done', 100, undefined, 200],
  ['due', 100, 90, 190],
  ['due', 100, 110, 210],
  ['due', 100, undefined, 200],
  ['due', undefined, 90, 190],
  ['earlier', 100, 90, 190],
  ['earlier', 100, 110, 200],
  ['earlier', 100, undefined, 200],
] as const)('counted from %s, done at %s, due at %s: %i', (countFrom, doneAt, dueAt, at) => {
  const next = nextDue(
    { ...byDone, countFrom, parts: [{ kind: 'landings', meter: 'm', count: 100 }] },
    {
      doneDate: '2026-01-10',
      doneMeters: doneAt === undefined ? {} : { m: doneAt },
      dueMeters: dueAt === undefined ? {} : { m: dueAt },
    },
  );
  expect(next.parts).toEqual([{ kind: 'meter', meter: 'm', at, toleratedTo: null }]);
});

test('the earlier of when it was done and when it was due is not known while the one is not', () => {
  const next = nextDue(
    { ...byDone, countFrom: 'earlier', parts: [{ kind: 'landings', meter: 'm', count: 100 }] },
    { doneDate: '2026-01-10', doneMeters: {}, dueMeters: { m: 90 } },
  );
  expect(next.parts).toEqual([{ kind: 'unknown', meter: 'm' }]);
});

test('counted from done, a meter that nobody wrote down then is unknown although the due point is known', () => {
  const next = nextDue(
    { ...byDone, parts: [{ kind: 'hours', meter: 'm', count: 100 }] },
    { doneDate: '2026-01-10', doneMeters: {}, dueMeters: { m: 90 } },
  );
  expect(next.parts).toEqual([{ kind: 'unknown', meter: 'm' }]);
});

test('a tolerance of nought is none, and one that may be used for nothing is not looked at', () => {
  const part = { kind: 'days', count: 30, tolerance: 0 } as const;
  const last = { doneDate: '2026-01-10', doneMeters: {} };
  expect(nextDue({ ...byDone, parts: [part] }, last).parts).toMatchObject([{ toleratedTo: null }]);
  expect(nextDue({ ...byDone, parts: [{ ...part, tolerance: 5 }] }, last).parts).toMatchObject([
    { lastGoodDay: '2026-02-09', toleratedTo: '2026-02-14' },
  ]);
  expect(nextDue({ ...byDone, toleranceFor: 'none', parts: [{ ...part, tolerance: 5 }] }, last).parts).toMatchObject([
    { toleratedTo: null },
  ]);
});
