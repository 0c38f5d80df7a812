import { whenWords } from '@tallywing/rules';
import { useMutation, useQuery } from '@apollo/client/react';
import { problemOf } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { jobWords } from '../../trade/way-back.js';
import { Button } from '../../ui/button.js';
import { Field } from '../../ui/field.js';
import { SourceStatus } from '../../ui/reason-tree.js';
import type { SourceStatusName } from '../../ui/source.js';
import { Loading, Trouble } from '../../ui/states.js';
import { DataTable, type Column } from '../../ui/table.js';
import { useToast } from '../../ui/toast.js';
import { countWords } from '../../ui/words.js';
import { OwnFigures } from './components/own-figures.js';
import { LabourQuery, SetLabour, type LabourAnswer } from './query.js';
import { useLabourDraft } from './use-labour-draft.js';
import { draftOf, inputOf, typedOf, wrongIn } from './view-model.js';

/** Hours and prices that the ways back are reckoned with: the usual ones, and the house's own over them. */
export function LabourScreen() {
  const { data, error, refetch } = useQuery(LabourQuery);
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="hours and prices" />;
  return <Opened table={data.labour} reload={async () => (await refetch()).data?.labour} />;
}

type Row = LabourAnswer['jobs'][number];

function Opened({ table, reload }: { table: LabourAnswer; reload: () => Promise<LabourAnswer | undefined> }) {
  const { viewer } = useSession();
  const say = useToast();
  const mayWrite = viewer.may.includes('labour.write');
  const { draft, put, changed } = useLabourDraft(table);
  const [save, { loading, error, reset }] = useMutation(SetLabour);
  const wrong = wrongIn(draft);
  const problem = error ? problemOf(error) : null;
  const own = (job: string) => draft.jobs[job];

  const send = async () => {
    const answer = await save({ variables: { input: inputOf(draft) } }).catch(() => null);
    if (!answer?.data) return;
    put(draftOf(answer.data.setLabour));
    say('Hours and prices saved.');
  };

  const columns: readonly Column<Row>[] = [
    { key: 'job', head: 'Work', rowHead: true, sort: (row) => jobWords(row.job), cell: (row) => jobWords(row.job) },
    {
      key: 'usual',
      head: 'Usual, person-hours',
      cell: ({ usual, usualStatus }) => (
        <>
          {usual.typical} ({usual.low} to {usual.high}) <SourceStatus status={usualStatus as SourceStatusName} />
        </>
      ),
    },
    {
      key: 'own',
      head: 'Ours',
      sort: (row) => (own(row.job) ? 0 : 1),
      cell: (row) => (
        <OwnFigures
          what={jobWords(row.job)}
          typed={own(row.job) ?? null}
          inForce={row.own ? typedOf(row) : null}
          wrong={(name) => wrong.get(`${row.job}.${name}`)}
          writable={mayWrite}
          onEnter={() => put({ ...draft, jobs: { ...draft.jobs, [row.job]: typedOf(row) } })}
          onChange={(next) => put({ ...draft, jobs: { ...draft.jobs, [row.job]: next } })}
          onDrop={() =>
            put({ ...draft, jobs: Object.fromEntries(Object.entries(draft.jobs).filter(([job]) => job !== row.job)) })
          }
        />
      ),
    },
  ];

  return (
    <div className="tw-stack">
      <h1>Hours and prices</h1>
      <p className="tw-soft">
        What the ways back of a lost flight are reckoned with. Usual hours are habits of the trade or estimates; no
        verdict hangs on them.{' '}
        {table.setAt && `Last set by ${table.setBy ?? 'somebody'}, ${whenWords(table.setAt, 'UTC')}.`}
      </p>
      <div className="tw-fields">
        <Field label="Price of a person-hour" hint="Empty: ways back count hours alone." error={wrong.get('hourly')}>
          <input
            inputMode="decimal"
            value={draft.hourly}
            readOnly={!mayWrite}
            onChange={(event) => put({ ...draft, hourly: event.target.value })}
          />
        </Field>
        <Field label="Currency" hint="Word or sign beside amounts." error={wrong.get('currency')}>
          <input
            value={draft.currency}
            readOnly={!mayWrite}
            onChange={(event) => put({ ...draft, currency: event.target.value })}
          />
        </Field>
      </div>
      {problem && (
        <Trouble title={problem.title} wayOut={problem.wayOut}>
          {problem.code === 'STALE_REVISION' && (
            <Button
              onClick={() => {
                reset();
                void reload().then((now) => now && put({ ...draft, basedOn: now.version }));
              }}
            >
              Load theirs and keep mine
            </Button>
          )}
        </Trouble>
      )}
      <DataTable
        caption="Hours by kind of work"
        captionHidden
        columns={columns}
        rows={table.jobs}
        rowKey={(row) => row.job}
        empty="No work is listed."
      />
      {mayWrite && (
        <div className="tw-row">
          <Button look="main" busy={loading} disabled={!changed || wrong.size > 0} onClick={() => void send()}>
            {loading ? 'Saving…' : 'Save hours and prices'}
          </Button>
          {changed && <Button onClick={() => put(draftOf(table))}>Drop what I changed</Button>}
          {wrong.size > 0 && <span className="tw-soft">{countWords(wrong.size, 'field')} to mend first.</span>}
        </div>
      )}
    </div>
  );
}
