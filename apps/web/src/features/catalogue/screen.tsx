import { useQuery } from '@apollo/client/react';
import type { EquipmentType } from '@tallywing/rules';
import { ListBody } from '../../app/list-body.js';
import { useParamsState } from '../../app/use-params-state.js';
import { graphql, type ResultOf } from '../../graphql.js';
import { codeWords } from '../../trade/words.js';
import { Field } from '../../ui/field.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { DataTable, type Column } from '../../ui/table.js';
import { countWords } from '../../ui/words.js';
import { TypeDetails } from './type-details.js';

const CatalogueQuery = graphql(`
  query Catalogue($filter: CatalogueFilter, $after: String) {
    catalogue(filter: $filter, first: 50, after: $after) {
      edges {
        cursor
        node {
          id
          maker
          name
          partNumber
          document
          revision
          functions
          body
        }
      }
      pageInfo {
        hasNextPage
        endCursor
      }
      totalCount
    }
  }
`);

type Entry = ResultOf<typeof CatalogueQuery>['catalogue']['edges'][number]['node'];

const functions = [
  'com',
  'vor-receiver',
  'loc-receiver',
  'gs-receiver',
  'gnss',
  'lateral-deviation',
  'vertical-deviation',
  'transponder',
  'altitude-reporting',
  'ads-b-out-1090',
  'ads-b-out-uat',
  'altimeter',
  'elt',
  'audio',
  'autopilot',
  'portable-display',
];

/** Equipment types with ports, dimensions, mass, approvals and limitations, each with its document and revision. */
export function CatalogueScreen() {
  const [asked, ask] = useParamsState(['text', 'function']);
  const filter = { text: asked.text.trim() || null, function: asked.function || null };
  const { data, previousData, loading, error, fetchMore, refetch } = useQuery(CatalogueQuery, {
    variables: { filter },
  });
  return (
    <div className="tw-stack">
      <h1>Catalogue</h1>
      <FilterBar label="Which equipment types">
        <Field label="Maker, name or part number">
          <input type="search" value={asked.text} onChange={(event) => ask({ text: event.target.value })} />
        </Field>
        <Pick
          label="Function"
          value={asked.function}
          onPick={(next) => ask({ function: next })}
          options={functions.map((id) => ({ id, name: codeWords(id) }))}
        />
      </FilterBar>
      <ListBody
        what="the catalogue"
        answer={(data ?? previousData)?.catalogue}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        onMore={(after) => void fetchMore({ variables: { after } })}
      >
        {(answer) => (
          <>
            <p className="tw-soft">{countWords(answer.totalCount, 'equipment type')}.</p>
            <DataTable
              caption="Equipment types"
              captionHidden
              columns={columns}
              rows={answer.edges.map((edge) => edge.node)}
              rowKey={(entry) => entry.id}
              empty="No equipment type answers this."
            />
          </>
        )}
      </ListBody>
    </div>
  );
}

const columns: readonly Column<Entry>[] = [
  {
    key: 'name',
    head: 'Type',
    rowHead: true,
    sort: (entry) => `${entry.maker} ${entry.name}`,
    cell: (entry) => (
      <strong>
        {entry.maker} {entry.name}
      </strong>
    ),
  },
  {
    key: 'part',
    head: 'Part number',
    sort: (entry) => entry.partNumber,
    cell: (entry) => <span className="tw-mono">{entry.partNumber}</span>,
  },
  { key: 'does', head: 'Does', cell: (entry) => entry.functions.map(codeWords).join(', ') },
  { key: 'document', head: 'Document', cell: (entry) => `${entry.document}, revision ${entry.revision}` },
  { key: 'more', head: 'More', cell: (entry) => <TypeDetails type={entry.body as EquipmentType} /> },
];
