import { expect, test } from 'vitest';
import { sortRows } from './table-sort.js';

const rows = [{ v: 'b10' }, { v: null }, { v: 'b9' }, { v: 'a' }];

test('numbers inside text sort as numbers', () => {
  expect(sortRows(rows, (r) => r.v, false).map((r) => r.v)).toEqual(['a', 'b9', 'b10', null]);
});

test('a row without a value is last in both directions', () => {
  expect(sortRows(rows, (r) => r.v, true).map((r) => r.v)).toEqual(['b10', 'b9', 'a', null]);
});

test('equal rows keep their order and the input is left alone', () => {
  const same = [
    { v: 1, n: 'x' },
    { v: 1, n: 'y' },
  ];
  expect(sortRows(same, (r) => r.v, true).map((r) => r.n)).toEqual(['x', 'y']);
  expect(rows[0]?.v).toBe('b10');
});
