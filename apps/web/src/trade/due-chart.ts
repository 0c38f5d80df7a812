import type { ChartData } from '../ui/chart-data.js';
import { countWords, dateWords } from '../ui/words.js';
import { codeWords } from './words.js';

export interface DueWeekLike {
  readonly week: string;
  readonly topic: string;
  readonly certain: number;
  readonly projected: number;
}

const colours = ['1', '2', '3', '4', '5', '6'] as const;
const patterns = ['solid', 'lines', 'dots', 'cross', 'hollow'] as const;

/** What falls due by week, stacked by topic. Used wherever that is drawn, so that a topic keeps its pattern. */
export function dueByWeekChart(entries: readonly DueWeekLike[]): ChartData {
  const topics = [...new Set(entries.map((each) => each.topic))].sort();
  const projected = entries.reduce((sum, each) => sum + each.projected, 0);
  return {
    title: 'Due by week',
    summary: `By calendar or by hours at the recorded use; ${countWords(projected, 'date is', 'dates are')} projected from hours.`,
    rowsName: 'Week of',
    series: topics.map((topic, index) => ({
      key: topic,
      name: codeWords(topic),
      colour: `var(--series-${colours[index % colours.length] ?? '1'})`,
      pattern: patterns[index % patterns.length] ?? 'solid',
    })),
    rows: rowsByWeek(entries, (each) => [each.topic, each.certain + each.projected]),
  };
}

/** One row a week, in order of time; entries of one week are put together. */
export function rowsByWeek<T extends { readonly week: string }>(
  entries: readonly T[],
  value: (entry: T) => readonly [string, number],
) {
  const weeks = new Map<string, Record<string, number>>();
  for (const entry of entries) {
    const [key, count] = value(entry);
    weeks.set(entry.week, { ...weeks.get(entry.week), [key]: count });
  }
  return [...weeks]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([week, values]) => ({ key: week, label: dateWords(week).replace(/ \d{4}$/, ''), values }));
}
