import { useMutation } from '@apollo/client/react';
import { useState } from 'react';
import { Link, useSearchParams } from 'react-router';
import { useSession } from '../../../app/session.js';
import { Button } from '../../../ui/button.js';
import { Sheet } from '../../../ui/sheet.js';
import { StatusMark } from '../../../ui/status-mark.js';
import {
  AircraftQuery,
  BeginWorkMutation,
  LiftHoldMutation,
  PlaceHoldMutation,
  type AircraftAnswer,
  type Hold,
} from '../query.js';
import { WordForm } from './word-form.js';

export interface HoldsProps {
  readonly aircraft: AircraftAnswer;
  readonly when: (instant: string) => string;
}

/** What keeps the aircraft on the ground, before anything else; placing a hold, lifting one, and taking it into work. */
export function Holds({ aircraft, when }: HoldsProps) {
  const { viewer } = useSession();
  const [params, setParams] = useSearchParams();
  const asked = params.get('hold');
  const open = aircraft.holds.filter((each) => each.open);
  const over = aircraft.holds.filter((each) => !each.open);
  const ask = (hold: string | null) => {
    const next = new URLSearchParams(params);
    if (hold === null) next.delete('hold');
    else next.set('hold', hold);
    setParams(next, { replace: true });
  };
  const may = viewer.may.includes('hold.place');
  const mayWork = viewer.may.includes('jobs.use');
  if (open.length === 0 && over.length === 0 && !may && !mayWork) return null;
  const close = () => ask(null);
  return (
    <section className="tw-stack tw-holds" aria-label="Holds">
      {open.map((hold) => (
        <OpenHold key={hold.id} hold={hold} aircraftId={aircraft.id} when={when} />
      ))}
      {asked === 'place' && may && (
        <Sheet title={`Hold ${aircraft.registration}`} onClose={close}>
          <PlaceForm aircraftId={aircraft.id} onDone={close} />
        </Sheet>
      )}
      {asked === 'work' && mayWork && (
        <Sheet title={`Take ${aircraft.registration} into work`} onClose={close}>
          <p>It is held from now until the work is released. What is done is recorded on its job screen.</p>
          <WorkForm aircraftId={aircraft.id} onDone={close} />
        </Sheet>
      )}
      <div className="tw-row tw-no-print">
        {may && asked !== 'place' && <Button onClick={() => ask('place')}>Hold the aircraft</Button>}
        {mayWork && asked !== 'work' && <Button onClick={() => ask('work')}>Take it into work</Button>}
        {over.length > 0 && <Earlier holds={over} when={when} />}
      </div>
    </section>
  );
}

function OpenHold({ hold, aircraftId, when }: { hold: Hold; aircraftId: string; when: HoldsProps['when'] }) {
  const { viewer } = useSession();
  const [lifting, setLifting] = useState(false);
  const mayLift = viewer.may.includes('hold.lift') && (hold.job === null || viewer.may.includes('hold.lift-job'));
  return (
    <div className="tw-sheet tw-stack tw-hold" data-status={hold.job === null ? 'held' : 'in-work'}>
      <div className="tw-row">
        <StatusMark status={hold.job === null ? 'held' : 'in-work'} />
        <strong>{hold.reason}</strong>
        <span className="tw-soft">
          {hold.by}, since {when(hold.from)}
        </span>
      </div>
      {hold.job && (
        <p className="tw-small">
          Its release lets the aircraft fly again.{' '}
          {viewer.may.includes('jobs.use') && <Link to="job">To the work on this aircraft</Link>}
        </p>
      )}
      {mayLift && !lifting && (
        <div className="tw-row tw-no-print">
          <Button look="quiet" onClick={() => setLifting(true)}>
            {hold.job === null ? 'Lift this hold' : 'Lift it without a release'}
          </Button>
        </div>
      )}
      {lifting && <LiftForm hold={hold} aircraftId={aircraftId} onDone={() => setLifting(false)} />}
    </div>
  );
}

function PlaceForm({ aircraftId, onDone }: { aircraftId: string; onDone: () => void }) {
  const [place] = useMutation(PlaceHoldMutation, { refetchQueries: [AircraftQuery], awaitRefetchQueries: true });
  return (
    <WordForm
      field="reason"
      label="Why it must not fly"
      button="Hold it now"
      said="The aircraft is held."
      send={(reason, key) => place({ variables: { input: { aircraftId, key, reason } } })}
      onDone={onDone}
    />
  );
}

function WorkForm({ aircraftId, onDone }: { aircraftId: string; onDone: () => void }) {
  const [begin] = useMutation(BeginWorkMutation, { refetchQueries: [AircraftQuery], awaitRefetchQueries: true });
  return (
    <WordForm
      field="title"
      label="What is to be done"
      button="Start work"
      said="The aircraft is in work, and held until its release."
      send={(title, key) => begin({ variables: { input: { aircraftId, key, title } } })}
      onDone={onDone}
    />
  );
}

function LiftForm({ hold, aircraftId, onDone }: { hold: Hold; aircraftId: string; onDone: () => void }) {
  const [lift] = useMutation(LiftHoldMutation, { refetchQueries: [AircraftQuery], awaitRefetchQueries: true });
  return (
    <WordForm
      field="reason"
      label="Why it may fly again"
      button={hold.job === null ? 'Lift the hold' : 'Stop the job and lift its hold'}
      said="The hold is lifted."
      send={(reason, key) => lift({ variables: { input: { aircraftId, key, holdId: hold.id, reason } } })}
      onDone={onDone}
    />
  );
}

function Earlier({ holds, when }: { holds: readonly Hold[]; when: HoldsProps['when'] }) {
  return (
    <details>
      <summary>Earlier holds ({holds.length})</summary>
      <ul className="tw-stack">
        {holds.map((hold) => (
          <li key={hold.id}>
            {hold.reason}, {hold.by}, from {when(hold.from)}
            {hold.until && ` until ${when(hold.until)}`}
            {hold.lifted && (
              <span className="tw-soft">
                : {hold.lifted.reason}
                {hold.lifted.by && `, ${hold.lifted.by}`}
              </span>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
