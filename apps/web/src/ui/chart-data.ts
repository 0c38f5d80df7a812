/** What a chart draws and its table lists: one set of rows, so that the two can never differ. */
export interface ChartSeries {
  readonly key: string;
  readonly name: string;
  /** A token: 'var(--yes)'. */
  readonly colour: string;
  /** Told apart without colour. */
  readonly pattern: 'solid' | 'lines' | 'dots' | 'cross' | 'hollow';
}

export interface ChartRow {
  readonly key: string;
  readonly label: string;
  readonly values: Readonly<Record<string, number>>;
}

export interface ChartData {
  readonly title: string;
  /** One sentence that says what the chart shows; it is read out instead of the drawing. */
  readonly summary: string;
  readonly rowsName: string;
  readonly series: readonly ChartSeries[];
  readonly rows: readonly ChartRow[];
}

/** Rows for a stack: flat, and only series that occur at all, so that the legend names nothing that is not there. */
export function presentSeries(data: ChartData): ChartSeries[] {
  return data.series.filter((series) => data.rows.some((row) => (row.values[series.key] ?? 0) !== 0));
}

export function rowTotal(row: ChartRow): number {
  return Object.values(row.values).reduce((sum, value) => sum + value, 0);
}
