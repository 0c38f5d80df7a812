import { Link } from 'react-router';
import { useSession } from '../../../app/session.js';
import { sourceStatusWords, type SourceStatusName } from '../../../ui/source.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { statusWords } from '../../../ui/status-words.js';
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
  const mayHold = useSession().viewer.may.includes('hold.place');
  const columns: Column<Row>[] = [
    {
      key: 'registration',
      head: 'Aircraft',
      rowHead: true,
      sort: (row) => row.registration,
      cell: (row) => (
        <div className="tw-board-name">
          <Link to={`/aircraft/${row.id}`}>{row.registration}</Link>
          <span className="tw-small">{row.model}</span>
          <span className="tw-soft tw-small tw-board-where">
            {row.operator}, {row.base}
          </span>
          {mayHold && (
            <Link
              to={`/aircraft/${row.id}?hold=place`}
              aria-label={`Hold ${row.registration}`}
              className="tw-board-hold tw-small tw-no-print"
            >
              Hold
            </Link>
          )}
        </div>
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
    <div className="tw-board">
      <DataTable
        caption="Aircraft by flight profile"
        captionHidden
        columns={columns}
        rows={rows}
        rowKey={(row) => row.id}
        empty="No aircraft."
        narrow="cards"
      />
      {rows.some((row) => row.cells.some((cell) => cell.weak)) && (
        <p className="tw-small tw-soft">
          * This yes rests on something other than a text we have read: open it to see on what.
        </p>
      )}
    </div>
  );
}

const order: Readonly<Record<Cell['status'], number>> = {
  yes: 0,
  'judged-again': 1,
  'say-so': 2,
  'cannot-tell': 3,
  'not-judged': 4,
  no: 5,
  held: 6,
  'in-work': 7,
  'not-fitted': 8,
  'not-wanted': 9,
};

function Answer({ cell, row, profile, asked }: { cell: Cell; row: Row; profile: string; asked: Asked }) {
  const question = new URLSearchParams({ profile: cell.profileId });
  if (asked.at) question.set('at', asked.at);
  if (asked.hours) question.set('hours', asked.hours);
  return (
    <div className="tw-answer">
      <Link
        to={`/aircraft/${row.id}?${question.toString()}`}
        aria-label={`${row.registration}, ${profile}: ${statusWords[cell.status]}${cell.weak ? `, rests on ${weakWords(cell.weak)}` : ''}`}
        className="tw-answer-link"
      >
        <StatusMark status={cell.status} />
        {cell.weak && (
          <span title={`rests on: ${weakWords(cell.weak)}`} className="tw-answer-weak">
            <span aria-hidden="true">*</span>
          </span>
        )}
      </Link>
      {cell.until && <span className="tw-small">{cell.until}</span>}
      {cell.says && <span className="tw-small tw-soft tw-answer-says">{cell.says}</span>}
    </div>
  );
}

function weakWords(status: string): string {
  return sourceStatusWords[status as SourceStatusName] ?? status;
}
