import { describe, expect, it, test } from 'vitest';
import type { SheetMeter, SheetRow } from './query.js';
import { ageOf, batchesOf, blankEntry, judgeEntry, keyOf, lastDial, linesOf, type Entry } from './sheet.js';

const now = '2026-03-10T12:00Z';
const yesterday = '2026-03-09T12:00Z';

function meter(facts: Partial<SheetMeter> = {}): SheetMeter {
  return {
    id: 'tach',
    name: 'Tachometer',
    kind: 'tachometer',
    timeInService: true,
    perFlightHour: 1,
    offset: 0,
    hours: 1250.3,
    asOf: yesterday,
    goodBefore: '2026-04-09T12:00Z',
    ...facts,
  } as SheetMeter;
}

function row(facts: Partial<SheetRow> = {}, id = 'a'): SheetRow {
  return {
    aircraft: { id, registration: `TW-${id}`, base: { id: 'field', name: 'Field', zone: 'America/Chicago' } },
    revision: 7,
    hoursPerMonth: null,
    readingGoodForDays: 31,
    meters: [meter()],
    ...facts,
  } as SheetRow;
}

const judge = (
  dial: string,
  facts: { row?: Partial<SheetRow>; meter?: Partial<SheetMeter>; entry?: Partial<Entry> } = {},
) =>
  judgeEntry(
    { row: row(facts.row), meter: meter(facts.meter) },
    { ...blankEntry, dial, ...facts.entry },
    now,
    now,
    'A. Tester',
  );

describe('how old a reading is', () => {
  it.each([
    ['the minute before it grows too old', '2026-04-09T11:59Z', { state: 'good', days: 30 }],
    ['the minute it grows too old', '2026-04-09T12:00Z', { state: 'old', days: 31 }],
  ])('%s', (_name, at, expected) => {
    expect(ageOf(meter(), at)).toEqual(expected);
  });
  it('is not known of a meter never read, or not read with the others', () => {
    expect(ageOf(meter({ hours: null, asOf: null, goodBefore: null }), now)).toEqual({ state: 'never', days: null });
    expect(ageOf(meter({ goodBefore: null }), now)).toEqual({ state: 'behind', days: 1 });
  });
});

