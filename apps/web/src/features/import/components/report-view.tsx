import { DataTable, type Column } from '../../../ui/table.js';
import { countWords, listWords } from '../../../ui/words.js';
import type { Report } from '../query.js';

type BadRow = Report['bad'][number];
type FileRow = Report['files'][number];
type BoardCount = Report['board'][number];

/** What the files hold, every bad row, and what the board would say. */
export function ReportView({ report }: { report: Report }) {
  const { aircraft, changes, badCount, bad, problem, newOperators, newTypes, uncatalogued, remarks } = report;
  return (
    <div className="tw-stack">
      <p>
        {countWords(aircraft.added, 'aircraft', 'aircraft')} new, {aircraft.changed} changed, {aircraft.unchanged} as
        they were; {countWords(changes, 'entry', 'entries')};{' '}
        {badCount === 0 ? 'no bad row' : countWords(badCount, 'bad row')}.
      </p>
      {problem && (
        <p className="tw-field-error">
          {problem.reason} {problem.wayOut}
        </p>
      )}
      {newOperators.length > 0 && <p>New operators: {listWords(newOperators)}.</p>}
      {newTypes.length > 0 && <p>New equipment types: {listWords(newTypes)}.</p>}
      {uncatalogued.length > 0 && (
        <p>
          Not in the catalogue, taken as uncatalogued units:{' '}
          {listWords(uncatalogued.map(({ type, units }) => `${type} (${countWords(units, 'unit')})`))}. What hangs on
          them cannot be told until they are tied to a type; once the catalogue has it, the same file does that.
        </p>
      )}
      {badCount > 0 && (
        <DataTable
          caption={badCount > bad.length ? `Bad rows, the first ${bad.length} of ${badCount}` : 'Bad rows'}
          columns={badColumns}
          rows={bad}
          rowKey={(row) => `${row.file} ${row.line} ${row.column} ${row.reason}`}
          empty=""
        />
      )}
      <DataTable
        caption="Files"
        columns={fileColumns}
        rows={report.files}
        rowKey={(file) => file.name}
        empty="No file was sent."
      />
      <DataTable
        caption="What the board would say"
        columns={boardColumns}
        rows={report.board}
        rowKey={(count) => count.profileId}
        empty="No aircraft to judge."
      />
      {remarks.length > 0 && (
        <details>
          <summary>{countWords(remarks.length, 'remark')}</summary>
          <ul>
            {remarks.map((remark) => (
              <li key={`${remark.file} ${remark.line} ${remark.text}`}>
                {remark.file}
                {remark.line !== null && ` line ${remark.line}`}: {remark.text}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

const badColumns: readonly Column<BadRow>[] = [
  { key: 'file', head: 'File', rowHead: true, sort: (row) => row.file, cell: (row) => row.file },
  { key: 'line', head: 'Line', sort: (row) => row.line, align: 'end', cell: (row) => row.line ?? 'the file' },
  { key: 'column', head: 'Column', sort: (row) => row.column, cell: (row) => row.column ?? '' },
  {
    key: 'value',
    head: 'Found',
    cell: (row) => (row.value === null ? '' : <span className="tw-mono">{row.value || '(empty)'}</span>),
  },
  { key: 'reason', head: 'Why', sort: (row) => row.reason, cell: (row) => row.reason },
  { key: 'way-out', head: 'Way out', cell: (row) => row.wayOut },
];

const fileColumns: readonly Column<FileRow>[] = [
  { key: 'name', head: 'File', rowHead: true, cell: (file) => file.name },
  { key: 'kind', head: 'Holds', cell: (file) => file.kind ?? 'not recognised' },
  { key: 'rows', head: 'Rows', align: 'end', cell: (file) => file.rows },
  { key: 'good', head: 'Good', align: 'end', cell: (file) => file.good },
  { key: 'bad', head: 'Bad', align: 'end', cell: (file) => file.bad },
  { key: 'same', head: 'Nothing new', align: 'end', cell: (file) => file.unchanged },
];

const boardColumns: readonly Column<BoardCount>[] = [
  { key: 'profile', head: 'Flight profile', rowHead: true, cell: (count) => count.profile },
  { key: 'yes', head: 'Yes', align: 'end', cell: (count) => count.yes },
  { key: 'no', head: 'No', align: 'end', cell: (count) => count.no },
  { key: 'cannot', head: 'Cannot tell', align: 'end', cell: (count) => count.cannotTell },
];
