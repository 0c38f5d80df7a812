import { Button } from '../ui/button.js';
import type { Problem } from './problem.js';
import { problemBeside } from './use-act.js';

export interface ProblemNoteProps {
  readonly problem: Problem | null;
  /** Fields of the form that show their own problem. */
  readonly fields?: readonly string[];
  /** Where somebody else changed the same thing: shows what is stored now instead of what was typed. */
  readonly onReload?: () => unknown;
}

/** What went wrong and belongs to no field. */
export function ProblemNote({ problem, fields = [], onReload }: ProblemNoteProps) {
  const says = problemBeside(problem, fields);
  if (says === null) return null;
  return (
    <div className="tw-row" role="alert">
      <p className="tw-field-error">{says}</p>
      {problem?.code === 'STALE_REVISION' && onReload && <Button onClick={() => void onReload()}>Load it again</Button>}
    </div>
  );
}
