import { dateWords } from '@tallywing/rules';
import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { DataTable, type Column } from '../../../ui/table.js';
import { StrikeCalibrationMutation, type Calibration, type TestSet } from '../query.js';
import { asFoundWords } from '../standing.js';

export interface CheckListProps {
  readonly set: TestSet;
  readonly mayWrite: boolean;
  readonly onTrace: (calibrationId: string) => void;
  readonly reload: () => Promise<unknown>;
}

/** All checks of one test set, newest first. One found out of tolerance leads to the entries that lean on it. */
export function CheckList({ set, mayWrite, onTrace, reload }: CheckListProps) {
  const [striking, setStriking] = useState<string | null>(null);
  const check = set.calibrations.find(({ id }) => id === striking);
  return (
    <>
      <DataTable
        caption={`Checks of ${set.serial}`}
        captionHidden
        columns={columnsFor(onTrace, mayWrite ? setStriking : null)}
        rows={set.calibrations}
        rowKey={({ id }) => id}
        empty="No calibration entered yet."
      />
      {check && <StrikeForm key={check.id} set={set} check={check} reload={reload} onDone={() => setStriking(null)} />}
    </>
  );
}

function StrikeForm(props: { set: TestSet; check: Calibration; reload: () => Promise<unknown>; onDone: () => void }) {
  const { set, check, reload, onDone } = props;
  const [reason, setReason] = useState('');
  const { run, busy, problem, at } = useAct();
  const [strike] = useMutation(StrikeCalibrationMutation);
  async function send() {
    const input = { testSetId: set.id, expectedRevision: set.revision, calibrationId: check.id, reason };
    await strike({ variables: { input } });
    await reload();
  }
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void run(send, `The check of ${dateWords(check.checkedOn)} is struck out.`).then((done) => {
          if (done) onDone();
        });
      }}
    >
      <Field
        label={`What is wrong with the check of ${dateWords(check.checkedOn)}`}
        hint="It stays in sight with this reason, and no longer counts."
        error={at('reason')}
      >
        <input autoFocus value={reason} maxLength={200} onChange={(event) => setReason(event.target.value)} />
      </Field>
      <ProblemNote problem={problem} fields={['reason']} onReload={reload} />
      <div className="tw-row">
        <Button type="submit" look="stop" busy={busy}>
          Strike it out
        </Button>
        <Button look="quiet" onClick={onDone}>
          Leave it
        </Button>
      </div>
    </form>
  );
}

function columnsFor(
  onTrace: (id: string) => void,
  onStrike: ((id: string) => void) | null,
): readonly Column<Calibration>[] {
  return [
    { key: 'on', head: 'Checked on', rowHead: true, cell: ({ checkedOn }) => dateWords(checkedOn) },
    { key: 'found', head: 'Found', cell: asFoundWords },
    {
      key: 'until',
      head: 'Good until',
      cell: ({ goodUntil }) => (goodUntil === null ? 'not put right' : dateWords(goodUntil)),
    },
    { key: 'certificate', head: 'Certificate', cell: ({ certificate }) => certificate ?? 'not recorded' },
    {
      key: 'more',
      head: 'More',
      cell: (check) =>
        check.struck === null ? (
          <span className="tw-row">
            {check.asFound === 'OUT_OF_TOLERANCE' && (
              <Button
                look="quiet"
                aria-label={`Which entries lean on it: check of ${dateWords(check.checkedOn)}`}
                onClick={() => onTrace(check.id)}
              >
                Which entries lean on it
              </Button>
            )}
            {onStrike && (
              <Button
                look="quiet"
                aria-label={`Strike out the check of ${dateWords(check.checkedOn)}`}
                onClick={() => onStrike(check.id)}
              >
                Strike out
              </Button>
            )}
          </span>
        ) : (
          `Struck out: ${check.struck}`
        ),
    },
  ];
}
