import { expect, test } from 'vitest';
import { presentSeries, rowTotal, type ChartData } from './chart-data.js';

const data: ChartData = {
  title: 't',
  summary: 's',
  rowsName: 'Week',
  series: [
    { key: 'a', name: 'A', colour: 'var(--yes)', pattern: 'solid' },
    { key: 'b', name: 'B', colour: 'var(--no)', pattern: 'lines' },
  ],
  rows: [
    { key: '1', label: 'one', values: { a: 2, b: 0 } },
    { key: '2', label: 'two', values: { a: 3 } },
  ],
};

test('a series that never occurs is not drawn and not named', () => {
  expect(presentSeries(data).map((s) => s.key)).toEqual(['a']);
});

test('totals count what is there', () => {
  expect(data.rows.map(rowTotal)).toEqual([2, 3]);
});
