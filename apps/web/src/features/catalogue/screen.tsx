import { useQuery } from '@apollo/client/react';
import { codeWords, functionCode } from '@tallywing/rules';
import { Link } from 'react-router';
import { ListBody } from '../../app/list-body.js';
import { useSession } from '../../app/session.js';
import { useParamsState } from '../../app/use-params-state.js';
import { Field } from '../../ui/field.js';
import { FilterBar, Pick } from '../../ui/filter-bar.js';
import { DataTable, type Column } from '../../ui/table.js';
import { countWords } from '../../ui/words.js';
import { pathOf } from './paths.js';
import { CatalogueQuery, type ListedType } from './query.js';

/** Equipment types in force, each with its document and revision. */
export function CatalogueScreen() {
  const { viewer } = useSession();
  const [asked, ask] = useParamsState(['text', 'function']);
  const filter = { text: asked.text.trim() || null, function: asked.function || null };
  const { data, previousData, loading, error, fetchMore, refetch } = useQuery(CatalogueQuery, {
    variables: { filter },
  });
  return (
    <div className="tw-stack">
      <header className="tw-screen-head">
        <h1>Catalogue</h1>
        {viewer.may.includes('catalogue.write') && (
          <Link to="new" className="tw-button-link tw-no-print" data-look="main">
            Enter a type
          </Link>
        )}
      </header>
      <FilterBar label="Which equipment types">
        <Field label="Maker, name or part number">
          <input type="search" value={asked.text} onChange={(event) => ask({ text: event.target.value })} />
        </Field>
        <Pick label="Function" value={asked.function} onPick={(next) => ask({ function: next })} options={functions} />
      </FilterBar>
      <ListBody
        what="the catalogue"
        answer={(data ?? previousData)?.catalogue}
        loading={loading}
        error={error}
        onRetry={() => void refetch()}
        onMore={(after) => fetchMore({ variables: { after } })}
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
              empty={
                asked.text || asked.function
                  ? 'No equipment type answers this.'
                  : 'Nothing is in the catalogue yet. Types are entered from their installation manuals, or come with an import.'
              }
            />
          </>
        )}
      </ListBody>
    </div>
  );
}

const functions = functionCode.options
  .map((id) => ({ id, name: codeWords(id) }))
  .sort((a, b) => a.name.localeCompare(b.name));

const columns: readonly Column<ListedType>[] = [
  {
    key: 'name',
    head: 'Type',
    rowHead: true,
    sort: (entry) => `${entry.maker} ${entry.name}`,
    cell: (entry) => (
      <Link to={pathOf(entry.id)}>
        {entry.maker} {entry.name}
      </Link>
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
];