describe('a new reading', () => {
  it('is recorded as it was read', () => {
    const expected = { meterRead: { meter: 'tach', dial: 125_250, asOf: now, by: 'A. Tester' } };
    for (const dial of ['1252.5', ' 1252.50 ', '1252,5'])
      expect(judge(dial)).toEqual({ problem: null, questions: [], lower: false, change: expected });
    expect(judge('')).toEqual({ problem: null, questions: [], lower: false, change: null });
  });
  it.each(['12x', '1252.555', '-3', '1.252.5', '1 252'])('%s is no reading', (dial) => {
    expect(judge(dial)).toMatchObject({ problem: expect.stringContaining('not a reading'), change: null });
  });
  it('is of a time that has come, and not before the last one', () => {
    expect(judge('1251', { entry: { asOf: '2026-03-10T12:01Z' } }).problem).toMatch(/not come yet/);
    expect(judge('1251', { entry: { asOf: '2026-03-09T11:59Z' } }).problem).toBe(
      'The last reading is of 9 Mar 2026 07:00. Change when this one was read.',
    );
    expect(judge('1250.3', { entry: { asOf: yesterday } }).change).not.toBeNull();
  });
  it('is asked about when it is lower, and is then a correction with a reason', () => {
    expect(judge('1250.3').questions).toEqual([]);
    expect(judge('1250.2')).toMatchObject({ lower: true, change: null, problem: null });
    expect(judge('1250.2').questions).toEqual(['Lower than the last reading, 1250.3 h on this dial.']);
    expect(judge('1250.2', { entry: { sure: true, reason: ' ' } }).change).toBeNull();
    expect(judge('1250.2', { entry: { sure: false, reason: 'Misread' } }).change).toBeNull();
    expect(judge('1250.2', { entry: { sure: true, reason: ' Misread ' } }).change).toEqual({
      meterCorrect: { meter: 'tach', value: 125_020, asOf: now, by: 'A. Tester', reason: 'Misread' },
    });
  });
  it('is compared with the dial in place, not with the one before it', () => {
    const replaced = { offset: 1200, hours: 1250.3 };
    expect(judge('50.4', { meter: replaced }).change).toMatchObject({ meterRead: { dial: 5040 } });
    expect(judge('50.2', { meter: replaced }).questions).toEqual(['Lower than the last reading, 50.3 h on this dial.']);
    expect(judge('50.2', { meter: replaced, entry: { sure: true, reason: 'Misread' } }).change).toMatchObject({
      meterCorrect: { value: 125_020 },
    });
    expect(lastDial(meter(replaced))).toBe('50.3 h');
    expect(judge('0.1', { meter: { offset: -10, hours: null, asOf: null } }).problem).toMatch(/below zero/);
  });
  it('is asked about above 24 hours a day, at the pace of the meter', () => {
    expect(judge('1274.3').questions).toEqual([]);
    expect(judge('1274.31').questions).toEqual(['24.01 h in 1 day: more than 24 hours a day.']);
    expect(judge('1274.31', { entry: { sure: true } }).change).not.toBeNull();
    const fast = { perFlightHour: 1.2 };
    expect(
      [judge('1279.1', { meter: fast }), judge('1279.11', { meter: fast })].map((each) => each.questions.length),
    ).toEqual([0, 1]);
    const slow = { perFlightHour: 0.5 };
    expect(
      [judge('1274.3', { meter: slow }), judge('1274.31', { meter: slow })].map((each) => each.questions.length),
    ).toEqual([0, 1]);
    // Landings are no hours.
    expect(judge('1290', { meter: { kind: 'landings' } }).questions).toEqual([]);
  });
  it('is asked about when it is far above the recorded use', () => {
    // 30.44 h a month is 1 h a day: up to three times that and 5 h nothing is asked.
    const use = { row: { hoursPerMonth: 30.44 } };
    expect(judge('1258.3', use).questions).toEqual([]);
    expect(judge('1258.31', use).questions).toEqual([
      '8.01 h in 1 day: the recorded use (30.44 h a month) makes it about 1.0 h.',
    ]);
    const meterAtDouble = { ...use, meter: { perFlightHour: 2 } };
    expect(
      [judge('1266.3', meterAtDouble), judge('1266.31', meterAtDouble)].map((each) => each.questions.length),
    ).toEqual([0, 1]);
  });
  it('is asked about when a busy aircraft hardly flew', () => {
    // 10 days at 1 h a day.
    const since = { row: { hoursPerMonth: 30.44 }, meter: { asOf: '2026-02-28T12:00Z' } };
    expect(judge('1251.3', since).questions).toEqual([]);
    expect(judge('1251.29', since).questions[0]).toMatch(/^Only 0\.99 h in 10 days/);
    expect(judge('1250.3', { ...since, meter: { asOf: '2026-02-28T13:00Z' } }).questions).toEqual([]);
  });
  it('is not asked about when the meter was never read', () => {
    expect(judge('9999', { meter: { hours: null, asOf: null }, row: { hoursPerMonth: 10 } }).questions).toEqual([]);
  });
});

test('what is typed becomes one piece of work an aircraft, and waits where something is open', () => {
  const two = row({ meters: [meter(), meter({ id: 'hobbs', name: 'Hour meter' })] });
  const other = row({ revision: 9 }, 'b');
  const entry = (dial: string): Entry => ({ ...blankEntry, dial });
  const entries = {
    [keyOf('a', 'tach')]: entry('1251'),
    [keyOf('a', 'hobbs')]: entry('1252'),
    [keyOf('b', 'tach')]: entry('1'),
    [keyOf('gone', 'tach')]: entry('5'),
  };
  const batches = batchesOf([two, other, row({}, 'c')], entries, now, now, 'A. Tester');
  expect(batches.map(({ row: { aircraft }, changes, open }) => [aircraft.id, changes.length, open])).toEqual([
    ['a', 2, []],
    ['b', 0, ['b tach']],
  ]);
  const mark = (typed: typeof entries, asOf: string, at: string) => batchesOf([two], typed, asOf, at, 'A')[0]?.mark;
  // A minute later it is still the same request; with another reading or another time of the sheet it is not.
  expect(mark(entries, '2026-03-10T12:01Z', '2026-03-10T12:01Z')).toBe(batches[0]?.mark);
  expect(mark({ ...entries, 'a tach': entry('1251.1') }, now, now)).not.toBe(batches[0]?.mark);
  expect(mark(entries, yesterday, now)).not.toBe(batches[0]?.mark);
});

test('an aircraft without a meter has a line all the same; else time in service comes first', () => {
  const hourMeter = meter({ id: 'hobbs', timeInService: false });
  const lines = linesOf([row({ meters: [] }), row({ meters: [hourMeter, meter()] }, 'b')]);
  expect(lines.map(({ key, meter: each }) => [key, each?.id])).toEqual([
    ['a', undefined],
    ['b tach', 'tach'],
    ['b hobbs', 'hobbs'],
  ]);
});
