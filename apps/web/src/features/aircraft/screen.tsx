import { codeWords, whenWords, factWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import type { Dossier } from '@tallywing/rules';
import type { ReactNode } from 'react';
import { Link, useParams, useSearchParams } from 'react-router';
import { problemOf } from '../../app/problem.js';
import { useSession } from '../../app/session.js';
import type { Names } from '@tallywing/rules';
import { instantAt, untilWords } from '../../trade/time.js';
import { Button } from '../../ui/button.js';
import { Caution } from '../../ui/caution.js';
import { Empty, Loading, Trouble } from '../../ui/states.js';
import { StatusMark } from '../../ui/status-mark.js';
import { ChosenLine } from './components/chosen-line.js';
import { History } from './components/history.js';
import { Holds } from './components/holds.js';
import { SaySo } from './components/say-so.js';
import { DatabasesTable, DueTable, FindingsTable, LinksTable, MetersTable, UnitsTable } from './components/tables.js';
import { Verdicts } from './components/verdicts.js';
import { AircraftQuery, type AircraftAnswer } from './query.js';
import './aircraft.css';

/** One aircraft: what it may be used for and why, until when, what is open, due and installed. */
export function AircraftScreen() {
  const { id = '' } = useParams();
  const [params] = useSearchParams();
  const hours = Number(params.get('hours') ?? '');
  const zone = useZone(id);
  const at = params.get('at');
  const asked = {
    at: at && zone ? instantAt(at, zone) : null,
    hoursAhead: params.get('hours') && Number.isFinite(hours) ? hours : null,
  };
  const { data, previousData, error, refetch } = useQuery(AircraftQuery, { variables: { id, ...asked } });
  const aircraft = (data ?? previousData)?.aircraft;
  if (error && !aircraft) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={() => void refetch()} />;
  }
  if (!data && !aircraft) return <Loading what="the aircraft" />;
  if (!aircraft) return <NoSuchAircraft />;
  const chosen = params.get('profile') ?? aircraft.verdicts[0]?.profile.id ?? '';
  return <Shown aircraft={aircraft} asked={asked} chosen={chosen} />;
}

/** Known once the aircraft is; a moment in the address waits for it. */
function useZone(id: string): string | null {
  const { data } = useQuery(AircraftQuery, { variables: { id, at: null, hoursAhead: null } });
  return data?.aircraft?.base.zone ?? null;
}

interface ShownProps {
  readonly aircraft: AircraftAnswer;
  readonly asked: { readonly at: string | null; readonly hoursAhead: number | null };
  readonly chosen: string;
}

function Shown({ aircraft, asked, chosen }: ShownProps) {
  const when = (instant: string) => whenWords(instant, aircraft.base.zone);
  const until = (instant: string) => untilWords(instant, aircraft.base.zone);
  const dossier = aircraft.dossier as Dossier | null;
  const names = aircraft.names as Names;
  const unitName = (id: string) => names[id] ?? codeWords(id);
  const meterName = (meterId: string) => aircraft.meters.find((meter) => meter.id === meterId)?.name ?? meterId;
  return (
    <div className="tw-stack-wide tw-aircraft">
      <Head aircraft={aircraft} when={when} asked={asked} />
      <Holds aircraft={aircraft} when={when} />
      <nav aria-label="On this page" className="tw-page-nav tw-no-print">
        <a href="#verdicts">What it may be used for</a>
        <a href="#findings">Findings ({aircraft.findings.length})</a>
        <a href="#due">Due ({aircraft.due.length})</a>
        {dossier && <a href="#units">Units and joints ({dossier.configuration.units.length})</a>}
        <a href="#databases">Databases</a>
        <a href="#meters">Meters</a>
        {dossier && <a href="#history">Entries</a>}
      </nav>
      <Part id="verdicts" title="What it may be used for">
        <Verdicts aircraft={aircraft} asked={asked} chosen={chosen} until={until} unitName={unitName} />
        <SaySo aircraft={aircraft} when={when} />
        <ChosenLine aircraft={aircraft} profileId={chosen} when={when} />
        <Caution />
      </Part>
      <Part id="findings" title="Open findings">
        <FindingsTable aircraft={aircraft} asked={asked} when={when} names={names} />
        <FindOut aircraft={aircraft} names={names} />
      </Part>
      <Part id="due" title="Due list">
        <DueTable due={aircraft.due} meterName={meterName} when={when} />
      </Part>
      {dossier && (
        <Part id="units" title="Units and joints">
          <UnitsTable dossier={dossier} />
          <LinksTable dossier={dossier} />
        </Part>
      )}
      <Part id="databases" title="Databases">
        <DatabasesTable databases={aircraft.databases} when={when} />
      </Part>
      <Part id="meters" title="Meters">
        <MetersTable meters={aircraft.meters} when={when} />
      </Part>
      {dossier && (
        <Part id="history" title="Entries of the record">
          <History aircraftId={aircraft.id} when={when} />
        </Part>
      )}
    </div>
  );
}

