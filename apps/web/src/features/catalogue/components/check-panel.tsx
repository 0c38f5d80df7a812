import type { ReactNode } from 'react';
import type { FieldProblem } from '../../../form/problems.js';
import { Caution } from '../../../ui/caution.js';
import { Trouble } from '../../../ui/states.js';
import type { Problem } from '../../../app/problem.js';
import { toMend } from '../problems.js';
import type { Preview } from '../query.js';
import { MoveEffectView } from './move-effect.js';

export interface CheckPanelProps {
  readonly revises: boolean;
  /** What is wrong with the entry; shown once saving was tried. */
  readonly problems: readonly FieldProblem[];
  readonly trouble: Problem | null;
  readonly preview: Preview | null;
  /** The buttons: what can be done now. */
  readonly children: ReactNode;
}

/** Beside the form: what is still to mend, who is affected, and the way on. */
export function CheckPanel({ revises, problems, trouble, preview, children }: CheckPanelProps) {
  return (
    <section className="tw-entry-panel tw-sheet tw-stack" aria-labelledby="affected-title">
      <h2 id="affected-title">Who is affected</h2>
      <p className="tw-soft">
        {revises
          ? 'Saving changes nothing on any aircraft: each goes on with the version that its unit was recorded with.'
          : 'A product that is new to the catalogue is on no aircraft yet.'}
      </p>
      {problems.length > 0 && <ToMend problems={problems} />}
      {trouble && (
        <Trouble title={trouble.title} wayOut={trouble.wayOut}>
          <p>Your draft is kept on this device.</p>
        </Trouble>
      )}
      <div aria-live="polite" className="tw-stack">
        {preview && (
          <>
            {preview.remarks.map((remark) => (
              <p key={remark.field} role="note">
                {remark.text}
              </p>
            ))}
            {revises && <MoveEffectView effect={preview.effect} savedAs={null} />}
            {!revises && preview.remarks.length === 0 && <p>Nothing is wrong with the entry.</p>}
          </>
        )}
      </div>
      {children}
      {preview && revises && <Caution />}
    </section>
  );
}

/** What keeps it from being saved: by section, with what belongs to no single field in words. */
function ToMend({ problems }: { problems: readonly FieldProblem[] }) {
  const whole = problems.filter(({ field }) => field === '');
  return (
    <div className="tw-state" data-kind="trouble" role="alert">
      <p className="tw-state-title">Not saved: something is missing or wrong.</p>
      {whole.map((each) => (
        <p key={each.says}>
          {each.says} {each.wayOut}
        </p>
      ))}
      <ul>
        {toMend(problems).map(({ id, title, count }) => (
          <li key={id}>
            <a href={`#${id}`}>{title}</a> ({count})
          </li>
        ))}
      </ul>
    </div>
  );
}
