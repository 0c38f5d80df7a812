import { describe, expect, it } from 'vitest';
import type { Judged } from '../../trade/effect.js';
import { settledBy, settledWords } from './settled.js';

const judged = (...flights: readonly Readonly<Record<string, string>>[]): Judged =>
  ({
    byProfile: flights.map((outcomes) => ({
      results: Object.entries(outcomes).map(([key, outcome]) => ({ key, outcome })),
    })),
  }) as unknown as Judged;

describe('what is settled', () => {
  it.each([
    ['an answer that is well now', judged({ a: 'cannot-tell' }), judged({ a: 'met' }), 1, 0],
    ['one that is not met now', judged({ a: 'cannot-tell' }), judged({ a: 'not-met' }), 0, 1],
    ['one that is no longer asked', judged({ a: 'cannot-tell' }), judged({}), 1, 0],
    [
      'nothing that still cannot be told for a flight',
      judged({ a: 'cannot-tell' }, { a: 'cannot-tell' }),
      judged({ a: 'met' }, { a: 'cannot-tell' }),
      0,
      0,
    ],
    ['nothing that could be told before', judged({ a: 'met' }), judged({ a: 'not-met' }), 0, 0],
    [
      'badly what is not met for one flight',
      judged({ a: 'cannot-tell' }, { a: 'met' }),
      judged({ a: 'not-met' }, { a: 'met' }),
      0,
      1,
    ],
  ] as const)('%s', (_, before, after, well, badly) => {
    expect(settledBy(before, after)).toEqual({ well, badly });
  });

  it.each([
    [0, 0, 'This would settle no answer by itself.'],
    [1, 0, 'This would settle 1 answer.'],
    [0, 1, 'This would settle 1 answer, as not met.'],
    [3, 2, 'This would settle 5 answers, 2 of them as not met.'],
  ])('%i well, %i not: %s', (well, badly, words) => {
    expect(settledWords({ well, badly })).toBe(words);
  });
});
