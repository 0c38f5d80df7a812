import { describe, expect, it } from 'vitest';
import { decisionOf, outcomeWords, progressWords } from './outcome-words.js';

const progress = (step: string, done: number, total: number) => ({ step, done, total });

describe('what came of an import', () => {
  it.each([
    ['LOADED', progress('loading', 44, 44), 'Loaded, all of it.'],
    ['CHECKED', progress('checking', 44, 44), 'Dry run done. Nothing was loaded.'],
    ['INTERRUPTED', progress('checking', 20, 44), 'It was stopped or cut off. Nothing was loaded.'],
    [
      'INTERRUPTED',
      progress('loading', 20, 44),
      'It was stopped or cut off. 20 aircraft of 44 are in, each whole; the same files again go on with the rest.',
    ],
    [
      'FAILED',
      progress('loading', 1, 44),
      'Something went wrong on our side. 1 aircraft of 44 is in, each whole; the same files again go on with the rest.',
    ],
  ] as const)('%s at %j', (state, at, words) => {
    expect(outcomeWords({ state, progress: at, report: null })).toBe(words);
  });

  it('says how far it is', () => {
    expect(progressWords(progress('loading', 40, 500))).toBe('Loading aircraft: 40 of 500');
    expect(progressWords(progress('reading', 0, 0))).toBe('Reading the files');
  });
});

describe('a decision', () => {
  const difference = { file: 'u.csv', line: 3, registration: 'TW-1A', field: 'serial', was: 'a', is: 'b', taken: null };

  it('is none where nothing differs', () => {
    expect(decisionOf({ differences: [] }, new Set(['u.csv:3']))).toBe('');
  });

  it('names the rows that are taken; with none ticked it still is one: all stays', () => {
    expect(decisionOf({ differences: [difference] }, new Set(['u.csv:3', 'gone.csv:1']))).toBe('["u.csv:3"]');
    expect(decisionOf({ differences: [difference] }, new Set())).toBe('[]');
  });
});
