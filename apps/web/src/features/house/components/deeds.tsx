import { dateWords, whenWords } from '@tallywing/rules';
import { ListBody, type ListBodyProps } from '../../../app/list-body.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { countWords } from '../../../ui/words.js';
import { deedWords } from '../entry-words.js';
import type { AuditEntry } from '../query.js';
import { Values } from './values.js';

type Answer = NonNullable<ListBodyProps<PageOfDeeds>['answer']>;

interface PageOfDeeds {
  readonly edges: readonly { readonly node: AuditEntry }[];
  readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string | null };
  readonly totalCount: number;
}

export interface DeedsProps extends Omit<ListBodyProps<PageOfDeeds>, 'children' | 'onMore'> {
  readonly title: string;
  readonly zone: string;
  /** The one day that was asked about. */
  readonly day?: string | null;
  readonly empty: string;
  readonly fetchMore: (page: { variables: { after: string | null } }) => Promise<unknown>;
}

/** What somebody did: what, when, by whom, and the values that it changed. Nothing here can be taken away. */
export function Deeds({ title, zone, day = null, empty, fetchMore, ...list }: DeedsProps) {
  return (
    <ListBody {...list} onMore={(after) => fetchMore({ variables: { after } })}>
      {(answer) => (
        <>
          {answer.totalCount > 0 && <p className="tw-soft">{countedWords(answer, zone, day)}</p>}
          <DataTable
            caption={title}
            captionHidden
            columns={columnsFor(zone)}
            rows={answer.edges.map(({ node }) => node)}
            rowKey={({ id }) => id}
            empty={empty}
          />
        </>
      )}
    </ListBody>
  );
}

function countedWords({ totalCount }: Answer, zone: string, day: string | null): string {
  const of = day === null ? '' : ` of ${dateWords(day)}`;
  return `${countWords(totalCount, 'entry', 'entries')}${of}, newest first; times are those of ${zone.replace(/_/g, ' ')}.`;
}

function columnsFor(zone: string): readonly Column<AuditEntry>[] {
  return [
    { key: 'what', head: 'What', rowHead: true, cell: (entry) => deedWords(entry) },
    { key: 'when', head: 'When', cell: ({ at }) => whenWords(at, zone) },
    { key: 'by', head: 'By', cell: ({ kind, by }) => (kind === 'sign-in.failed' ? `somebody, as ${by}` : by) },
    { key: 'values', head: 'From and to', cell: (entry) => <Values entry={entry} /> },
  ];
}
