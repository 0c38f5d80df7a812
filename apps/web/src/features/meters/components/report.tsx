import { StatusMark } from '../../../ui/status-mark.js';
import type { Status } from '../../../ui/status-words.js';
import { countWords } from '../../../ui/words.js';
import type { Outcome } from '../save.js';
import type { Reported } from '../use-sheet.js';

const marks: Readonly<Record<Outcome['kind'], readonly [Status, string]>> = {
  recorded: ['yes', 'Recorded'],
  waits: ['not-judged', 'Waits for you'],
  refused: ['no', 'Refused'],
  meanwhile: ['judged-again', 'Changed meanwhile'],
  'not-sent': ['cannot-tell', 'No answer'],
};

export function OutcomeMark({ outcome }: { outcome: Outcome }) {
  const [status, word] = marks[outcome.kind];
  const entry = outcome.kind === 'recorded' ? `: ${entryWords(outcome)}` : '';
  return <StatusMark status={status} word={`${word}${entry}`} />;
}

/** What became of the readings, aircraft by aircraft. What was not recorded is still in its field. */
export function Report({ reports }: { reports: readonly Reported[] }) {
  const recorded = reports.filter(({ outcome }) => outcome.kind === 'recorded').length;
  const others = reports.filter(({ outcome }) => outcome.kind !== 'recorded');
  return (
    <section aria-label="What was recorded" role="status" className="tw-stack">
      {reports.length > 0 && (
        <p>
          <strong>
            {countWords(recorded, 'aircraft', 'aircraft')} recorded
            {others.length > 0 && `, ${others.length} not: what you typed is still in its field`}.
          </strong>
        </p>
      )}
      {others.length > 0 && (
        <ul className="tw-meters-report">
          {others.map(({ batch, outcome }) => (
            <li key={batch.row.aircraft.id}>
              <span className="tw-mono">{batch.row.aircraft.registration}</span> <OutcomeMark outcome={outcome} />
              <span>{whyOf(outcome)}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function whyOf(outcome: Outcome): string {
  if (outcome.kind === 'waits') return 'Answer the question or mend the reading in its line, then record again.';
  return 'why' in outcome ? outcome.why : '';
}

function entryWords({ firstEntry, lastEntry }: { readonly firstEntry: number; readonly lastEntry: number }): string {
  return firstEntry === lastEntry ? `entry number ${firstEntry}` : `entry numbers ${firstEntry} to ${lastEntry}`;
}
