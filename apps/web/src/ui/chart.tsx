import { lazy, Suspense, useState } from 'react';
import { presentSeries, rowTotal, type ChartData } from './chart-data.js';
import { DataTable, type Column } from './table.js';
import type { ChartRow } from './chart-data.js';
import './chart.css';

/* The drawing library travels in its own chunk: the page is readable before it arrives. */
const ChartDrawing = lazy(() => import('./chart-drawing.js'));

export interface ChartProps {
  readonly data: ChartData;
  /** 'rows': bars lie, long names; 'columns': bars stand, time runs to the right; 'line': a course over time. */
  readonly kind: 'rows' | 'columns' | 'line';
}

/** A chart with its table, from the same rows. The drawing is hidden from assistive technology: the summary and the table say it. */
export function Chart({ data, kind }: ChartProps) {
  const [asTable, setAsTable] = useState(false);
  return (
    <figure className="tw-chart tw-sheet">
      <figcaption>
        <h2 className="tw-chart-title">{data.title}</h2>
        <p className="tw-soft tw-small">{data.summary}</p>
      </figcaption>
      {data.rows.length === 0 ? (
        <p className="tw-soft">Nothing to draw yet.</p>
      ) : (
        <>
          <div className="tw-chart-drawing" hidden={asTable} aria-hidden="true">
            <Legend data={data} />
            <Suspense fallback={<div className="tw-chart-space" />}>
              <ChartDrawing data={data} kind={kind} />
            </Suspense>
          </div>
          <button
            type="button"
            className="tw-button tw-chart-toggle"
            data-look="quiet"
            aria-expanded={asTable}
            onClick={() => setAsTable(!asTable)}
          >
            {asTable ? 'Show the drawing' : 'Show the figures'}
          </button>
          <div className="tw-chart-table" hidden={!asTable}>
            <FiguresTable data={data} />
          </div>
        </>
      )}
    </figure>
  );
}

function FiguresTable({ data }: { data: ChartData }) {
  const shown = presentSeries(data);
  const columns: Column<ChartRow>[] = [
    { key: 'label', head: data.rowsName, cell: (row) => row.label, rowHead: true },
    ...shown.map((series): Column<ChartRow> => ({
      key: series.key,
      head: series.name,
      align: 'end',
      cell: (row) => row.values[series.key] ?? 0,
    })),
    ...(shown.length > 1
      ? [{ key: 'total', head: 'Together', align: 'end', cell: rowTotal } satisfies Column<ChartRow>]
      : []),
  ];
  return (
    <DataTable
      caption={`${data.title}: figures`}
      captionHidden
      columns={columns}
      rows={data.rows}
      rowKey={(row) => row.key}
      empty="No figures."
      narrow="scroll"
    />
  );
}

function Legend({ data }: { data: ChartData }) {
  const shown = presentSeries(data);
  if (shown.length < 2) return null;
  return (
    <ul className="tw-legend">
      {shown.map((series) => (
        <li key={series.key}>
          <svg width="18" height="12">
            <rect
              x="0.5"
              y="0.5"
              width="17"
              height="11"
              style={{ fill: `url(#${patternId(series.colour, series.pattern)})`, stroke: series.colour }}
            />
          </svg>
          {series.name}
        </li>
      ))}
    </ul>
  );
}

/** The id under which `ChartPatterns` defines a fill. */
export function patternId(colour: string, pattern: string): string {
  return `tw-fill-${colour.replace(/[^a-z0-9]+/gi, '')}-${pattern}`;
}
