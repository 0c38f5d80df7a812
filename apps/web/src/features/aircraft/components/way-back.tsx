import { capabilityWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { problemOf } from '../../../app/problem.js';
import { assumptionWords, moneyWords, spanWords, stepWords } from '../../../trade/way-back.js';
import type { Names } from '@tallywing/rules';
import { sourceStatusWords, type SourceStatusName } from '../../../ui/source.js';
import { Loading, Trouble } from '../../../ui/states.js';
import { listWords } from '../../../ui/words.js';
import { WayBackQuery, type WayBackAnswer } from '../query.js';

export interface WayBackProps {
  readonly aircraftId: string;
  readonly names: Names;
  readonly profile: string;
  readonly asked: { readonly at: string | null; readonly hoursAhead: number | null };
  readonly until: (instant: string) => string;
}

/** For a flight that is not ready: the cheapest work that would make it so. Asked when it is opened. */
export function WayBack(props: WayBackProps) {
  const [opened, setOpened] = useState(false);
  return (
    <details className="tw-reason-of tw-way-back" onToggle={(event) => setOpened(event.currentTarget.open)}>
      <summary>What would bring it back</summary>
      {opened && <Opened {...props} />}
    </details>
  );
}

function Opened({ aircraftId, names, profile, asked, until }: WayBackProps) {
  const { data, error, refetch } = useQuery(WayBackQuery, {
    variables: { id: aircraftId, profile, ...asked },
    fetchPolicy: 'cache-and-network',
  });
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  const found = data?.aircraft?.wayBack;
  if (!found) return <Loading what="the ways back" />;
  return (
    <section aria-label="Ways back" className="tw-stack tw-reason-opened">
      {found.ways.length === 0 && (
        <p>
          {found.now === 'YES'
            ? 'It is ready at this moment.'
            : found.complete
              ? 'No work known here leads to a yes: what stops it is not for a shop to change, or too little is recorded.'
              : 'The search ended before it found a way. Find out what is missing first: see the list below the findings.'}
        </p>
      )}
      {found.ways.map((way, at) => (
        <OneWay
          key={way.steps.map((step) => stepWords(step, names)).join()}
          way={way}
          names={names}
          title={at === 0 ? 'Least work' : `Another way, ${at + 1}`}
          currency={found.currency}
          until={until}
        />
      ))}
    </section>
  );
}

function OneWay({
  way,
  names,
  title,
  currency,
  until,
}: {
  way: WayBackAnswer['ways'][number];
  names: Names;
  title: string;
  currency: string | null;
  until: (instant: string) => string;
}) {
  const rests = way.hoursRestOn.toLowerCase().replace(/_/g, '-');
  const lasts = [
    ...(way.changesAt ? [until(way.changesAt)] : []),
    ...(way.hoursLeft == null ? [] : [`${way.hoursLeft} flight hours`]),
  ];
  return (
    <div className="tw-way">
      <h4>
        {title}: {spanWords(way.hours)}
        {way.money && currency !== null && `, ${moneyWords(way.money, currency)}`}
      </h4>
      <ol>
        {way.steps.map((step) => (
          <li key={stepWords(step, names)}>
            {stepWords(step, names)} <span className="tw-soft">{step.hours.typical} h</span>
          </li>
        ))}
      </ol>
      <p className="tw-small tw-soft">
        {lasts.length > 0 && `Then yes ${lasts.join(', ')}. `}
        {way.loses.length > 0 && `Gives up: ${listWords(way.loses.map(capabilityWords))}. `}
        {way.assumes.length > 0 && `Assumes that ${listWords(way.assumes.map(assumptionWords))}. `}
        Hours rest on: {sourceStatusWords[rests as SourceStatusName] ?? rests}
        {way.partsUnknown && '; prices of units and parts are not in it'}.
      </p>
    </div>
  );
}
