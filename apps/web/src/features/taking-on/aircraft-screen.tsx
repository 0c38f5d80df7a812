import { gapsOf } from '@tallywing/rules';
import { useMemo, useState } from 'react';
import { Link, useParams } from 'react-router';
import { WithAircraftRecord, type AircraftRecord } from '../../app/aircraft-record.js';
import { clockNow } from '../../trade/time.js';
import { namesIn } from '../../trade/units.js';
import { Caution } from '../../ui/caution.js';
import { countWords } from '../../ui/words.js';
import { Accept } from './components/accept.js';
import type { Found } from './components/record-here.js';
import { StateLists } from './components/state-lists.js';
import { Tie } from './components/tie.js';
import { Visits } from './components/visits.js';
import './taking-on.css';

/** The first hour with one aircraft: what is missing, most useful first, and what can be settled right here. */
export function TakingOnAircraftScreen() {
  const { id = '' } = useParams();
  return (
    <WithAircraftRecord id={id} doing="look into" back={{ to: '/taking-on', words: 'To all aircraft' }}>
      {(record) => <Shown key={record.aircraft.id} {...record} />}
    </WithAircraftRecord>
  );
}

function Shown({ aircraft, dossier, catalogue, profiles, reload }: AircraftRecord) {
  const [now] = useState(clockNow);
  const gaps = useMemo(
    () => gapsOf(dossier, catalogue, { instant: now }, profiles),
    [dossier, catalogue, profiles, now],
  );
  const names = useMemo(() => namesIn(dossier), [dossier]);
  const found: Found = {
    aircraft,
    dossier,
    names,
    catalogue,
    profiles,
    now,
    onRecorded: async () => void (await reload()),
  };
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
