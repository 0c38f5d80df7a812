import { describe, expect, it } from 'vitest';
import { mechanic, recordOf } from '../../testing/builders.js';
import type { IntervalPart, Recurrence } from '../calculations/recurrence.js';
import { nextDue } from '../calculations/recurrence.js';
import type { RecordHead } from '../dossier/status.js';
import { met, notMet } from '../verdict/build.js';
import type { Counted } from './accomplished.js';
import { calendarMonthsFromDone } from './recurring.js';
import { lastOfSeries } from './series.js';

const every = (part: IntervalPart, countFrom: Recurrence['countFrom']): Recurrence => ({
  parts: [part],
  combine: 'first',
  countFrom,
  toleranceFor: 'none',
});
const counts = (record: RecordHead): Counted => ({ record, clause: met('entry-counts') });
const done = (on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'own-item', subjects: ['item'], on, agency: mechanic, ...part });
const at = (value: number, part: Partial<RecordHead> = {}) =>
  done('2026-03-01', { id: `at-${value}`, meters: [{ meter: 'tach', value }], ...part });

/** Newest entry first. */
function next(recurrence: Recurrence, newest: Counted, ...older: readonly Counted[]) {
  const { last, dueKnown } = lastOfSeries(recurrence, newest.record, older);
  const [part] = nextDue(recurrence, last).parts;
  return dueKnown ? (part?.kind === 'date' ? part.lastGoodDay : part?.kind === 'meter' ? part.at : null) : 'unknown';
}

describe('days: every 30, first done on 1 January, due on 31 January', () => {
  const thirty = { kind: 'days', count: 30 } as const;
  const first = counts(done('2026-01-01'));

  it.each([
    ['done', '2026-02-20', '2026-03-22'],
    ['due', '2026-02-20', '2026-03-02'],
    ['earlier', '2026-02-20', '2026-03-02'],
    ['done', '2026-01-20', '2026-02-19'],
    ['due', '2026-01-20', '2026-03-02'],
    ['earlier', '2026-01-20', '2026-02-19'],
    // 1 March is one day less than an interval late, 2 March an interval: the series begins anew.
    ['due', '2026-03-01', '2026-03-02'],
    ['due', '2026-03-02', '2026-04-01'],
  ] as const)('counted from %s, done on %s: good through %s', (countFrom, on, good) => {
    expect(next(every(thirty, countFrom), counts(done(on)), first)).toBe(good);
  });

  it('goes on from due to due', () => {
    const older = [done('2026-02-05'), done('2026-01-01')].map(counts);
    expect(next(every(thirty, 'due'), counts(done('2026-03-05')), ...older)).toBe('2026-04-01');
  });

  it('an entry that does not count is no predecessor', () => {
    const other = { record: done('2026-02-10'), clause: notMet('entry-counts') };
    expect(next(every(thirty, 'due'), counts(done('2026-02-20')), other, first)).toBe('2026-03-02');
  });

  it('the first that is recorded counts from when it was done', () => {
    expect(next(every(thirty, 'due'), counts(done('2026-02-20')))).toBe('2026-03-22');
  });
});

describe('hours and landings', () => {
  const hours = { kind: 'hours', meter: 'tach', count: 10_000 } as const;
  const landings = { kind: 'landings', meter: 'tach', count: 100 } as const;

  it.each([
    ['late on the way, with its due point', at(405_730, { enRoute: true, dueAt: 405_000 }), 415_000],
    ['late on the way, its due point not recorded: from the entry before', at(405_730, { enRoute: true }), 415_000],
    ['late, and nobody says why', at(405_730), 415_000],
    ['early', at(404_000), 414_000],
    ['on the point', at(405_000), 415_000],
    ['one hundredth less than an interval late', at(414_999), 415_000],
    ['an interval late: the series begins anew', at(415_000), 425_000],
  ])('%s', (_name, newest, expected) => {
    expect(next(every(hours, 'earlier'), counts(newest), counts(at(395_000)))).toBe(expected);
  });

  it('late on the way, and nothing says how far', () => {
    expect(next(every(hours, 'earlier'), counts(at(405_730, { enRoute: true })))).toBe('unknown');
  });

  it('landings have no figure in hours', () => {
    expect(next(every(landings, 'due'), counts(at(1_050, { dueAt: 900 })), counts(at(900)))).toBe(1_100);
  });
});

describe('hours and days, whichever comes first: every 100 h or 30 days, counted from due', () => {
  const both: Recurrence = {
    parts: [
      { kind: 'hours', meter: 'tach', count: 10_000 },
      { kind: 'days', count: 30 },
    ],
    combine: 'first',
    countFrom: 'due',
    toleranceFor: 'none',
  };
  const first = counts(done('2026-01-01', { meters: [{ meter: 'tach', value: 395_000 }] }));
  const second = (on: string, part: Partial<RecordHead> = {}) =>
    lastOfSeries(both, done(on, { meters: [{ meter: 'tach', value: 405_730 }], ...part }), [first]);
  const parts = ({ last }: ReturnType<typeof second>) => nextDue(both, last).parts;

  it('each counts on from its own due point', () => {
    expect(parts(second('2026-02-20'))).toMatchObject([{ at: 415_000 }, { lastGoodDay: '2026-03-02' }]);
  });

  it('the days begin anew where they are an interval late, the hours go on', () => {
    expect(parts(second('2026-03-02'))).toMatchObject([{ at: 415_000 }, { lastGoodDay: '2026-04-01' }]);
  });
});

it('late on the way, with the day that it was due known from the entry before', () => {
  const late = counts(done('2026-02-20', { enRoute: true }));
  expect(next(every({ kind: 'days', count: 30 }, 'due'), late, counts(done('2026-01-01')))).toBe('2026-03-02');
});

it('what counts from when it was done asks for no due point', () => {
  expect(next(calendarMonthsFromDone(12), counts(done('2026-02-20', { enRoute: true })))).toBe('2027-02-28');
});
