import { StatusMark } from '../../../ui/status-mark.js';
import { DataTable, type Column } from '../../../ui/table.js';
import type { LineEdge, LineView } from '../line.js';

export interface LineProps {
  readonly view: LineView;
  readonly title: string;
  readonly when: (instant: string) => string;
}

/** Twelve months of one profile as one drawn line, its edges numbered, and the same edges as a table. */
export function Line({ view, title, when }: LineProps) {
  const columns: readonly Column<LineEdge>[] = [
    { key: 'n', head: 'No.', cell: (edge) => edge.number, rowHead: true },
    {
      key: 'at',
      head: 'From',
      cell: (edge) => (edge.projected ? `${when(edge.at)} (projected from hours)` : when(edge.at)),
    },
    { key: 'is', head: 'Becomes', cell: (edge) => <StatusMark status={edge.is} /> },
    { key: 'because', head: 'Because', cell: (edge) => edge.because.join(' ') },
  ];
  return (
    <figure className="tw-sheet tw-line">
      <figcaption>
        <h3>{title}</h3>
        <p className="tw-soft tw-small">{view.summary}</p>
      </figcaption>
      {view.parts.length > 0 && (
        <>
          <LineDrawing view={view} />
          <ul className="tw-line-key tw-small" aria-hidden="true">
            {[...new Set(view.parts.map((part) => part.status))].map((status) => (
              <li key={status}>
                <svg width="34" height="12">
                  <line x1="1" x2="33" y1="6" y2="6" className="tw-line-part" data-status={status} />
                </svg>
                <StatusMark status={status} />
              </li>
            ))}
          </ul>
        </>
      )}
      {view.edges.length > 0 && (
        <DataTable
          caption={`${title}: when the answer changes`}
          captionHidden
          columns={columns}
          rows={view.edges}
          rowKey={(edge) => String(edge.number)}
          empty="Nothing known changes the answer."
        />
      )}
    </figure>
  );
}

/** Coordinates in percent, so that it keeps its line widths at any size. */
function LineDrawing({ view }: { view: LineView }) {
  const x = (share: number) => `${(1 + share * 98).toFixed(3)}%`;
  return (
    <svg className="tw-line-drawing" height="74" width="100%" aria-hidden="true">
      {view.months.map((month) => (
        <g key={month.share}>
          <line x1={x(month.share)} x2={x(month.share)} y1="34" y2="52" className="tw-line-month" />
          <text x={x(month.share)} y="68" className="tw-line-name">
            {month.name}
          </text>
        </g>
      ))}
      {view.parts.map((part) => (
        <line
          key={part.key}
          x1={x(part.start)}
          x2={x(part.end)}
          y1="42"
          y2="42"
          className="tw-line-part"
          data-status={part.status}
        />
      ))}
      {view.edges.map((edge) => (
        <g key={edge.number}>
          <line
            x1={x(edge.share)}
            x2={x(edge.share)}
            y1="22"
            y2="52"
            className="tw-line-edge"
            data-projected={edge.projected || undefined}
          />
          <text x={x(edge.share)} y="16" className="tw-line-number">
            {edge.number}
          </text>
        </g>
      ))}
    </svg>
  );
}
