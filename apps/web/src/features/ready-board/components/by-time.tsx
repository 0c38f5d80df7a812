import { whenWords } from '@tallywing/rules';
import { Link } from 'react-router';
import { statusOfAnswer } from '../../../trade/verdict.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { countWords } from '../../../ui/words.js';
import type { Around } from '../query.js';

type Notice = Around['changesSince']['byTime'][number];

/** What the passing of time alone changed, one line each; nothing where it changed nothing. */
export function ByTime({ notices }: { readonly notices: readonly Notice[] }) {
  if (notices.length === 0) return null;
  return (
    <details className="tw-sheet">
      <summary>What the calendar changed: {countWords(notices.length, 'line')}</summary>
      <DataTable
        caption="What the calendar changed"
        captionHidden
        columns={columns}
        rows={notices}
        rowKey={(each) => [each.at, each.aircraft.id, each.profile?.id ?? each.text].join(' ')}
        empty="Nothing."
      />
    </details>
  );
}

const columns: readonly Column<Notice>[] = [
  {
    key: 'aircraft',
    head: 'Aircraft',
    rowHead: true,
    sort: ({ aircraft }) => aircraft.registration,
    cell: ({ aircraft }) => <Link to={`/aircraft/${aircraft.id}`}>{aircraft.registration}</Link>,
  },
  {
    key: 'at',
    head: 'When',
    sort: ({ at }) => at,
    cell: ({ at, aircraft }) => whenWords(at, aircraft.base.zone),
  },
  { key: 'what', head: 'What', cell: ({ text, profile }) => text ?? profile?.name },
  {
    key: 'answer',
    head: 'Answer',
    cell: ({ was, is }) =>
      was && is ? (
        <span className="tw-row">
          <Answer ready={was} /> then <Answer ready={is} />
        </span>
      ) : (
        'Finding opened'
      ),
  },
];

function Answer({ ready }: { readonly ready: string }) {
  return <StatusMark status={statusOfAnswer({ ready, standing: 'JUDGED' })} />;
}
