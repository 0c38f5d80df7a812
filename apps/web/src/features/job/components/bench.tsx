import { useApolloClient, useMutation } from '@apollo/client/react';
import { type Catalogue, type Dossier, localTimeAt, whenWords } from '@tallywing/rules';
import { useState } from 'react';
import { Link } from 'react-router';
import type { AircraftRecord } from '../../../app/aircraft-record.js';
import { problemOf, type Problem } from '../../../app/problem.js';
import { useSession } from '../../../app/session.js';
import { useMinute } from '../../../app/use-minute.js';
import { Trouble } from '../../../ui/states.js';
import { Desk } from '../desk.js';
import type { Profile } from '../../../trade/effect.js';
import { specFor } from '../follow.js';
import { inputOf } from '../../../form/change-input.js';
import type { Plan, Step } from '../plan.js';
import { CommitMutation, type Recorded } from '../query.js';
import { useDraft } from '../use-draft.js';
import { InWork, useJobInWork } from './in-work.js';
import { KeptPlans } from './kept-plans.js';
import { Meanwhile } from './meanwhile.js';
import { RecordedNote } from './recorded-note.js';
import { Refused } from './refused.js';

export interface BenchProps {
  readonly aircraft: AircraftRecord['aircraft'];
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly profiles: readonly Profile[];
  /** Loads the record again and gives its entry number. */
  readonly onReload: () => Promise<number | null>;
}

/** Keeps the draft, sends it, and shows what came of it: recorded, refused, or changed by somebody else meanwhile. */
export function Bench({ aircraft, dossier, catalogue, profiles, onReload }: BenchProps) {
  const { viewer } = useSession();
  const client = useApolloClient();
  const [commit, { loading }] = useMutation(CommitMutation);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [recorded, setRecorded] = useState<Recorded | null>(null);
  const drafts = useDraft(aircraft.id, aircraft.revision);
  const { draft } = drafts;
  const [starting, setStarting] = useState(false);
  const [chosen, setChosen] = useState<string | null>(null);
  const jobInWork = useJobInWork(aircraft.id, chosen);
  const { zone } = aircraft.base;
  const now = useMinute();

  /** The hold that starting places is an entry of our own, not somebody else's change; nothing is recorded beside it. */
  async function begin(start: () => Promise<unknown>, steps: readonly Step[] | null) {
    setStarting(true);
    try {
      await start();
      const revision = await onReload();
      drafts.begin(aircraft.revision, revision ?? aircraft.revision, steps);
    } finally {
      setStarting(false);
    }
  }

  async function record(plan: Plan) {
    setProblem(null);
    setRecorded(null);
    const changes = plan.steps.map(({ step }) => inputOf(step, specFor(step.kind)));
    try {
      const { data } = await commit({
        variables: {
          input: {
            aircraftId: aircraft.id,
            expectedRevision: draft.revision,
            key: draft.commitKey,
            changes: changes as never,
            jobId: jobInWork,
          },
        },
      });
      if (!data) return;
      drafts.clear(data.commitChanges.revision);
      setRecorded(data.commitChanges);
      // Everything shown elsewhere was judged before this work.
      await client.refetchQueries({ include: 'active' });
      client.cache.evict({ id: client.cache.identify({ __typename: 'Aircraft', id: aircraft.id }) ?? '' });
      for (const fieldName of [
        'readyBoard',
        'findings',
        'dueAhead',
        'databaseCurrency',
        'changesSince',
        'openFindings',
        'dueByWeek',
      ]) {
        client.cache.evict({ id: 'ROOT_QUERY', fieldName });
      }
    } catch (error) {
      const found = problemOf(error);
      if (found.code === 'STALE_REVISION') await onReload();
      setProblem(found);
    }
  }

  // While our own work is on its way the record may be seen to move before its answer is here.
  const behind = !loading && !starting && draft.steps.length > 0 && draft.revision < aircraft.revision;
  return (
    <div className="tw-stack-wide">
      <header className="tw-screen-head">
        <div>
          <h1>
            Work on <span className="tw-mono">{aircraft.registration}</span>
          </h1>
          <p className="tw-soft">
            {aircraft.make} {aircraft.model}; last entry number {aircraft.revision}; times are those of{' '}
            {aircraft.base.name}
          </p>
        </div>
        <Link to={`/aircraft/${aircraft.id}`}>Back to the aircraft</Link>
      </header>
      {recorded && <RecordedNote recorded={recorded} aircraftId={aircraft.id} />}
      {behind && (
        <Meanwhile
          aircraftId={aircraft.id}
          since={draft.revision}
          now={aircraft.revision}
          when={(instant) => whenWords(instant, zone)}
          onSeen={() => {
            setProblem(null);
            drafts.rebase(aircraft.revision);
          }}
        />
      )}
      {problem && problem.code !== 'STALE_REVISION' && <Refused problem={problem} />}
      {drafts.unreadable && (
        <Trouble
          title="An older plan for this aircraft is on this device."
          wayOut="It was made with an older form of this screen and cannot be shown here; it stays on the device until you plan something new."
        />
      )}
      {!drafts.kept && (
        <Trouble
          title="This device does not keep the plan."
          wayOut="Its storage is full or switched off: record the work before you leave this page."
        />
      )}
      <InWork
        aircraftId={aircraft.id}
        dossier={dossier}
        catalogue={catalogue}
        now={now}
        recordsFor={jobInWork}
        onRecordFor={setChosen}
        onStart={begin}
        onChanged={onReload}
      />
      <KeptPlans
        aircraftId={aircraft.id}
        draft={draft}
        onTakeUp={drafts.setSteps}
        onStart={begin}
        when={(instant) => whenWords(instant, zone)}
      />
      <Desk
        dossier={dossier}
        catalogue={catalogue}
        profiles={profiles}
        now={now}
        today={localTimeAt(now, zone).slice(0, 10)}
        by={viewer.name}
        steps={draft.steps}
        onSteps={(steps) => {
          setRecorded(null);
          drafts.setSteps(steps);
        }}
        mayRecord={viewer.may.includes('aircraft.record') && !behind}
        recording={loading || starting}
        onRecord={(plan) => void record(plan)}
      />
    </div>
  );
}
