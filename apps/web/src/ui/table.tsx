import { useMemo, useState, type ReactNode } from 'react';
import { sortRows, type SortKey, type SortState } from './table-sort.js';
import './table.css';

export interface Column<Row> {
  readonly key: string;
  /** Plain text: it also labels the value where the row becomes a card. */
  readonly head: string;
  readonly cell: (row: Row) => ReactNode;
  /** Makes the head a sort button. null sorts last either way. */
  readonly sort?: (row: Row) => SortKey;
  readonly align?: 'end';
  /** The cell that names the row. One column has it. */
  readonly rowHead?: boolean;
  readonly title?: string;
}

export interface DataTableProps<Row> {
  readonly caption: string;
  readonly captionHidden?: boolean;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  readonly sorted?: SortState;
  readonly empty: ReactNode;
  /** 'cards': a row becomes a card where the table is narrow. 'scroll': it scrolls sideways in its own region. */
  readonly narrow?: 'cards' | 'scroll';
  readonly foot?: ReactNode;
}

/**
 * A table that sorts, keeps its head in sight and stays a table for assistive technology when it is shown as cards
 * (a changed `display` would drop the implied roles, hence the explicit ones).
 */
export function DataTable<Row>(props: DataTableProps<Row>) {
  const { caption, captionHidden, columns, rows, rowKey, empty, narrow = 'cards', foot } = props;
  const [sorted, setSorted] = useState<SortState | null>(props.sorted ?? null);
  const shown = useMemo(() => {
    const by = columns.find((column) => column.key === sorted?.key)?.sort;
    return by && sorted ? sortRows(rows, by, sorted.down) : rows;
  }, [rows, columns, sorted]);

  return (
    <div className="tw-table-box" data-narrow={narrow}>
      {narrow === 'cards' && rows.length > 1 && <SortPicker columns={columns} sorted={sorted} onSort={setSorted} />}
      <div className="tw-table-scroll" role="region" aria-label={`Table: ${caption}`} tabIndex={0}>
        {/* A table without rows is none: as cards it would have no head either. */}
        {rows.length === 0 ? (
          <div className="tw-table-empty">{empty}</div>
        ) : (
          <table className="tw-table" role="table">
            <caption className={captionHidden ? 'tw-hidden' : undefined}>{caption}</caption>
            <thead role="rowgroup">
              <tr role="row">
                {columns.map((column) => (
                  <Head key={column.key} column={column} sorted={sorted} onSort={setSorted} />
                ))}
              </tr>
            </thead>
            <tbody role="rowgroup">
              {shown.map((row) => (
                <tr role="row" key={rowKey(row)}>
                  {columns.map((column) => (
                    <Cell key={column.key} column={column} row={row} />
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </div>
      {foot}
    </div>
  );
}

/** Cards have no head to press; this takes its place there (see table.css). */
function SortPicker<Row>(props: {
  columns: readonly Column<Row>[];
  sorted: SortState | null;
  onSort: (next: SortState) => void;
}) {
  const sortable = props.columns.filter((column) => column.sort);
  if (sortable.length === 0) return null;
  return (
    <label className="tw-table-picker tw-no-print">
      Sort by
      <select
        value={props.sorted?.key ?? ''}
        onChange={(event) => props.onSort({ key: event.target.value, down: false })}
      >
        {!props.sorted && <option value="">as given</option>}
        {sortable.map((column) => (
          <option key={column.key} value={column.key}>
            {column.head}
          </option>
        ))}
      </select>
    </label>
  );
}

function Head<Row>(props: { column: Column<Row>; sorted: SortState | null; onSort: (next: SortState) => void }) {
  const { column, sorted, onSort } = props;
  const mine = sorted?.key === column.key ? sorted : null;
  const order = mine ? (mine.down ? 'descending' : 'ascending') : 'none';
  return (
    <th
      role="columnheader"
      scope="col"
      data-align={column.align}
      title={column.title}
      {...(column.sort ? { 'aria-sort': order } : {})}
    >
      {column.sort ? (
        <button
          type="button"
          className="tw-table-sort"
          onClick={() => onSort({ key: column.key, down: mine?.down === false })}
        >
          {column.head}
          <span aria-hidden="true" className="tw-table-arrow">
            {mine ? (mine.down ? '▾' : '▴') : '↕'}
          </span>
        </button>
      ) : (
        column.head
      )}
    </th>
  );
}

function Cell<Row>({ column, row }: { column: Column<Row>; row: Row }) {
  return column.rowHead ? (
    <th role="rowheader" scope="row" data-align={column.align}>
      {column.cell(row)}
    </th>
  ) : (
    <td role="cell" data-label={column.head} data-align={column.align}>
      <div>{column.cell(row)}</div>
    </td>
  );
}