function Head({
  aircraft,
  when,
  asked,
}: {
  aircraft: AircraftAnswer;
  when: (instant: string) => string;
  asked: ShownProps['asked'];
}) {
  const { viewer } = useSession();
  return (
    <header className="tw-screen-head">
      <div>
        <h1>
          <span className="tw-mono">{aircraft.registration}</span> {aircraft.make} {aircraft.model}
        </h1>
        <p className="tw-soft">
          {[
            aircraft.serial && `serial ${aircraft.serial}`,
            aircraft.operator?.name,
            `${aircraft.base.name} (${aircraft.base.zone.replace(/_/g, ' ')} time)`,
          ]
            .filter(Boolean)
            .join(', ')}
          ; last entry number {aircraft.revision}, {when(aircraft.updatedAt)}
        </p>
        {asked.at && (
          <p>
            Judged for {when(asked.at)}
            {asked.hoursAhead !== null && ` with ${asked.hoursAhead} flight hours from the last reading`}.{' '}
            <Link to="?">Judge for now</Link>
          </p>
        )}
        {aircraft.judgingAgain && (
          <p>
            <StatusMark status="judged-again" /> <span className="tw-soft">No yes counts until that is done.</span>
          </p>
        )}
      </div>
      <div className="tw-row tw-no-print">
        {viewer.may.includes('aircraft.dossier') && <Link to="taking-on">What is missing</Link>}
        {viewer.may.includes('export.aircraft') && (
          <a href={`/exports/aircraft/${aircraft.id}`} download>
            Write out
          </a>
        )}
        {viewer.may.includes('aircraft.record') && (
          <Link to="job" className="tw-button-link" data-look="main">
            Plan or record work
          </Link>
        )}
        <Button onClick={() => window.print()}>Print</Button>
      </div>
    </header>
  );
}

function Part({ id, title, children }: { id: string; title: string; children: ReactNode }) {
  return (
    <section id={id} aria-labelledby={`${id}-title`} className="tw-stack tw-part">
      <h2 id={`${id}-title`}>{title}</h2>
      {children}
    </section>
  );
}

function FindOut({ aircraft, names }: { aircraft: AircraftAnswer; names: Names }) {
  if (aircraft.findOut.length === 0) return null;
  return (
    <div className="tw-sheet tw-stack">
      <h3>Find out and record, most useful first</h3>
      <ol className="tw-find-out">
        {aircraft.findOut.slice(0, 12).map((each) => (
          <li key={`${each.fact} ${each.subjects.join()}`}>
            {factWords(each.fact, names)}{' '}
            {each.settles.length > 0 && (
              <span className="tw-soft">
                settles {each.settles.length === 1 ? 'one answer' : `${each.settles.length} answers`}
              </span>
            )}
          </li>
        ))}
      </ol>
    </div>
  );
}

function NoSuchAircraft() {
  return (
    <Empty title="There is no such aircraft here.">
      <p>It may belong to another operator or organisation, or the link may be old.</p>
      <Link to="/">To the ready board</Link>
    </Empty>
  );
}
