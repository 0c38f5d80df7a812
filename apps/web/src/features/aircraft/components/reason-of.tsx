import { whenWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import type { Dossier, Explained } from '@tallywing/rules';
import { useMemo, useState } from 'react';
import { Link } from 'react-router';
import { problemOf } from '../../../app/problem.js';
import { evidenceNames, reasonOf, type ReasonContext } from '../../../trade/reasons.js';
import { remedyWords } from '../../../trade/remedies.js';
import type { Names } from '@tallywing/rules';
import { ReasonTree } from '../../../ui/reason-tree.js';
import { Loading, Trouble } from '../../../ui/states.js';
import { hoursWords } from '../../../ui/words.js';
import { ReasonQuery, type AircraftAnswer } from '../query.js';

export interface ReasonOfProps {
  readonly aircraft: AircraftAnswer;
  readonly resultKey: string;
  readonly text: string;
  readonly profile: string | null;
  readonly asked: { readonly at: string | null; readonly hoursAhead: number | null };
}

/** One finding that opens into its clauses: fact, where it was recorded, limit, source, what would change it. */
export function ReasonOf(props: ReasonOfProps) {
  const [opened, setOpened] = useState(false);
  return (
    <details className="tw-reason-of" onToggle={(event) => setOpened(event.currentTarget.open)}>
      <summary>{props.text}</summary>
      {opened && <Opened {...props} />}
    </details>
  );
}

function Opened({ aircraft, resultKey, profile, asked }: ReasonOfProps) {
  const { data, error, refetch } = useQuery(ReasonQuery, {
    variables: { id: aircraft.id, key: resultKey, profile, ...asked },
  });
  const context = useContextOf(aircraft);
  if (error) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the reason" />;
  const reason = data.aircraft?.reason;
  if (!reason) return <p className="tw-soft">No rule says anything under this name any more.</p>;
  return (
    <div className="tw-stack tw-reason-opened">
      <p className="tw-small">
        <span className="tw-soft">The rule asks: </span>
        {reason.asks} <Link to={`/rules/${reason.ruleId}`}>The rule and its worked cases</Link>
      </p>
      <ReasonTree reasons={[reasonOf(reason.clause as Explained, context, resultKey)]} />
      {(reason.changesAt || reason.hoursLeft != null) && (
        <p className="tw-small">
          Changes by itself{reason.changesAt && ` on ${context.when(reason.changesAt)}`}
          {reason.hoursLeft != null && ` after ${hoursWords(Math.round(reason.hoursLeft * 100))} of flight`}.
        </p>
      )}
      {reason.remedies.length > 0 && (
        <div className="tw-small">
          <p className="tw-soft">What would change it</p>
          <ul>
            {reason.remedies.map((remedy) => (
              <li key={`${remedy.kind} ${remedy.change} ${remedy.subject}`}>{remedyWords(remedy, context.names)}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}

/** A dispatcher gets no record to name entries from; their ids stand for them. */
function useContextOf(aircraft: AircraftAnswer): ReasonContext {
  return useMemo(() => {
    const names = aircraft.dossier ? evidenceNames(aircraft.dossier as Dossier) : (id: string) => id;
    return {
      when: (instant) => whenWords(instant, aircraft.base.zone),
      meterName: (id) => aircraft.meters.find((meter) => meter.id === id)?.name ?? id,
      evidence: names,
      names: aircraft.names as Names,
    };
  }, [aircraft]);
}
