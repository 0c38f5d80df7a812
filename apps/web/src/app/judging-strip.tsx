import { useQuery } from '@apollo/client/react';
import { graphql } from '../graphql.js';
import { StatusMark } from '../ui/status-mark.js';

const JudgingQuery = graphql(`
  query Judging {
    judging {
      aircraft
      judgingAgain
    }
  }
`);

/**
 * Says on every screen that aircraft are being judged again, and how far that is. A screen reader hears that it began; the figure,
 * which changes every moment, it reads when asked.
 */
export function JudgingStrip() {
  const { data } = useQuery(JudgingQuery);
  const { aircraft = 0, judgingAgain = 0 } = data?.judging ?? {};
  return (
    <div
      className="tw-strip tw-quiet-strip tw-no-print"
      {...(judgingAgain > 0 && { role: 'region', 'aria-label': 'Aircraft being judged again' })}
    >
      <span role="status">{judgingAgain > 0 && <StatusMark status="judged-again" />}</span>
      {judgingAgain > 0 && (
        <span>
          {aircraft - judgingAgain} of {aircraft} aircraft done. The others are shown as they were judged before, and no
          yes of theirs counts until their turn.
        </span>
      )}
    </div>
  );
}
