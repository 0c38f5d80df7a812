import { Link } from 'react-router';
import { entryWords, reasonIn } from '../../../trade/entry-words.js';
import { subjectWords } from '../../../trade/words.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { countWords } from '../../../ui/words.js';
import { differenceLines } from '../difference-lines.js';
import { aboutWords, effectWords, flightsMoved, togetherWords, whoWords } from '../entry-view.js';
import type { EntryAnswer } from '../query.js';

export interface EntryCardProps {
  readonly entry: EntryAnswer;
  readonly when: (instant: string) => string;
  /** Where another entry is found. */
  readonly linkTo: (entry: number) => string;
  /** The address names this one. */
  readonly chosen: boolean;
}

/** One entry: who wrote what, when and about which day, why, and what it did. */
export function EntryCard({ entry, when, linkTo, chosen }: EntryCardProps) {
  const reason = reasonIn(entry.body);
  const together = togetherWords(entry);
  return (
    <li>
      <article
        className="tw-entry"
        id={`entry-${entry.number}`}
        aria-labelledby={`entry-${entry.number}-title`}
        data-chosen={chosen || undefined}
      >
        <p className="tw-entry-number" aria-hidden="true">
          {entry.number}
        </p>
        <div className="tw-entry-says">
          <h2 id={`entry-${entry.number}-title`}>
            <span className="tw-hidden">Entry {entry.number}: </span>
            {entryWords(entry, when)}
          </h2>
          <p className="tw-soft">
            {whoWords(entry)}; written {when(entry.recordedAt)}, {aboutWords(entry, when)}
            {entry.job !== null && `; job “${entry.job}”`}
            {together && `; ${together}`}.
          </p>
          {reason && <p>Because: {reason}</p>}
          <Corrections entry={entry} linkTo={linkTo} />
        </div>
        <div className="tw-entry-did">
          {entry.effect && <EffectOf effect={entry.effect} />}
          <Changed entry={entry} when={when} />
          <p className="tw-no-print">
            <Link to={`then?entry=${entry.number}`}>As it stood after entry {entry.lastTogether}</Link>
          </p>
        </div>
      </article>
    </li>
  );
}

function Corrections({ entry, linkTo }: Pick<EntryCardProps, 'entry' | 'linkTo'>) {
  const amends = entry.kind === 'unit.amend' ? 'Completes' : 'Corrects';
  return (
    <>
      {entry.corrects !== null && (
        <p>
          {amends} <Link to={linkTo(entry.corrects)}>entry {entry.corrects}</Link>.
        </p>
      )}
      {entry.correctedBy.length > 0 && (
        <p className="tw-entry-corrected">
          <strong>Corrected or completed by</strong>{' '}
          {entry.correctedBy.map((by, at) => (
            <span key={by}>
              {at > 0 && ', '}
              <Link to={linkTo(by)}>entry {by}</Link>
            </span>
          ))}
          . This one stays as it was written.
        </p>
      )}
    </>
  );
}

function EffectOf({ effect }: { effect: NonNullable<EntryAnswer['effect']> }) {
  const says = effectWords(effect);
  if (says === null) return <p className="tw-soft">It changed no answer.</p>;
  const { won, lost, other } = flightsMoved(effect);
  return (
    <details className="tw-entry-part">
      <summary>{says}</summary>
      <ul>
        {lost.map((flight) => (
          <li key={flight}>
            <StatusMark status="no" word="Lost" /> {flight}
          </li>
        ))}
        {won.map((flight) => (
          <li key={flight}>
            <StatusMark status="yes" word="Won" /> {flight}
          </li>
        ))}
        {other.map(({ flight, was, is }) => (
          <li key={flight}>
            <StatusMark status="cannot-tell" word={`Was ${was}, is ${is}`} /> {flight}
          </li>
        ))}
        {effect.opened.map((each) => (
          <li key={`opened ${each.subject} ${each.text}`}>
            Opened: {subjectWords(each)}: {each.text}
          </li>
        ))}
        {effect.closed.map((each) => (
          <li key={`closed ${each.subject} ${each.text}`}>
            Closed: {subjectWords(each)}: {each.text}
          </li>
        ))}
      </ul>
      {effect.rules !== null && <p className="tw-soft">Judged by version {effect.rules} of the rules.</p>}
    </details>
  );
}

function Changed({ entry, when }: Pick<EntryCardProps, 'entry' | 'when'>) {
  const lines = differenceLines(entry.differences, entry.names, when);
  if (lines.length === 0) return <p className="tw-soft">Nothing on the record is other than before.</p>;
  return (
    <details className="tw-entry-part">
      <summary>{countWords(lines.length, 'thing')} changed on the record</summary>
      <ul>
        {lines.map(({ what, how, fields }) => (
          <li key={`${how} ${what}`}>
            {what}: {how}
            {fields.length > 0 && (
              <ul>
                {fields.map(({ label, was, is }) => (
                  <li key={label}>
                    {label}: {was} → {is}
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
