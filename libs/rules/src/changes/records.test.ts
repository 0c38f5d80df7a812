import { describe, expect, it } from 'vitest';
import { recordOf } from '../../testing/builders.js';
import { keepHeads, newestFirst, orderOf } from './records.js';

const entry = (id: string, on: string, at: string | null = null, subjects: readonly string[] = ['aircraft']) =>
  recordOf({ kind: 'compass-swing', on, id, done: { date: on, at }, subjects: [...subjects] });

describe('newest first', () => {
  it.each([
    ['by day', entry('a', '2026-03-02'), entry('b', '2026-03-01')],
    [
      'by day, whatever the time',
      entry('a', '2026-03-02', '2026-03-02T01:00Z'),
      entry('b', '2026-03-01', '2026-03-01T23:00Z'),
    ],
    [
      'by time on one day',
      entry('a', '2026-03-02', '2026-03-02T15:00Z'),
      entry('b', '2026-03-02', '2026-03-02T09:00Z'),
    ],
    ['by id where one has no time', entry('b', '2026-03-02', '2026-03-02T09:00Z'), entry('a', '2026-03-02')],
    ['by id where the other has none', entry('b', '2026-03-02'), entry('a', '2026-03-02', '2026-03-02T09:00Z')],
    ['by id where neither has', entry('b', '2026-03-02'), entry('a', '2026-03-02')],
    ['by id at one time', entry('b', '2026-03-02', '2026-03-02T09:00Z'), entry('a', '2026-03-02', '2026-03-02T09:00Z')],
  ])('%s', (_, newer, older) => {
    expect([older, newer].sort(newestFirst)).toEqual([newer, older]);
    expect([newer, older].sort(newestFirst)).toEqual([newer, older]);
  });
});

it.each([
  ['2026-03-02', null, '2026-03-01', null, 'later'],
  ['2026-03-01', null, '2026-03-02', null, 'earlier'],
  ['2026-03-02', '2026-03-02T15:00Z', '2026-03-02', '2026-03-02T09:00Z', 'later'],
  ['2026-03-02', '2026-03-02T09:00Z', '2026-03-02', '2026-03-02T15:00Z', 'earlier'],
  ['2026-03-02', '2026-03-02T09:00Z', '2026-03-02', '2026-03-02T09:00Z', 'unknown'],
  ['2026-03-02', '2026-03-02T09:00Z', '2026-03-02', null, 'unknown'],
  ['2026-03-02', null, '2026-03-02', '2026-03-02T09:00Z', 'unknown'],
  ['2026-03-02', null, '2026-03-02', null, 'unknown'],
])('%s at %s against %s at %s: %s', (date, at, otherDate, otherAt, order) => {
  expect(orderOf({ date, at }, { date: otherDate, at: otherAt })).toBe(order);
});

describe('heads that are kept', () => {
  const days = [1, 2, 3, 4, 5, 6].map((day) => entry(`r${day}`, `2026-01-0${day}`));
  const owed = (closedBy: string | null) => ({
    id: 'owed',
    what: 'compass-swing' as const,
    subject: 'aircraft',
    since: { date: '2026-01-01', at: null },
    becauseOf: 'work.done',
    touched: null,
    closedBy,
  });
  const kept = (records: Parameters<typeof keepHeads>[0], obligations: Parameters<typeof keepHeads>[1] = []) =>
    keepHeads(records, obligations).map(({ id }) => id);

  it('are the four newest, in their order', () => {
    expect(kept(days)).toEqual(['r3', 'r4', 'r5', 'r6']);
    expect(kept(days.toReversed())).toEqual(['r6', 'r5', 'r4', 'r3']);
  });

  it('and any older one that answers what a change left owing', () => {
    expect(kept(days, [owed('r1'), owed(null)])).toEqual(['r1', 'r3', 'r4', 'r5', 'r6']);
  });

  it('are counted for each kind and subject, and one of several subjects is enough', () => {
    const two = entry('both', '2025-01-01', null, ['aircraft', 'gps1']);
    const other = recordOf({ kind: 'controls-check', on: '2024-01-01', id: 'other' });
    expect(kept([...days, two, other])).toEqual(['r3', 'r4', 'r5', 'r6', 'both', 'other']);
  });
});
