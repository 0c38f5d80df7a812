import { describe, expect, it } from 'vitest';
import { defaultConditions } from '../verdict/conditions.js';
import type { Horizon, Window } from '../verdict/result.js';
import { timeline } from './timeline.js';

const from = '2026-03-01T00:00Z';
const middle = '2026-03-11T00:00Z';
const to = '2026-03-31T00:00Z';
const window = (part: Partial<Window>): Window => ({
  operation: 'flight',
  ready: 'yes',
  standing: 'judged',
  by: [],
  because: [],
  weakestSource: null,
  from,
  to,
  above: -1,
  upTo: null,
  endsBecause: [],
  ...part,
});
const horizonOf = (...windows: readonly Window[]): Horizon => ({ from, to, conditions: defaultConditions, windows });

/** Good for ten hours; beyond them not. 43.83 hours a month are one hundredth of an hour every ten minutes. */
const limited = horizonOf(
  window({ upTo: 1000, because: ['hours'] }),
  window({ above: 1000, ready: 'no', because: ['hours'] }),
);
const everyTenMinutes = 4383;

describe('along a projected use', () => {
  it('the hours put a date on the end: with the first hundredth beyond them', () => {
    // 1,001 hundredths take 10,010 minutes: six days, 22 hours and 50 minutes.
    expect(timeline(limited, everyTenMinutes)).toEqual([
      {
        from,
        to: '2026-03-07T22:50Z',
        ready: 'yes',
        standing: 'judged',
        because: [],
        endsBecause: ['hours'],
        projected: true,
      },
      {
        from: '2026-03-07T22:50Z',
        to,
        ready: 'no',
        standing: 'judged',
        because: ['hours'],
        endsBecause: [],
        projected: false,
      },
    ]);
  });

  it.each([null, 0])('with a use of %s it stays at the present hours', (perMonth) => {
    expect(timeline(limited, perMonth)).toMatchObject([{ from, to, ready: 'yes', projected: false }]);
  });

  it('an edge of time that comes first is certain, and says why', () => {
    const windows = horizonOf(
      window({ to: middle, upTo: 5000, endsBecause: ['check'] }),
      window({ from: middle, ready: 'no', because: ['check'] }),
    );
    expect(timeline(windows, everyTenMinutes)).toMatchObject([
      { from, to: middle, projected: false, endsBecause: ['check'] },
      { from: middle, to, ready: 'no', because: ['check'] },
    ]);
  });

  it('what gets better is not ended by anything', () => {
    const better = horizonOf(
      window({ upTo: 1000, ready: 'no', because: ['hours'] }),
      window({ above: 1000, because: ['later'] }),
    );
    expect(timeline(better, everyTenMinutes)[0]).toMatchObject({ ready: 'no', endsBecause: [], projected: true });
  });

  it('a band of hours ends because of the next band, not of one further on', () => {
    const bands = [
      window({ upTo: 1000 }),
      window({ above: 1000, upTo: 1500, ready: 'no', because: ['next'] }),
      window({ above: 1500, ready: 'no', because: ['further on'] }),
    ];
    const expected = [['next'], ['further on'], []];
    expect(timeline(horizonOf(...bands), everyTenMinutes).map((each) => each.endsBecause)).toEqual(expected);
    // In whatever order the windows come.
    expect(timeline(horizonOf(...bands.toReversed()), everyTenMinutes).map((each) => each.endsBecause)).toEqual(
      expected,
    );
  });

  it('windows of another time do not count, in whatever order they come', () => {
    const windows = [
      window({ to: middle, ready: 'no', because: ['a'] }),
      window({ from: middle, ready: 'no', because: ['b'] }),
    ];
    const reasons = [['a'], ['b']];
    expect(timeline(horizonOf(...windows), null).map((each) => each.because)).toEqual(reasons);
    expect(timeline(horizonOf(...windows.toReversed()), null).map((each) => each.because)).toEqual(reasons);
  });

  it('beyond what the horizon tells there is nothing', () => {
    expect(timeline(horizonOf(window({ upTo: 1000 })), everyTenMinutes)).toEqual([
      expect.objectContaining({ from, to: '2026-03-07T22:50Z', endsBecause: [] }),
    ]);
    expect(timeline(horizonOf(), 100)).toEqual([]);
  });

  it('flying so much that a minute passes a limit still goes on by a minute', () => {
    const steep = horizonOf(
      window({ upTo: 0, because: ['a'], ready: 'no' }),
      window({ above: 0, upTo: 1, because: ['b'], ready: 'no' }),
      window({ above: 1, because: ['c'], ready: 'no' }),
    );
    expect(timeline(steep, 43_830 * 10).map((each) => [each.from, each.because])).toEqual([
      [from, ['a']],
      ['2026-03-01T00:01Z', ['c']],
    ]);
  });
});

describe('stretches that say the same', () => {
  const two = (part: Partial<Window>) =>
    timeline(
      horizonOf(
        window({ to: middle, ready: 'no', because: ['hold'], endsBecause: ['first'] }),
        window({ from: middle, ready: 'no', because: ['hold'], endsBecause: ['second'], ...part }),
      ),
      null,
    );

  it('are one, which ends as the last does', () => {
    expect(two({})).toEqual([
      expect.objectContaining({ from, to, ready: 'no', because: ['hold'], endsBecause: ['second'] }),
    ]);
  });

  it.each<[string, Partial<Window>]>([
    ['answer', { ready: 'cannot-tell' }],
    ['standing', { standing: 'held' }],
    ['reason', { because: ['other'] }],
  ])('are two where the %s is another', (_, part) => {
    expect(two(part).map((each) => each.from)).toEqual([from, middle]);
  });
});
