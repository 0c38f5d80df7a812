import type { KeyboardEvent } from 'react';
import { Link } from 'react-router';
import { Button } from '../../../ui/button.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { countWords } from '../../../ui/words.js';
import {
  ageOf,
  blankEntry,
  judgeEntry,
  lastDial,
  timeWords,
  type Age,
  type Entries,
  type Entry,
  type Line,
} from '../sheet.js';
import type { Reported } from '../use-sheet.js';
import { DialCell } from './dial-cell.js';
import { OutcomeMark } from './report.js';

export interface MeterTableProps {
  readonly lines: readonly Line[];
  readonly entries: Entries;
  readonly reports: readonly Reported[];
  readonly asOf: string;
  readonly now: string;
  readonly by: string;
  readonly onType: (key: string, change: Partial<Entry>) => void;
  /** Opens what else can be recorded of a meter; null: of a new one. */
  readonly onWork: (line: Line) => void;
  /** Enter in the last aircraft. */
  readonly onLast: () => void;
}

export function MeterTable(props: MeterTableProps) {
  const { lines, entries, reports, asOf, now, by, onType, onWork, onLast } = props;
  const columns: readonly Column<Line>[] = [
    {
      key: 'aircraft',
      head: 'Aircraft',
      rowHead: true,
      sort: ({ row }) => row.aircraft.registration,
      cell: ({ row }) => (
        <Link className="tw-mono" to={`/aircraft/${row.aircraft.id}#meters`}>
          {row.aircraft.registration}
        </Link>
      ),
    },
    { key: 'meter', head: 'Meter', sort: ({ meter }) => meter?.name ?? null, cell: meterWords },
    {
      key: 'last',
      head: 'Last reading',
      align: 'end',
      cell: ({ meter }) => meter && <LastReading meter={meter} />,
    },
    {
      key: 'age',
      head: 'Age',
      sort: ({ meter }) => (meter ? ageOf(meter, now).days : null),
      cell: ({ row, meter }) =>
        meter && (
          <>
            <AgeMark age={ageOf(meter, now)} goodFor={row.readingGoodForDays} />
            {meter.asOf && <span className="tw-soft tw-meters-small">{timeWords(meter.asOf, row)}</span>}
          </>
        ),
    },
    {
      key: 'new',
      head: 'New reading',
      cell: ({ key, row, meter }) => {
        if (!meter)
          return (
            <Button onClick={() => onWork({ key, row, meter })}>
              Define a meter <span className="tw-hidden">of {row.aircraft.registration}</span>
            </Button>
          );
        const entry = entries[key] ?? blankEntry;
        const report = entry.dial === '' ? reports.find(({ batch }) => batch.keys.includes(key)) : undefined;
        return (
          <>
            <DialCell
              row={row}
              meter={meter}
              entry={entry}
              judged={judgeEntry({ row, meter }, entry, asOf, now, by)}
              onType={(change) => onType(key, change)}
              onReplaced={() => onWork({ key, row, meter })}
            />
            {report?.outcome.kind === 'recorded' && <OutcomeMark outcome={report.outcome} />}
          </>
        );
      },
    },
    {
      key: 'work',
      head: 'Other than read',
      cell: (line) =>
        line.meter && (
          <Button look="quiet" onClick={() => onWork(line)}>
            Replace, correct, define{' '}
            <span className="tw-hidden">
              {line.meter.name} of {line.row.aircraft.registration}
            </span>
          </Button>
        ),
    },
  ];
  return (
    <div className="tw-meters" onKeyDown={(event) => moveOn(event, onLast)}>
      <DataTable
        caption="Meters and their last readings"
        captionHidden
        columns={columns}
        rows={lines}
        rowKey={({ key }) => key}
        empty="No meter answers this: ask about other aircraft or readings above."
      />
    </div>
  );
}

function meterWords({ meter }: Line) {
  if (!meter) return 'No meter is defined.';
  return meter.timeInService ? `${meter.name} (stands for time in service)` : meter.name;
}

function LastReading({ meter }: { meter: NonNullable<Line['meter']> }) {
  return (
    <>
      <span className="tw-mono">{lastDial(meter)}</span>
      {meter.offset !== 0 && meter.hours !== null && (
        <span className="tw-soft tw-meters-small">{meter.hours} h in all</span>
      )}
    </>
  );
}

function AgeMark({ age, goodFor }: { age: Age; goodFor: number }) {
  const days = age.days === null ? '' : age.days === 0 ? 'today' : countWords(age.days, 'day');
  if (age.state === 'good') return days;
  if (age.state === 'old') return <StatusMark status="no" word={`Too old: ${days}, good for ${goodFor}`} />;
  if (age.state === 'behind') return <StatusMark status="cannot-tell" word={`Not read with the others: ${days}`} />;
  return <StatusMark status="cannot-tell" word="Never read" />;
}

/** Enter leads to the next aircraft, with Shift to the one before; after the last one, to recording. */
function moveOn(event: KeyboardEvent<HTMLElement>, onLast: () => void): void {
  const from = event.target;
  if (event.key !== 'Enter' || !(from instanceof HTMLInputElement) || from.dataset['dial'] === undefined) return;
  event.preventDefault();
  const all = [...event.currentTarget.querySelectorAll<HTMLInputElement>('input[data-dial]')];
  const at = all.indexOf(from);
  const others = event.shiftKey ? all.slice(0, at).reverse() : all.slice(at + 1);
  const nextAircraft = others.find((each) => each.dataset['dial'] !== from.dataset['dial'])?.dataset['dial'];
  // Backwards too, an aircraft begins with its first meter.
  const next = all.find((each) => each.dataset['dial'] === nextAircraft);
  if (next) next.select();
  else if (!event.shiftKey) onLast();
}
