import { whenWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import type { Dossier } from '@tallywing/rules';
import type { ReactNode } from 'react';
import { Link, useParams } from 'react-router';
import { problemOf } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import { useParamsState } from '../../app/use-params-state.js';
import { instantAt } from '../../trade/time.js';
import { Button } from '../../ui/button.js';
import { Caution } from '../../ui/caution.js';
import { Empty, Loading, Trouble } from '../../ui/states.js';
import { countWords } from '../../ui/words.js';
import { AskForm } from './components/ask-form.js';
import { RecordThen } from './components/record-then.js';
import { ShownThen, TodayThen } from './components/shown-then.js';
import { LookBackQuery, ZoneQuery, type LookBackAnswer } from './query.js';
import { NoSuchAircraft, NotForThisRole } from './screen.js';
import './history.css';

/** One aircraft as it stood at a moment: its record, what was shown then, and what today's rules say of it. */
export function LookBackScreen() {
  const { id = '' } = useParams();
  const { viewer } = useSession();
  const { data, error, refetch } = useQuery(ZoneQuery, {
    variables: { id },
    skip: !viewer.may.includes('aircraft.history'),
  });
  if (!viewer.may.includes('aircraft.history')) return <NotForThisRole id={id} />;
  if (error && !data) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data) return <Loading what="the aircraft" />;
  return data.aircraft ? <LookBack id={id} zone={data.aircraft.base.zone} /> : <NoSuchAircraft />;
}

function LookBack({ id, zone }: { id: string; zone: string }) {
  const [asked, ask] = useParamsState(['at', 'entry', 'known']);
  const { data, previousData, loading, error, refetch } = useQuery(LookBackQuery, {
    variables: {
      id,
      at: asked.entry === '' && asked.at !== '' ? instantAt(asked.at, zone) : null,
      entry: asked.entry === '' ? null : Number(asked.entry),
      knowledge: asked.known === 'now' ? 'NOW' : 'THEN',
    },
  });
  const aircraft = (data ?? previousData)?.aircraft;
  const when = (instant: string) => whenWords(instant, zone);
  return (
    <div className="tw-stack-wide">
      <header className="tw-screen-head">
        <div>
          <h1>
            {aircraft && <span className="tw-mono">{aircraft.registration}</span>} as it stood
            {aircraft?.asItStood && ` on ${when(aircraft.asItStood.at)}`}
          </h1>
          <p className="tw-look-back" role="note">
            <strong>A look back.</strong> Nothing can be recorded here, and nothing here says what the aircraft may be
            used for today. <Link to={`/aircraft/${id}`}>The aircraft now</Link>
          </p>
        </div>
        <div className="tw-row tw-no-print">
          <Link to={`/aircraft/${id}/history`} className="tw-button-link">
            All entries
          </Link>
          <Button onClick={() => window.print()}>Print</Button>
        </div>
      </header>
      <AskForm asked={asked} zone={zone} onAsk={ask} />
      <Answered busy={loading} error={error} answer={aircraft?.asItStood} when={when} onRetry={() => void refetch()} />
      <Caution />
    </div>
  );
}

function Answered(props: {
  busy: boolean;
  error: unknown;
  answer: LookBackAnswer | null | undefined;
  when: (instant: string) => string;
  onRetry: () => void;
}) {
  const { busy, error, answer, when, onRetry } = props;
  if (error && !busy) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={onRetry} />;
  }
  if (answer === undefined) return <Loading what="the record of then" />;
  if (answer === null) {
    return (
      <Empty title="Nothing had been written down yet.">
        <p>The record of this aircraft begins later. Choose a later moment, or ask by what is known now about then.</p>
      </Empty>
    );
  }
  return (
    <div className="tw-stack-wide" aria-busy={busy}>
      <p>{standsOn(answer)}</p>
      {answer.later.length > 0 && <Later answer={answer} />}
      <Part id="shown" title="What was shown then, and what today’s rules say of it">
        <ShownThen shown={answer.shown} when={when} />
      </Part>
      <Part id="today" title={`Today’s rules on this record, for ${when(answer.at)}`}>
        <p className="tw-soft">
          Version {answer.today.rules} of the rules, for the flights that the house asks about today
          {answer.knowledge === 'NOW' ? ', on what is known now about then' : ''}.
        </p>
        <TodayThen today={answer.today} />
      </Part>
      <Part id="record" title="The record">
        <RecordThen dossier={answer.dossier as Dossier} when={when} />
      </Part>
    </div>
  );
}

function standsOn({ entry, entries, knowledge, undated }: LookBackAnswer): string {
  const last =
    entry === 0 ? 'Nothing had been written down by then.' : `The last entry written by then is entry ${entry}.`;
  if (knowledge === 'THEN')
    return `${last} The record rests on the ${countWords(entries, 'entry', 'entries')} up to it.`;
  const out =
    undated === 0
      ? ''
      : ` ${countWords(undated, 'entry', 'entries')} written later ${undated === 1 ? 'names' : 'name'} no day and ${undated === 1 ? 'is' : 'are'} left out: nobody said that it was so before.`;
  return `${last} The record rests on ${countWords(entries, 'entry', 'entries')} about days until then.${out}`;
}

/** Entries that speak of then and were written afterwards. */
function Later({ answer }: { answer: LookBackAnswer }) {
  const first = answer.later.slice(0, 20);
  return (
    <p>
      Written later about days until then{answer.knowledge === 'NOW' ? ', and counted here' : ', and not counted here'}:{' '}
      {first.map((entry, at) => (
        <span key={entry}>
          {at > 0 && ', '}
          <Link to={`../history?from=${entry}#entry-${entry}`} relative="path">
            entry {entry}
          </Link>
        </span>
      ))}
      {answer.later.length > first.length && ` and ${answer.later.length - first.length} more`}.
    </p>
  );
}

function Part({ id, title, children }: { id: string; title: string; children: ReactNode }) {
  return (
    <section id={id} aria-labelledby={`${id}-title`} className="tw-look-back-part">
      <h2 id={`${id}-title`}>{title}</h2>
      {children}
    </section>
  );
}
