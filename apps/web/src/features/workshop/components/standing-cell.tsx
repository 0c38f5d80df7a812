import { StatusMark } from '../../../ui/status-mark.js';
import type { Standing } from '../standing.js';

/** The word with its shape, and the days behind it, which may take a line of their own. */
export function StandingCell({ standing }: { standing: Standing }) {
  return (
    <span className="tw-row">
      <StatusMark status={standing.status} word={standing.word} />
      {standing.days !== '' && <span className="tw-soft">{standing.days}</span>}
    </span>
  );
}
