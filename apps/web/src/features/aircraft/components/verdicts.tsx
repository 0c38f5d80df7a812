import { Link, useSearchParams } from 'react-router';
import { meansWords, statusOfAnswer } from '../../../trade/verdict.js';
import type { Names } from '@tallywing/rules';
import { sourceStatusWords, type SourceStatusName } from '../../../ui/source.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { listWords } from '../../../ui/words.js';
import type { AircraftAnswer } from '../query.js';
import { ReasonOf } from './reason-of.js';
import { WayBack } from './way-back.js';

export interface VerdictsProps {
  readonly aircraft: AircraftAnswer;
  readonly asked: { readonly at: string | null; readonly hoursAhead: number | null };
  readonly chosen: string;
  /** 'through 30 Jun 2027', in the base's calendar. */
  readonly until: (instant: string) => string;
  readonly unitName: (id: string) => string;
}

/** Each flight profile with its answer, and under it every reason, to be opened. */
export function Verdicts({ aircraft, asked, chosen, until, unitName }: VerdictsProps) {
  return (
    <ul className="tw-verdicts">
      {aircraft.verdicts.map((verdict) => {
        const status = statusOfAnswer(verdict);
        const weak = verdict.weakestSource?.toLowerCase().replace(/_/g, '-');
        return (
          <li key={verdict.profile.id} data-chosen={verdict.profile.id === chosen || undefined}>
            <div className="tw-verdict-head">
              <h3>
                <ChooseLink profile={verdict.profile} chosen={verdict.profile.id === chosen} />
              </h3>
              <StatusMark status={status} />
            </div>
            <p className="tw-small tw-soft">
              {[
                ...(status === 'yes' && verdict.by.length > 0
                  ? [`by ${listWords(verdict.by.map((means) => meansWords(means, unitName)))}`]
                  : []),
                ...(verdict.changesAt
                  ? [
                      status === 'yes'
                        ? until(verdict.changesAt)
                        : `changes after ${until(verdict.changesAt).replace(/^(through|until) /, '')}`,
                    ]
                  : []),
                ...(verdict.hoursLeft == null || status !== 'yes' ? [] : [`${verdict.hoursLeft} flight hours left`]),
                ...(verdict.topFt == null || status !== 'yes'
                  ? []
                  : [`tested to ${verdict.topFt.toLocaleString('en-US')} ft`]),
                ...(status === 'yes' && weak && weak !== 'verified'
                  ? [`rests on: ${sourceStatusWords[weak as SourceStatusName] ?? weak}`]
                  : []),
              ].join('; ')}
            </p>
            {verdict.because.length > 0 && (
              <div>
                <p className="tw-small tw-soft">{status === 'yes' ? 'What will end it' : 'What stops it'}</p>
                <ul className="tw-because">
                  {verdict.because.map((because) => (
                    <li key={because.key}>
                      <ReasonOf
                        aircraft={aircraft}
                        resultKey={because.key}
                        text={because.text}
                        profile={verdict.profile.id}
                        asked={asked}
                      />
                    </li>
                  ))}
                </ul>
              </div>
            )}
            {(status === 'no' || status === 'cannot-tell' || status === 'held' || status === 'not-fitted') && (
              <WayBack
                aircraftId={aircraft.id}
                names={aircraft.names as Names}
                profile={verdict.profile.id}
                asked={asked}
                until={until}
              />
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** Choosing a profile draws its line; the address keeps the choice. */
function ChooseLink({ profile, chosen }: { profile: { readonly id: string; readonly name: string }; chosen: boolean }) {
  const [params] = useSearchParams();
  const next = new URLSearchParams(params);
  next.set('profile', profile.id);
  return (
    <Link to={`?${next.toString()}`} replace aria-current={chosen ? 'true' : undefined} preventScrollReset>
      {profile.name}
    </Link>
  );
}
