import { codeWords } from '@tallywing/rules';
import type { Result } from '@tallywing/rules';
import { Button } from '../../../ui/button.js';
import { Caution } from '../../../ui/caution.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { countWords } from '../../../ui/words.js';
import { alike, type PlanEffect } from '../../../trade/effect.js';

export interface EffectPanelProps {
  /** The plan was changed and is not judged yet. */
  readonly pending: boolean;
  readonly effect: PlanEffect;
  readonly message: (result: Result) => string;
  readonly subjectName: (id: string) => string;
  readonly onRecord: (owed: PlanEffect['owed'][number]) => void;
}

/** What the plan does: flights gained and lost, findings opened and closed, tests it calls for, weight. */
export function EffectPanel({ pending, effect, message, subjectName, onRecord }: EffectPanelProps) {
  const changed = effect.profiles.filter((each) => each.before !== each.after);
  const same = effect.profiles.length - changed.length;
  return (
    <section className="tw-effect tw-sheet tw-stack" aria-labelledby="effect-title" aria-busy={pending}>
      <h2 id="effect-title">What this does</h2>
      <div aria-live="polite" className="tw-stack">
        <ul className="tw-effect-profiles">
          {alike(changed).map((each) => (
            <li key={each.names.join()}>
              <ul>
                {each.names.map((name) => (
                  <li key={name}>{name}</li>
                ))}
              </ul>
              <span className="tw-row">
                <StatusMark status={each.before} /> <span aria-hidden="true">→</span>
                <span className="tw-hidden">becomes</span>
                <StatusMark status={each.after} />
              </span>
              {each.stops.length > 0 && <Stops stops={each.stops} message={message} />}
            </li>
          ))}
        </ul>
        <p className="tw-soft tw-small">
          {changed.length === 0
            ? 'No flight profile changes.'
            : `${countWords(same, 'other profile stays', 'other profiles stay')} as before.`}
        </p>
        <Findings title="Findings that it opens" results={effect.opened} message={message} />
        <Findings title="Findings that it closes" results={effect.closed} message={message} />
        {effect.mass && (
          <p>
            Weight {signed(effect.mass.weightLb)} lb
            {effect.mass.momentLbIn === null
              ? ', moment cannot be told: an arm is missing'
              : `, moment ${signed(effect.mass.momentLbIn)} lb·in`}
          </p>
        )}
      </div>
      {effect.owed.length > 0 && (
        <div className="tw-stack">
          <h3>What it calls for</h3>
          <ul className="tw-owed">
            {effect.owed.map((owed) => (
              <li key={owed.id}>
                <span>
                  {codeWords(owed.what)} <span className="tw-soft">of {subjectName(owed.subject)}</span>
                </span>
                <Button onClick={() => onRecord(owed)}>Record it</Button>
              </li>
            ))}
          </ul>
        </div>
      )}
      <Caution />
    </section>
  );
}

/** What still stands in the way, the first few: the rest is among the findings below. */
function Stops({ stops, message }: { stops: readonly Result[]; message: (result: Result) => string }) {
  return (
    <ul className="tw-effect-stops tw-small tw-soft" aria-label="Still in the way">
      {stops.slice(0, 3).map((result) => (
        <li key={result.key}>{message(result)}</li>
      ))}
      {stops.length > 3 && <li>and {stops.length - 3} more</li>}
    </ul>
  );
}

function Findings({
  title,
  results,
  message,
}: {
  title: string;
  results: readonly Result[];
  message: (result: Result) => string;
}) {
  if (results.length === 0) return null;
  return (
    <div>
      <h3>
        {title} ({results.length})
      </h3>
      <ul className="tw-effect-findings">
        {results.map((result) => (
          <li key={result.key}>
            <StatusMark
              status={result.outcome === 'not-met' ? 'no' : 'cannot-tell'}
              word={result.outcome === 'not-met' ? 'Not met' : 'Cannot tell'}
            />
            <span>{message(result)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

function signed(value: number): string {
  return `${value < 0 ? '\u2212' : '+'}${Math.abs(value).toLocaleString('en-US', { maximumFractionDigits: 2 })}`;
}
