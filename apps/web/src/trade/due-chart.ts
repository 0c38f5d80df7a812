import { codeWords, dateWords } from '@tallywing/rules';
import type { ChartData, ChartRow } from '../ui/chart-data.js';
import { countWords } from '../ui/words.js';

export interface DueWeekLike {
  readonly week: string;
  readonly topic: string;
  readonly certain: number;
  readonly projected: number;
}

const colours = ['1', '2', '3', '4', '5', '6'] as const;
const patterns = ['solid', 'lines', 'dots', 'cross', 'hollow'] as const;

/** Longest stretch drawn: past it the bars say nothing any more, and the list is there. */
const mostWeeks = 27;

/**
 * What falls due by week, stacked by topic, from the week of `monday` on; what is overdue stands before it. Used wherever
 * that is drawn, so that a topic keeps its pattern.
 */
export function dueByWeekChart(entries: readonly DueWeekLike[], monday: string): ChartData {
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
    rows: dueRows(entries, monday),
  };
}

function dueRows(entries: readonly DueWeekLike[], monday: string): ChartRow[] {
  const sums = (some: readonly DueWeekLike[]) => {
    const values: Record<string, number> = {};
    for (const each of some) values[each.topic] = (values[each.topic] ?? 0) + each.certain + each.projected;
    return values;
  };
  const overdue = entries.filter((each) => each.week < monday);
  const last = entries.reduce((latest, each) => (each.week > latest ? each.week : latest), monday);
  const rows: ChartRow[] = overdue.length === 0 ? [] : [{ key: 'overdue', label: 'Overdue', values: sums(overdue) }];
  if (entries.length === 0) return rows;
  for (let week = monday, n = 0; week <= last && n < mostWeeks; week = daysAfter(week, 7), n += 1) {
    rows.push({ key: week, label: shortDate(week), values: sums(entries.filter((each) => each.week === week)) });
  }
  return rows;
}

/** The Monday of the week that a civil date lies in. */
export function mondayOf(date: string): string {
  const at = new Date(`${date}T00:00Z`);
  return daysAfter(date, -((at.getUTCDay() + 6) % 7));
}

function daysAfter(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

function shortDate(date: string): string {
  return dateWords(date).replace(/ \d{4}$/, '');
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
    .map(([week, values]) => ({ key: week, label: shortDate(week), values }));
}
