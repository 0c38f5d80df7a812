import { certificateWords } from '../../../trade/certificates.js';
import { Button } from '../../../ui/button.js';
import { Sheet } from '../../../ui/sheet.js';
import { DataTable, type Column } from '../../../ui/table.js';
import type { Agency } from '../query.js';
import { agencyStanding } from '../standing.js';
import { AgencyForm } from './agency-form.js';
import { StandingCell } from './standing-cell.js';

export interface AgenciesProps {
  readonly agencies: readonly Agency[];
  readonly today: string;
  readonly mayWrite: boolean;
  /** Id of the one that is open, 'new', or '' for none. */
  readonly open: string;
  readonly onOpen: (id: string) => void;
  readonly reload: () => Promise<unknown>;
}

/** Whoever outside the house signs work. */
export function Agencies({ agencies, today, mayWrite, open, onOpen, reload }: AgenciesProps) {
  const chosen = agencies.find(({ id }) => id === open);
  const close = () => onOpen('');
  return (
    <section className="tw-stack" aria-labelledby="agencies">
      <h2 id="agencies">Agencies</h2>
      <p className="tw-soft">
        Repair stations and people outside the house, and the house’s own station if it has one. Offered when work is
        recorded; each entry keeps its own copy.
      </p>
      {mayWrite && (open === 'new' || chosen) && (
        <Sheet title={chosen ? `Change ${chosen.name}` : 'Add an agency'} onClose={close}>
          <AgencyForm
            key={chosen ? `${chosen.id} ${chosen.revision}` : 'new'}
            agency={chosen ?? null}
            reload={reload}
            onDone={close}
          />
        </Sheet>
      )}
      <DataTable
        caption="Agencies"
        captionHidden
        columns={columnsFor(today, mayWrite ? onOpen : null)}
        rows={agencies}
        rowKey={({ id }) => id}
        empty="No agency yet."
      />
      {mayWrite && open !== 'new' && (
        <div className="tw-row tw-no-print">
          <Button onClick={() => onOpen('new')}>Add an agency</Button>
        </div>
      )}
    </section>
  );
}

function columnsFor(today: string, onOpen: ((id: string) => void) | null): readonly Column<Agency>[] {
  const columns: readonly Column<Agency>[] = [
    { key: 'name', head: 'Agency', rowHead: true, sort: ({ name }) => name, cell: ({ name }) => name },
    {
      key: 'certificate',
      head: 'Certificate',
      cell: ({ kind, certificate, ratings }) => certificateWords({ kind, number: certificate, ratings }),
    },
    {
      key: 'held',
      head: 'Held',
      cell: (agency) => <StandingCell standing={agencyStanding(agency, today)} />,
    },
  ];
  if (onOpen === null) return columns;
  return [
    ...columns,
    {
      key: 'change',
      head: 'Change',
      cell: ({ id, name }) => (
        <Button look="quiet" aria-label={`Change ${name}`} onClick={() => onOpen(id)}>
          Change
        </Button>
      ),
    },
  ];
}
