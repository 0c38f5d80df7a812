import { policyBodies } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { policyTexts, policyWords, standingOf } from './policy-words.js';

test('every policy that the rules know has its words', () => {
  expect(Object.keys(policyTexts).sort()).toEqual(Object.keys(policyBodies).sort());
});

test.each([
  ['reading-age', { days: 20, noticeDays: 10 }, 'A reading counts for 20 days; remarked on after 10 days'],
  ['reading-age', { days: 1, noticeDays: null }, 'A reading counts for 1 day'],
  ['day-count', { count: 'earlier' }, 'The 29th day after is the last'],
  ['day-count', { count: 'usual' }, 'The 30th day after is the last'],
  ['weak-source', { statuses: [], by: [] }, 'None wants a say-so'],
])('%s %j', (kind, body, words) => {
  expect(policyWords(kind, body)).toBe(words);
});

test('who may say so stands with what wants it', () => {
  const words = policyWords('weak-source', { statuses: ['from-memory', 'reading'], by: ['manager', 'technician'] });
  expect(words).toMatch(/: say-so of manager or technician$/);
});

const version = (number: number, from: string) => ({
  version: number,
  from,
  body: {},
  reason: 'agreed',
  setBy: 'Ada Brook',
  setAt: '2026-11-01T12:00Z',
});

test('one counts now, others are to come or replaced; a later word for an earlier day takes the place of one to come', () => {
  const versions = [4, 3, 2, 1].map((each) =>
    version(each, ['', '2026-01-01', '2026-03-01', '2026-12-24', '2026-12-20'][each] ?? ''),
  );
  const standing = standingOf({ kind: 'day-count', version: 4, inForce: 2, versions });
  expect(standing.now?.version).toBe(2);
  expect(standing.coming.map((each) => each.version)).toEqual([4]);
  expect(standing.earlier.map((each) => each.version)).toEqual([3, 1]);
});

test('before the first day nothing counts yet', () => {
  const standing = standingOf({ kind: 'day-count', version: 1, inForce: null, versions: [version(1, '2026-12-24')] });
  expect(standing).toMatchObject({ now: null, earlier: [] });
  expect(standing.coming).toHaveLength(1);
});
