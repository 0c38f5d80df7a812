import type { Problem } from '../../../app/problem.js';
import { Trouble } from '../../../ui/states.js';
import { labelOf } from '../../../form/labels.js';

interface ServerRefusal {
  readonly change: number | null;
  readonly field: string;
  readonly message: string;
  readonly wayOut: string;
}

/** The server did not take it: each reason with the step and field it names, and the way out. The plan stays. */
export function Refused({ problem }: { problem: Problem }) {
  const refusals = (problem.details['refusals'] ?? []) as readonly ServerRefusal[];
  const title = problem.code === 'REFUSED' ? 'Nothing was recorded.' : problem.title;
  return (
    <Trouble title={title} wayOut={refusals.length > 0 ? undefined : problem.wayOut}>
      {refusals.length > 0 ? (
        <ul>
          {refusals.map((each) => (
            <li key={`${each.change} ${each.field} ${each.message}`}>
              {each.change !== null && <strong>No. {each.change + 1}, </strong>}
              {fieldWords(each.field)}: {each.message} {each.wayOut}
            </li>
          ))}
        </ul>
      ) : (
        problem.field && <p>It is about: {fieldWords(problem.field)}.</p>
      )}
      <p>Your plan is kept on this device.</p>
    </Trouble>
  );
}

function fieldWords(field: string): string {
  return labelOf(field.replace(/^input\./, '')) || 'the work as a whole';
}
