import { useQuery } from '@apollo/client/react';
import { DataTable, type Column } from '../../../ui/table.js';
import { ImportFormatQuery, type FileKind } from '../query.js';

/** The kinds of file and their columns, from the same definitions that read them. */
export function Format() {
  const { data } = useQuery(ImportFormatQuery, { fetchPolicy: 'cache-first' });
  if (!data) return null;
  return (
    <details className="tw-sheet">
      <summary>How the files are written</summary>
      <div className="tw-stack">
        {data.importFormat.map((kind) => (
          <section key={kind.kind} className="tw-stack" aria-label={kind.kind}>
            <h2>{kind.kind}</h2>
            <p>
              {kind.says} <span className="tw-soft">The same row again: {kind.sameRow}</span>
            </p>
            <DataTable
              caption={`Columns of ${kind.kind}`}
              captionHidden
              columns={columns}
              rows={kind.columns}
              rowKey={(column) => column.name}
              empty=""
            />
          </section>
        ))}
      </div>
    </details>
  );
}

const columns: readonly Column<FileKind['columns'][number]>[] = [
  { key: 'name', head: 'Column', rowHead: true, cell: (column) => <code>{column.name}</code> },
  { key: 'required', head: 'Must be there', cell: (column) => (column.required ? 'yes' : 'no') },
  { key: 'says', head: 'Says', cell: (column) => column.says },
  { key: 'written', head: 'Written', cell: (column) => column.written },
];
