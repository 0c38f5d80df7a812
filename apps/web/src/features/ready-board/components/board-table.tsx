import { Link } from 'react-router';
import { sourceStatusWords, type SourceStatusName } from '../../../ui/source.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { DataTable, type Column } from '../../../ui/table.js';
import type { Asked } from '../asked.js';
import type { Cell, Row } from '../view-model.js';

export interface BoardTableProps {
  readonly rows: readonly Row[];
  readonly profiles: readonly { readonly id: string; readonly name: string }[];
  readonly asked: Asked;
}

/** Aircraft by flight profile. Every answer is a link to its reasons. */
export function BoardTable({ rows, profiles, asked }: BoardTableProps) {
  const columns: Column<Row>[] = [
    {
      key: 'registration',
      head: 'Aircraft',
      rowHead: true,
      sort: (row) => row.registration,
      cell: (row) => (
        <div className="tw-board-name">
          <Link to={`/aircraft/${row.id}`}>{row.registration}</Link>
          <span className="tw-soft tw-small">{row.model}</span>
        </div>
      ),
    },
    {
      key: 'where',
      head: 'Operator, base',
      sort: (row) => `${row.operator} ${row.base}`,
      cell: (row) => (
        <span className="tw-small">
          {row.operator}
          <br />
          <span className="tw-soft">{row.base}</span>
        </span>
      ),
    },
    ...profiles.map((profile, index): Column<Row> => ({
      key: profile.id,
      head: profile.name,
      sort: (row) => order[row.cells[index]?.status ?? 'not-judged'],
      cell: (row) => {
        const cell = row.cells[index];
        return cell ? <Answer cell={cell} row={row} profile={profile.name} asked={asked} /> : null;
      },
    })),
  ];
  return (
    <DataTable
      caption="Aircraft by flight profile"
      captionHidden
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      empty="No aircraft."
      narrow="cards"
    />
  );
}

const order: Readonly<Record<Cell['status'], number>> = {
  yes: 0,
  'judged-again': 1,
  'cannot-tell': 2,
  'not-judged': 3,
  no: 4,
  held: 5,
  'not-fitted': 6,
  'not-wanted': 7,
};

function Answer({ cell, row, profile, asked }: { cell: Cell; row: Row; profile: string; asked: Asked }) {
  const question = new URLSearchParams({ profile: cell.profileId });
  if (asked.at) question.set('at', asked.at);
  if (asked.hours) question.set('hours', asked.hours);
  return (
    <div className="tw-answer">
      <Link
        to={`/aircraft/${row.id}?${question.toString()}`}
        aria-label={`${row.registration}, ${profile}: why`}
        className="tw-answer-link"
      >
        <StatusMark status={cell.status} />
      </Link>
      {cell.until && <span className="tw-small">{cell.until}</span>}
      {cell.says && <span className="tw-small tw-soft tw-answer-says">{cell.says}</span>}
      {cell.weak && (
        <span className="tw-small tw-soft">
          rests on: {sourceStatusWords[cell.weak as SourceStatusName] ?? cell.weak}
        </span>
      )}
    </div>
  );
}
