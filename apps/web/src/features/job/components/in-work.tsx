import { whenWords } from '@tallywing/rules';
import { useApolloClient, useMutation, useQuery } from '@apollo/client/react';
import type { Catalogue, Dossier } from '@tallywing/rules';
import { useState } from 'react';
import { ProblemNote } from '../../../app/problem-note.js';
import { useAct } from '../../../app/use-act.js';
import { Button } from '../../../ui/button.js';
import { Field } from '../../../ui/field.js';
import { Sheet } from '../../../ui/sheet.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { PlansQuery, StopJobMutation, type KeptPlan } from '../query.js';
import { ReleaseForm } from './release-form.js';
import { StartWork, type OnStart } from './start-work.js';

export interface InWorkProps {
  readonly aircraftId: string;
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly now: string;
  /** The job in work that recorded entries belong to; null: none is in work. */
  readonly recordsFor: string | null;
  readonly onRecordFor: (jobId: string) => void;
  readonly onStart: OnStart;
  readonly onChanged: () => Promise<unknown>;
}

/** Jobs that hold the aircraft: what is recorded belongs to one of them, until its release or until it is stopped. */
export function InWork(props: InWorkProps) {
  const jobs = useBegun(props.aircraftId);
  const working = jobs.filter(({ state }) => state === 'IN_WORK');
  if (jobs.length === 0) return null;
  return (
    <section className="tw-stack" aria-label="In work">
      {jobs.map((job) => (
        <Begun key={job.id} job={job} {...props} />
      ))}
      {working.length > 1 && (
        <Field label="What is recorded now belongs to">
          <select value={props.recordsFor ?? ''} onChange={(event) => props.onRecordFor(event.target.value)}>
            {working.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </Field>
      )}
    </section>
  );
}

/** The job in work that recording goes to: the one chosen, else the first. */
export function useJobInWork(aircraftId: string, chosen: string | null): string | null {
  const working = useBegun(aircraftId).filter(({ state }) => state === 'IN_WORK');
  return (working.find(({ id }) => id === chosen) ?? working[0])?.id ?? null;
}

function useBegun(aircraftId: string): readonly KeptPlan[] {
  const { data } = useQuery(PlansQuery, { variables: { aircraftId } });
  return (data?.jobs ?? []).filter(({ state }) => state === 'IN_WORK' || state === 'STOPPED');
}

function Begun({ job, dossier, catalogue, now, onStart, onChanged }: InWorkProps & { job: KeptPlan }) {
  const [open, setOpen] = useState<'release' | 'stop' | null>(null);
  const client = useApolloClient();
  const { zone } = dossier.configuration.aircraft.base;
  const working = job.state === 'IN_WORK';
  const done = async () => {
    setOpen(null);
    await onChanged();
    await client.refetchQueries({ include: 'active' });
  };
  return (
    <div className="tw-sheet tw-stack">
      <div className="tw-row">
        <StatusMark status={working ? 'in-work' : 'held'} word={working ? 'In work' : 'Stopped without a release'} />
        <strong>{job.title}</strong>
        <span className="tw-soft">
          {job.startedBy}
          {job.startedAt && `, since ${whenWords(job.startedAt, zone)}`}
          {job.endedBecause && `; stopped: ${job.endedBecause}`}
        </span>
      </div>
      {open === null && working && (
        <div className="tw-row tw-no-print">
          <Button onClick={() => setOpen('release')}>Release</Button>
          <Button look="quiet" onClick={() => setOpen('stop')}>
            Stop without a release
          </Button>
        </div>
      )}
      {!working && (
        <div className="tw-row tw-no-print">
          <StartWork job={job} steps={null} onStart={onStart} />
        </div>
      )}
      {open === 'release' && (
        <Sheet title={`Release: ${job.title}`} onClose={() => setOpen(null)}>
          <ReleaseForm job={job} dossier={dossier} catalogue={catalogue} now={now} onDone={done} />
        </Sheet>
      )}
      {open === 'stop' && (
        <Sheet title={`Stop without a release: ${job.title}`} onClose={() => setOpen(null)}>
          <StopForm jobId={job.id} onDone={done} />
        </Sheet>
      )}
    </div>
  );
}

function StopForm({ jobId, onDone }: { jobId: string; onDone: () => Promise<void> }) {
  const [reason, setReason] = useState('');
  const { run, busy, problem, at } = useAct();
  const [stop] = useMutation(StopJobMutation);
  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        const input = { jobId, reason };
        void run(() => stop({ variables: { input } }), 'The job is stopped; the aircraft stays held.').then(
          (stopped) => (stopped ? onDone() : undefined),
        );
      }}
    >
      <p>The aircraft stays held until the job is started again and released, or a manager lifts its hold.</p>
      <Field label="Why it is stopped" error={at('reason')}>
        <input value={reason} maxLength={500} onChange={(event) => setReason(event.target.value)} />
      </Field>
      <ProblemNote problem={problem} fields={['reason']} />
      <div className="tw-row">
        <Button type="submit" busy={busy}>
          Stop the job
        </Button>
      </div>
    </form>
  );
}
