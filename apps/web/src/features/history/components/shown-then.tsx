import { Link } from 'react-router';
import { StatusMark } from '../../../ui/status-mark.js';
import type { Status } from '../../../ui/status-words.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { countWords } from '../../../ui/words.js';
import {
  differingLines,
  findingName,
  findingText,
  notKeptWords,
  versionsWords,
  type DifferingLine,
} from '../comparison.js';
import type { LookBackAnswer, ShownAnswer } from '../query.js';

type Flight = ShownAnswer['flights'][number];

const lineColumns: readonly Column<DifferingLine>[] = [
  {
    key: 'what',
    head: 'What',
    rowHead: true,
    sort: ({ what }) => what,
    cell: ({ kind, what }) => `${kindWords[kind]}: ${what}`,
  },
  { key: 'was', head: 'Shown then', cell: ({ was }) => was },
  { key: 'is', head: 'Today’s rules', cell: ({ is }) => is },
];
const kindWords: Readonly<Record<DifferingLine['kind'], string>> = {
  flight: 'Flight',
  operation: 'Operation',
  capability: 'Capability',
  finding: 'Finding',
};

/** What was shown, as it was kept, and every answer that today's rules give otherwise on the same record at the same minute. */
export function ShownThen({ shown, when }: { shown: ShownAnswer | null; when: (instant: string) => string }) {
  if (shown === null) return <p>Nothing that was shown by then was kept.</p>;
  const lines = differingLines(shown);
  const notKept = notKeptWords(shown);
  const today = new Map(shown.flightsDiffer.map(({ flight, is }) => [flight, is]));
  return (
    <>
      <p>
        This was shown on {when(shown.at)}, after{' '}
        <Link to={`../history?from=${shown.entry}#entry-${shown.entry}`} relative="path">
          entry {shown.entry}
        </Link>
        . {versionsWords(shown)}
      </p>
      <DataTable
        caption="Flights as they were answered then, and by the rules of today"
        columns={[
          { key: 'flight', head: 'Flight', rowHead: true, cell: ({ flight }: Flight) => flight },
          { key: 'then', head: 'Shown then', cell: ({ ready }: Flight) => <Answer ready={ready} /> },
          {
            key: 'now',
            head: 'Today’s rules, same record and minute',
            cell: ({ flight, ready }: Flight) => <Answer ready={today.get(flight) ?? ready} />,
          },
        ]}
        rows={shown.flights}
        rowKey={({ flight }) => flight}
        empty="No flight was asked about then."
      />
      <h3>
        {lines.length === 0
          ? 'Today’s rules answer everything as it was answered then.'
          : `${countWords(lines.length, 'answer')} of today’s rules ${lines.length === 1 ? 'differs' : 'differ'}`}
      </h3>
      {lines.length > 0 && (
        <DataTable
          caption="Answers that differ"
          captionHidden
          columns={lineColumns}
          rows={lines}
          rowKey={({ key }) => key}
          empty=""
        />
      )}
      {notKept && <p className="tw-soft">{notKept}</p>}
      <Findings title="Findings that were shown" open={shown.open} />
    </>
  );
}

/** What today's rules say at the moment asked about, on the record shown below. */
export function TodayThen({ today }: { today: LookBackAnswer['today'] }) {
  return (
    <>
      <ul className="tw-look-flights">
        {today.flights.map(({ flight, ready }) => (
          <li key={flight}>
            <Answer ready={ready} /> {flight}
          </li>
        ))}
      </ul>
      <Findings title="Findings" open={today.open} />
    </>
  );
}

function Findings({ title, open }: { title: string; open: ShownAnswer['open'] }) {
  return (
    <details className="tw-entry-part">
      <summary>
        {title} ({open.length})
      </summary>
      <ul>
        {open.map((each) => (
          <li key={`${each.ruleId} ${each.subject}`}>
            <strong>{findingName(each)}</strong>: {findingText(each)}
          </li>
        ))}
      </ul>
    </details>
  );
}

function Answer({ ready }: { ready: string }) {
  return <StatusMark status={ready.toLowerCase().replace('_', '-') as Status} />;
}
