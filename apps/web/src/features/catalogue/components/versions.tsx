import { whenWords } from '@tallywing/rules';
import { Link } from 'react-router';
import { useHouse, zoneOf } from '../../../app/house.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { pathOf } from '../paths.js';
import type { TypePage } from '../query.js';

type Version = TypePage['versions'][number];

/** All versions of a product: what each was read from, when and by whom it was entered. */
export function Versions({ type }: { type: TypePage }) {
  const zone = zoneOf(useHouse(), '');
  const columns: readonly Column<Version>[] = [
    {
      key: 'document',
      head: 'Document',
      rowHead: true,
      cell: (version) =>
        version.id === type.id ? (
          <strong>{documentWords(version)} (shown here)</strong>
        ) : (
          <Link to={pathOf(version.id)}>{documentWords(version)}</Link>
        ),
    },
    { key: 'state', head: 'State', cell: (version) => (version.current ? 'in force' : 'replaced by a newer one') },
    { key: 'entered', head: 'Entered', cell: (version) => whenWords(version.enteredAt, zone) },
    { key: 'by', head: 'By', cell: (version) => version.enteredBy ?? 'not noted' },
    {
      key: 'fitted',
      head: 'Units recorded with it',
      align: 'end',
      cell: (version) => type.fitted.units.filter(({ typeId }) => typeId === version.id).length,
    },
  ];
  return (
    <DataTable
      caption="Versions of this product"
      captionHidden
      columns={columns}
      rows={type.versions}
      rowKey={(version) => version.id}
      empty=""
    />
  );
}

export function documentWords({
  document,
  revision,
}: {
  readonly document: string;
  readonly revision: string;
}): string {
  return `${document}, revision ${revision}`;
}
