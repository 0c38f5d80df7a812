import { useQuery } from '@apollo/client/react';
import type { Catalogue, Dossier } from '@tallywing/rules';
import { gapsOf } from '@tallywing/rules';
import { useMemo, useState } from 'react';
import { Link, useParams } from 'react-router';
import { useEquipmentTypes } from '../../app/equipment-types.js';
import { problemOf } from '../../app/problem.js';
import type { Profile } from '../../trade/effect.js';
import { clockNow } from '../../trade/time.js';
import { namesIn } from '../../trade/units.js';
import { Caution } from '../../ui/caution.js';
import { Empty, Loading, Trouble } from '../../ui/states.js';
import { countWords } from '../../ui/words.js';
import { Accept } from './components/accept.js';
import type { Found } from './components/record-here.js';
import { StateLists } from './components/state-lists.js';
import { Tie } from './components/tie.js';
import { Visits } from './components/visits.js';
import { TakingOnAircraftQuery } from './query.js';
import './taking-on.css';

/** The first hour with one aircraft: what is missing, most useful first, and what can be settled right here. */
export function TakingOnAircraftScreen() {
  const { id = '' } = useParams();
  const { data, error, refetch } = useQuery(TakingOnAircraftQuery, { variables: { id } });
  const types = useEquipmentTypes();
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data || (!types.all && !types.error)) return <Loading what="the aircraft record" />;
  const { aircraft, profiles } = data;
  if (!aircraft?.dossier)
    return (
      <Empty title="There is no record to look into here.">
        <p>The aircraft does not exist for you, or your role may not see its record.</p>
        <Link to="/taking-on">To all aircraft</Link>
      </Empty>
    );
  const slice = (aircraft.catalogue ?? { version: '', types: {} }) as Catalogue;
  return (
    <Shown
      key={aircraft.id}
      aircraft={aircraft}
      dossier={aircraft.dossier as Dossier}
      catalogue={{ version: slice.version, types: { ...types.all, ...slice.types } }}
      profiles={profiles as readonly Profile[]}
      onRecorded={async () => void (await refetch())}
    />
  );
}

interface ShownProps {
  readonly aircraft: Found['aircraft'] & { readonly make: string; readonly model: string };
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly profiles: readonly Profile[];
  readonly onRecorded: () => Promise<void>;
}

function Shown({ aircraft, dossier, catalogue, profiles, onRecorded }: ShownProps) {
  const [now] = useState(clockNow);
  const gaps = useMemo(
    () => gapsOf(dossier, catalogue, { instant: now }, profiles),
    [dossier, catalogue, profiles, now],
  );
  const names = useMemo(() => namesIn(dossier), [dossier]);
  const found: Found = { aircraft, dossier, names, catalogue, profiles, now, onRecorded };
  const told = profiles.length - gaps.flights.length;
  return (
    <div className="tw-stack-wide">
      <header className="tw-screen-head">
        <div className="tw-stack">
          <h1>
            Taking on <span className="tw-mono">{aircraft.registration}</span> {aircraft.make} {aircraft.model}
          </h1>
          <p>
            <label htmlFor="told">
              {told} of {countWords(profiles.length, 'flight')} can be told;{' '}
              {gaps.open.length === 0 ? 'no answer is open' : `${countWords(gaps.open.length, 'answer')} open`}.
            </label>{' '}
            <progress id="told" max={Math.max(profiles.length, 1)} value={told} />
          </p>
        </div>
        <div className="tw-row tw-no-print">
          <Link to="/taking-on">All aircraft</Link>
          <Link to={`/aircraft/${aircraft.id}`}>Back to the aircraft</Link>
        </div>
      </header>
      <Visits gaps={gaps} found={found} />
      <Accept acceptable={gaps.acceptable} found={found} />
      <StateLists found={found} />
      <Tie found={found} />
      <Caution />
    </div>
  );
}
