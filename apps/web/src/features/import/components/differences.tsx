import { Button } from '../../../ui/button.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { countWords } from '../../../ui/words.js';
import { rowOf } from '../outcome-words.js';
import type { Difference, Report } from '../query.js';

export interface DifferencesProps {
  readonly report: Report;
  /** Rows whose word is to be taken; null: it was decided when this was loaded. */
  readonly taken: ReadonlySet<string> | null;
  readonly onTake: (taken: ReadonlySet<string>) => void;
}

/** Rows that say otherwise than what is recorded. What is recorded stays unless a person ticks the row. */
export function Differences({ report, taken, onTake }: DifferencesProps) {
  const { differences, differenceCount } = report;
  const rows = new Set(differences.map(rowOf));
  const tick = (row: string, on: boolean) => {
    const next = new Set(taken);
    if (on) next.add(row);
    else next.delete(row);
    onTake(next);
  };
  const columns: readonly Column<Difference>[] = [
    {
      key: 'take',
      head: taken === null ? 'What was decided' : 'Take the word of the file',
      cell: (each) =>
        taken === null ? (
          each.taken ? (
            'taken from the file'
          ) : (
            'left as recorded'
          )
        ) : (
          <label className="tw-check">
            <input
              type="checkbox"
              checked={taken.has(rowOf(each))}
              onChange={(event) => tick(rowOf(each), event.target.checked)}
            />
            take it
            <span className="tw-hidden">
              : {each.registration} {each.field}, {each.is} in place of {each.was}
            </span>
          </label>
        ),
    },
    {
      key: 'aircraft',
      head: 'Aircraft',
      rowHead: true,
      sort: (each) => each.registration,
      cell: (each) => <span className="tw-mono">{each.registration}</span>,
    },
    { key: 'field', head: 'What', sort: (each) => each.field, cell: (each) => fieldWords(each.field) },
    { key: 'was', head: 'Recorded', cell: (each) => each.was },
    { key: 'is', head: 'In the file', cell: (each) => each.is },
    { key: 'row', head: 'Row', sort: rowOf, cell: (each) => `${each.file} line ${each.line}` },
  ];
  return (
    <div className="tw-stack">
      <DataTable
        caption={`${countWords(differenceCount, 'place')} where the files say otherwise than what is recorded${
          differenceCount > differences.length ? `, the first ${differences.length}` : ''
        }`}
        columns={columns}
        rows={differences}
        rowKey={(each) => `${rowOf(each)} ${each.field}`}
        empty=""
      />
      {taken !== null && (
        <div className="tw-row">
          <Button onClick={() => onTake(rows)}>Take all from the files</Button>
          <Button onClick={() => onTake(new Set())}>Leave all as recorded</Button>
          <span className="tw-soft">
            A row is taken or left as a whole. What is not ticked stays as it is recorded.
          </span>
        </div>
      )}
    </div>
  );
}

function fieldWords(field: string): string {
  return field
    .split('.')
    .map((part) => part.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`))
    .join(', ');
}
