import { capabilityWords } from '@tallywing/rules';
import { Link } from 'react-router';
import { statusOfAnswer } from '../../../trade/verdict.js';
import { StatusMark } from '../../../ui/status-mark.js';
import type { Status } from '../../../ui/status-words.js';
import { countWords } from '../../../ui/words.js';
import { alikeMoves, isSame } from '../alike.js';
import { moveJobOf } from '../paths.js';
import type { AircraftMove, MoveEffect } from '../query.js';

export interface MoveEffectProps {
  readonly effect: MoveEffect;
  /** The version that is saved already: the move can then be planned. Null: it is not saved yet. */
  readonly savedAs: string | null;
}

/** Aircraft by aircraft: what recording its units with this version would change. */
export function MoveEffectView({ effect, savedAs }: MoveEffectProps) {
  const changed = effect.aircraft.filter((each) => !isSame(each)).length;
  return (
    <div className="tw-stack">
      <p>{sumWords(effect, changed)}</p>
      {effect.total > effect.aircraft.length && (
        <p role="note">
          Only the first {effect.aircraft.length} of {effect.total} aircraft by registration were judged. Of the others
          nothing is known here.
        </p>
      )}
      <ul className="tw-moves" aria-label="Aircraft, those that change alike together">
        {alikeMoves(effect.aircraft).map((moves) => (
          <li key={moves[0]?.aircraft.id}>
            <ul className="tw-move-aircraft">
              {moves.map((move) => (
                <Head key={move.aircraft.id} move={move} savedAs={savedAs} />
              ))}
            </ul>
            {moves[0] && <Changes move={moves[0]} />}
          </li>
        ))}
      </ul>
    </div>
  );
}

function sumWords({ total }: MoveEffect, changed: number): string {
  if (total === 0) return 'No aircraft has a unit of this product under another version.';
  const who = `${countWords(total, 'aircraft has', 'aircraft have')} a unit of this product under another version.`;
  return `${who} Recorded with this one, ${changed === 0 ? 'none' : changed === total ? 'all' : changed} of them would be judged otherwise.`;
}

function Head({ move, savedAs }: { move: AircraftMove; savedAs: string | null }) {
  return (
    <li className="tw-row">
      <strong className="tw-mono">{move.aircraft.registration}</strong>
      {move.units.map((unit) =>
        savedAs === null ? (
          <span key={unit.unitId}>{unit.name}</span>
        ) : (
          <Link key={unit.unitId} to={moveJobOf(move.aircraft.id, unit.unitId, savedAs)}>
            Plan it for {unit.name}
          </Link>
        ),
      )}
    </li>
  );
}

function Changes({ move }: { move: AircraftMove }) {
  if (isSame(move)) return <p className="tw-soft">Judged as before.</p>;
  return (
    <>
      {move.refused.map((reason) => (
        <p key={reason} className="tw-field-error">
          The aircraft record would not take it: {reason}
        </p>
      ))}
      <ul className="tw-move-changes">
        {move.verdicts.map((each) => (
          <Change
            key={each.profile.id}
            name={each.profile.name}
            was={{ status: answer(each.was ?? 'CANNOT_TELL') }}
            is={{ status: answer(each.is) }}
          />
        ))}
        {move.capabilities.map((each) => (
          <Change
            key={each.capability}
            name={capabilityWords(each.capability)}
            was={held(each.was)}
            is={held(each.is)}
          />
        ))}
      </ul>
      <Findings title="Findings that it opens" findings={move.opened} />
      <Findings title="Findings that it closes" findings={move.closed} />
    </>
  );
}

interface Shown {
  readonly status: Status;
  readonly word?: string;
}

function Change({ name, was, is }: { name: string; was: Shown; is: Shown }) {
  return (
    <li>
      <span>{name}</span>
      <span className="tw-row">
        <StatusMark {...was} /> <span aria-hidden="true">→</span>
        <span className="tw-hidden">becomes</span>
        <StatusMark {...is} />
      </span>
    </li>
  );
}

function answer(ready: string): Status {
  return statusOfAnswer({ ready, standing: 'JUDGED' });
}

/** Of a capability: held or not, apart from any flight. */
function held(outcome: string): Shown {
  if (outcome === 'MET') return { status: 'yes', word: 'Held' };
  return outcome === 'CANNOT_TELL' ? { status: 'cannot-tell' } : { status: 'no', word: 'Not held' };
}

function Findings({ title, findings }: { title: string; findings: AircraftMove['opened'] }) {
  if (findings.length === 0) return null;
  return (
    <details>
      <summary className="tw-fold">
        {title} ({findings.length})
      </summary>
      <ul>
        {findings.map((each) => (
          <li key={each.key} className="tw-row">
            <StatusMark
              status={each.outcome === 'NOT_MET' ? 'no' : 'cannot-tell'}
              word={each.outcome === 'NOT_MET' ? 'Not met' : 'Cannot tell'}
            />
            <span>{each.text}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
