import { useParams } from 'react-router';
import { WithAircraftRecord } from '../../app/aircraft-record.js';
import { Bench } from './components/bench.js';

/** Plans and records work on one aircraft, with its effect beside it before anything is recorded. */
export function JobScreen() {
  const { id = '' } = useParams();
  return (
    <WithAircraftRecord id={id} doing="work on" back={{ to: '/', words: 'To the ready board' }}>
      {({ aircraft, dossier, catalogue, profiles, reload }) => (
        <Bench
          key={aircraft.id}
          aircraft={aircraft}
          dossier={dossier}
          catalogue={catalogue}
          profiles={profiles}
          onReload={reload}
        />
      )}
    </WithAircraftRecord>
  );
}
