import { useState, type ReactNode } from 'react';
import { Button } from '../../../ui/button.js';
import { Sheet } from '../../../ui/sheet.js';
import { DataTable, type Column } from '../../../ui/table.js';

interface Named {
  readonly id: string;
  readonly name: string;
}

export interface HouseListProps<Row extends Named> {
  readonly id: string;
  readonly title: string;
  readonly about?: string;
  readonly rows: readonly Row[];
  readonly columns: readonly Column<Row>[];
  /** 'operator', and what is done to one that is there: 'Rename'. */
  readonly one: string;
  readonly change: string;
  readonly mayWrite: boolean;
  /** The form for a new row (null) or for one as it is stored now. */
  readonly form: (row: Row | null, close: () => void) => ReactNode;
}

/** A list of the house: read by all who may, added to and changed in a sheet below it. */
export function HouseList<Row extends Named>(props: HouseListProps<Row>) {
  const { id, title, about, rows, columns, one, change, mayWrite, form } = props;
  const [open, setOpen] = useState<Row | 'new' | null>(null);
  const close = () => setOpen(null);
  const added = `Add ${/^[aeiou]/.test(one) ? 'an' : 'a'} ${one}`;
  return (
    <section className="tw-stack" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {about && <p className="tw-soft">{about}</p>}
      <DataTable
        caption={title}
        captionHidden
        columns={mayWrite ? [...columns, changing<Row>(change, setOpen)] : columns}
        rows={rows}
        rowKey={(row) => row.id}
        empty={`No ${one} yet.`}
      />
      {open !== null && (
        <Sheet
          key={open === 'new' ? 'new' : open.id}
          title={open === 'new' ? added : `${change} ${open.name}`}
          onClose={close}
        >
          {form(open === 'new' ? null : (rows.find((row) => row.id === open.id) ?? open), close)}
        </Sheet>
      )}
      {mayWrite && open === null && (
        <div className="tw-row tw-no-print">
          <Button onClick={() => setOpen('new')}>{added}</Button>
        </div>
      )}
    </section>
  );
}

function changing<Row extends Named>(change: string, onOpen: (row: Row) => void): Column<Row> {
  return {
    key: 'change',
    head: 'Change',
    cell: (row) => (
      <Button look="quiet" aria-label={`${change} ${row.name}`} onClick={() => onOpen(row)}>
        {change}
      </Button>
    ),
  };
}
