import { notesOn, type Dossier } from '@tallywing/rules';
import { SourceStatus } from '../../../ui/reason-tree.js';
import { valueAt } from '../../../form/tree.js';
import type { Step } from '../plan.js';

interface StepNotesProps {
  readonly step: Step;
  readonly basis: Dossier['configuration']['aircraft']['basis'];
}

/** What to know of the work at hand, with where it stands; nothing for most kinds. */
export function StepNotes({ step, basis }: StepNotesProps) {
  const entry = valueAt(step.value, 'record.kind');
  const notes = notesOn(step.kind, typeof entry === 'string' ? entry : null, basis);
  return notes.map(({ text, source }) => (
    <p key={text} className="tw-small">
      {text}{' '}
      <span className="tw-soft">
        {source.document} {source.paragraph} <SourceStatus status={source.status} />
      </span>
    </p>
  ));
}
