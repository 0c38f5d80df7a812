import { Button } from '../../../ui/button.js';
import { Sheet } from '../../../ui/sheet.js';
import { DataTable, type Column } from '../../../ui/table.js';
import type { TestSet } from '../query.js';
import { setStanding } from '../standing.js';
import { CheckForm } from './check-form.js';
import { CheckList } from './check-list.js';
import { SetForm } from './set-form.js';
import { StandingCell } from './standing-cell.js';

export interface TestSetsProps {
  readonly testSets: readonly TestSet[];
  readonly today: string;
  readonly mayWrite: boolean;
  /** Id of the one that is open, 'new', or '' for none. */
  readonly open: string;
  readonly onOpen: (id: string) => void;
  readonly onTrace: (calibrationId: string) => void;
  readonly reload: () => Promise<unknown>;
}

/** The house's test sets, each with its checks. */
export function TestSets({ testSets, today, mayWrite, open, onOpen, onTrace, reload }: TestSetsProps) {
  const chosen = testSets.find(({ id }) => id === open);
  const close = () => onOpen('');
  return (
    <section className="tw-stack" aria-labelledby="sets">
      <h2 id="sets">Test sets</h2>
      {mayWrite && open === 'new' && (
        <Sheet title="Add a test set" onClose={close}>
          <SetForm set={null} reload={reload} onDone={close} />
        </Sheet>
      )}
      {chosen && (
        <Sheet title={`${chosen.name}, serial ${chosen.serial}`} onClose={close}>
          {mayWrite && <SetForm key={`${chosen.id} ${chosen.revision}`} set={chosen} reload={reload} onDone={close} />}
          <h3>Checks</h3>
          <CheckList set={chosen} mayWrite={mayWrite} onTrace={onTrace} reload={reload} />
          {mayWrite && (
            <>
              <h3>Enter a check</h3>
              <CheckForm set={chosen} reload={reload} />
            </>
          )}
        </Sheet>
      )}
      <DataTable
        caption="Test sets"
        captionHidden
        columns={columnsFor(today, onOpen)}
        rows={testSets}
        rowKey={({ id }) => id}
        empty="No test set yet."
      />
      {mayWrite && open !== 'new' && (
        <div className="tw-row tw-no-print">
          <Button onClick={() => onOpen('new')}>Add a test set</Button>
        </div>
      )}
    </section>
  );
}

function columnsFor(today: string, onOpen: (id: string) => void): readonly Column<TestSet>[] {
  return [
    { key: 'name', head: 'Test set', rowHead: true, sort: ({ name }) => name, cell: ({ name }) => name },
    {
      key: 'serial',
      head: 'Serial',
      sort: ({ serial }) => serial,
      cell: ({ serial }) => <span className="tw-mono">{serial}</span>,
    },
    {
      key: 'standing',
      head: 'Calibration',
      sort: ({ calibratedUntil }) => calibratedUntil,
      cell: (set) => <StandingCell standing={setStanding(set, today)} />,
    },
    {
      key: 'open',
      head: 'Checks',
      cell: ({ id, serial }) => (
        <Button look="quiet" aria-label={`Open the checks of ${serial}`} onClick={() => onOpen(id)}>
          Open
        </Button>
      ),
    },
  ];
}
