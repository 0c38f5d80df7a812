import { useApolloClient, useMutation } from '@apollo/client/react';
import type { Catalogue, Dossier } from '@tallywing/rules';
import { useMemo, useState } from 'react';
import { problemBeside, useAct } from '../../../app/use-act.js';
import { useSession } from '../../../app/session.js';
import { alike, effectOf, judgeAll, type Profile } from '../../../trade/effect.js';
import type { Names } from '@tallywing/rules';
import { Button } from '../../../ui/button.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { listWords } from '../../../ui/words.js';
import { tried } from '../found.js';
import { settledBy, settledWords } from '../settled.js';
import { RecordFound } from '../query.js';

/** The aircraft as it stands, and what a form of this screen needs to try and to record something on it. */
export interface Found {
  readonly aircraft: {
    readonly id: string;
    readonly registration: string;
    readonly revision: number;
    readonly base: { readonly zone: string };
  };
  readonly dossier: Dossier;
  /** What its units, static systems and joints are called. */
  readonly names: Names;
  readonly catalogue: Catalogue;
  readonly profiles: readonly Profile[];
  readonly now: string;
  readonly onRecorded: () => Promise<void>;
}

export interface RecordHereProps {
  readonly found: Found;
  /** The change, with words in place of what is missing; null while there is none. */
  readonly change: unknown;
  /** What the person still has to fill in before it is recorded. */
  readonly lacking: readonly string[];
  readonly onDone: () => void;
}

/** Which answers it would change, by the same rules that judge on the server; then it is recorded. */
export function RecordHere({ found, change, lacking, onDone }: RecordHereProps) {
  const { viewer } = useSession();
  const { dossier, catalogue, now, aircraft } = found;
  const client = useApolloClient();
  const [commit] = useMutation(RecordFound);
  const act = useAct();
  const [key, setKey] = useState(() => crypto.randomUUID());
  const attempt = useMemo(
    () => (change === null ? null : tried(change, dossier, catalogue, now)),
    [change, dossier, catalogue, now],
  );
  const mayRecord = viewer.may.includes('aircraft.record');
  const ready = attempt?.ok === true && lacking.length === 0;

  async function record() {
    if (!ready || attempt?.ok !== true) return;
    const { input } = attempt;
    const done = await act.run(
      () =>
        commit({
          variables: {
            input: { aircraftId: aircraft.id, expectedRevision: aircraft.revision, key, changes: [input] as never },
          },
        }),
      'Recorded.',
    );
    setKey(crypto.randomUUID());
    // Somebody else may have recorded in between: either way the record is read again, and what is typed stays.
    await found.onRecorded();
    if (!done) return;
    onDone();
    await client.refetchQueries({ include: 'active' });
  }

  return (
    <div className="tw-stack" aria-live="polite">
      {attempt?.ok === true && <Changed found={found} after={attempt.after} />}
      {attempt?.ok === false && (
        <p className="tw-field-error" role="alert">
          {attempt.says}
        </p>
      )}
      {act.problem && (
        <p className="tw-field-error" role="alert">
          {problemBeside(act.problem, [])}
        </p>
      )}
      <div className="tw-row">
        <Button busy={act.busy} disabled={!mayRecord || !ready} onClick={() => void record()}>
          {act.busy ? 'Recording…' : 'Record it'}
        </Button>
        <span className="tw-soft tw-small">
          {!mayRecord
            ? 'Your role may look here, not record.'
            : lacking.length > 0 && `Still needed: ${listWords(lacking)}.`}
        </span>
      </div>
    </div>
  );
}

function Changed({ found, after }: { found: Found; after: Dossier }) {
  const { dossier, catalogue, profiles, now } = found;
  const standing = useMemo(() => judgeAll(dossier, catalogue, profiles, now), [dossier, catalogue, profiles, now]);
  const { effect, settled } = useMemo(() => {
    const then = judgeAll(after, catalogue, profiles, now);
    return { effect: effectOf(standing, then, profiles), settled: settledBy(standing, then) };
  }, [standing, after, catalogue, profiles, now]);
  const changed = effect.profiles.filter((each) => each.before !== each.after);
  return (
    <div className="tw-stack">
      <p>
        {settledWords(settled)} {changed.length === 0 ? 'No flight changes by it.' : 'Flights that change:'}
      </p>
      {changed.length > 0 && (
        <ul>
          {alike(changed).map((each) => (
            <li key={each.names.join()}>
              {listWords(each.names)}: <StatusMark status={each.before} /> <span aria-hidden="true">→</span>
              <span className="tw-hidden">becomes</span> <StatusMark status={each.after} />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
