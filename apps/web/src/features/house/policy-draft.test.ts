import { expect, test } from 'vitest';
import { bodyOf, draftOf, numberProblem } from './policy-draft.js';

const policy = (body: unknown) => ({
  kind: 'reading-age',
  version: 1,
  inForce: 1,
  versions: [{ version: 1, from: '2026-01-01', body, reason: 'x', setBy: 'x', setAt: '2026-01-01T00:00Z' }],
});
const draft = draftOf(policy({ days: 20, noticeDays: 10 }), '2026-11-25');

test('a form begins with what was set last, a new day and no reason', () => {
  expect(draft).toMatchObject({ from: '2026-11-25', reason: '', days: '20', noticeDays: '10' });
  expect(draftOf({ kind: 'day-count', version: 0, inForce: null, versions: [] }, '2026-11-25')).toMatchObject({
    days: '31',
    noticeDays: '',
    count: 'usual',
    statuses: [],
    by: ['manager'],
  });
});

test('each kind sends its own part', () => {
  expect(bodyOf('reading-age', draft)).toEqual({ readingAge: { days: 20, noticeDays: 10 } });
  expect(bodyOf('reading-age', { ...draft, noticeDays: ' ' })).toEqual({ readingAge: { days: 20, noticeDays: null } });
  expect(bodyOf('day-count', { ...draft, count: 'earlier' })).toEqual({ dayCount: { count: 'earlier' } });
  expect(bodyOf('weak-source', { ...draft, statuses: ['reading'], by: ['manager'] })).toEqual({
    weakSource: { statuses: ['reading'], by: ['manager'] },
  });
});

test.each([
  ['20', '', null],
  ['20', '10', null],
  ['0', '', 'readingAge.days'],
  ['2.5', '', 'readingAge.days'],
  ['', '', 'readingAge.days'],
  ['20', 'ten', 'readingAge.noticeDays'],
])('days %j and notice %j', (days, noticeDays, field) => {
  expect(numberProblem({ ...draft, days, noticeDays })?.[0] ?? null).toBe(field);
});
