import { Link } from 'react-router';
import { countWords, listWords } from '../../../ui/words.js';
import type { Recorded } from '../query.js';

const answers: Readonly<Record<string, string>> = { YES: 'yes', NO: 'no', CANNOT_TELL: 'cannot tell' };

/** What was recorded and what it changed. */
export function RecordedNote({ recorded, aircraftId }: { recorded: Recorded; aircraftId: string }) {
  const { firstEntry, lastEntry, opened, closed, verdicts } = recorded;
  const entries =
    firstEntry === lastEntry ? `entry number ${lastEntry}` : `entry numbers ${firstEntry} to ${lastEntry}`;
  return (
    <section className="tw-state tw-recorded" role="status">
      <p className="tw-state-title">Recorded: {entries}.</p>
      <p>
        {countWords(closed.length, 'finding')} closed, {countWords(opened.length, 'finding')} opened.
        {verdicts.length > 0 &&
          ` ${listWords(verdicts.map((each) => `${each.profile.name}: ${each.was ? `${answers[each.was] ?? each.was}, now ` : ''}${answers[each.is] ?? each.is}`))}.`}
      </p>
      <Link to={`/aircraft/${aircraftId}`}>See the aircraft</Link>
    </section>
  );
}
