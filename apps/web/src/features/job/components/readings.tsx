import type { JudgedPoint, JudgedReadings } from '@tallywing/rules';
import { SourceStatus } from '../../../ui/reason-tree.js';
import { StatusMark } from '../../../ui/status-mark.js';
import type { Status } from '../../../ui/status-words.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { limitWords, pointWords, readingWords } from '../judging.js';

const shapeOf: Readonly<Record<JudgedReadings['outcome'], readonly [Status, string]>> = {
  met: ['yes', 'In tolerance'],
  'not-met': ['no', 'Out of tolerance'],
  'cannot-tell': ['cannot-tell', 'Cannot tell'],
};

const columns: readonly Column<JudgedPoint>[] = [
  { key: 'what', head: 'Point', cell: pointWords, rowHead: true },
  { key: 'value', head: 'Read', cell: readingWords, align: 'end' },
  { key: 'limit', head: 'Limit', cell: limitWords },
  { key: 'outcome', head: 'Judged', cell: (point) => <Judged outcome={point.outcome} /> },
  {
    key: 'source',
    head: 'Source',
    cell: ({ source }) => (
      <span className="tw-small">
        {source.document} {source.paragraph} <SourceStatus status={source.status} />
      </span>
    ),
  },
];

/** Every point of a test against its published limit, as it is typed. */
export function Readings({ judged }: { judged: JudgedReadings }) {
  return (
    <div className="tw-stack" aria-live="polite">
      <p>
        Readings together: <Judged outcome={judged.outcome} />
      </p>
      <DataTable
        caption="Readings judged"
        captionHidden
        columns={columns}
        rows={judged.points}
        rowKey={(point) => `${point.what}@${point.at ?? ''}`}
        empty="No readings yet."
        narrow="cards"
      />
    </div>
  );
}

function Judged({ outcome }: { outcome: JudgedReadings['outcome'] }) {
  const [status, word] = shapeOf[outcome];
  return <StatusMark status={status} word={word} />;
}
