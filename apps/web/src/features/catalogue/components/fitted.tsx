import { Link } from 'react-router';
import { DataTable, type Column } from '../../../ui/table.js';
import { countWords } from '../../../ui/words.js';
import type { TypePage } from '../query.js';
import { documentWords } from './versions.js';

type Unit = TypePage['fitted']['units'][number];

/** Which aircraft have the product, and by which version each of them is judged. */
export function Fitted({ type }: { type: TypePage }) {
  const { total, units } = type.fitted;
  const shown = new Set(units.map(({ aircraft }) => aircraft.id)).size;
  const columns: readonly Column<Unit>[] = [
    {
      key: 'aircraft',
      head: 'Aircraft',
      rowHead: true,
      sort: ({ aircraft }) => aircraft.registration,
      cell: ({ aircraft }) => (
        <Link to={`/aircraft/${aircraft.id}`} className="tw-mono">
          {aircraft.registration}
        </Link>
      ),
    },
    { key: 'unit', head: 'Unit', cell: ({ name, serial }) => `${name}${serial ? `, serial ${serial}` : ''}` },
    {
      key: 'version',
      head: 'Recorded with',
      sort: ({ typeId }) => type.versions.findIndex(({ id }) => id === typeId),
      cell: ({ typeId }) => {
        const version = type.versions.find(({ id }) => id === typeId);
        return version ? `${documentWords(version)}${version.current ? '' : ' (replaced)'}` : 'a version not listed';
      },
    },
  ];
  return (
    <div className="tw-stack">
      <p className="tw-soft">
        {countWords(total, 'aircraft', 'aircraft')}
        {total > shown ? `; the first ${shown} by registration are listed` : ''}.
      </p>
      {units.length > 0 && (
        <DataTable
          caption="Units of this product"
          captionHidden
          columns={columns}
          rows={units}
          rowKey={({ aircraft, unitId }) => `${aircraft.id} ${unitId}`}
          empty=""
        />
      )}
    </div>
  );
}
