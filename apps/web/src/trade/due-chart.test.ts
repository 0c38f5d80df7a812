import { expect, test } from 'vitest';
import { dueByWeekChart, mondayOf, rowsByWeek } from './due-chart.js';

const due = (week: string, topic: string, certain: number, projected = 0) => ({ week, topic, certain, projected });

test('weeks with nothing due are drawn, what is overdue stands before them', () => {
  const chart = dueByWeekChart(
    [due('1963-08-26', 'INSPECTIONS', 1), due('2026-11-16', 'DATABASES', 2), due('2026-12-07', 'INSPECTIONS', 3, 1)],
    '2026-11-23',
  );
  expect(chart.rows.map((row) => [row.label, row.values])).toEqual([
    ['Overdue', { INSPECTIONS: 1, DATABASES: 2 }],
    ['23 Nov', {}],
    ['30 Nov', {}],
    ['7 Dec', { INSPECTIONS: 4 }],
  ]);
  expect(chart.summary).toContain('1 date is projected');
});

test('a far date does not stretch the chart without end, and nothing due draws nothing', () => {
  expect(dueByWeekChart([due('2099-01-05', 'INSPECTIONS', 1)], '2026-11-23').rows).toHaveLength(27);
  expect(dueByWeekChart([], '2026-11-23').rows).toEqual([]);
});

test('weeks begin on Monday', () => {
  expect(['2026-11-23', '2026-11-25', '2026-11-29', '2027-01-01'].map(mondayOf)).toEqual([
    '2026-11-23',
    '2026-11-23',
    '2026-11-23',
    '2026-12-28',
  ]);
});

test('entries of one week are one row, in order of time', () => {
  const rows = rowsByWeek(
    [
      { week: '2026-11-30', n: 1 },
      { week: '2026-11-23', n: 2 },
    ],
    (each) => [`k${each.n}`, each.n],
  );
  expect(rows.map((row) => row.label)).toEqual(['23 Nov', '30 Nov']);
});
