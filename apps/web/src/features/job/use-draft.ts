import { useCallback, useState } from 'react';
import { keepDraft, readDraft, type Draft } from './draft.js';
import type { Step } from './plan.js';

export interface DraftHandle {
  readonly draft: Draft;
  /** Planned on an older form of this program: kept on the device, not shown. */
  readonly unreadable: boolean;
  /** False where the device would not keep it. */
  readonly kept: boolean;
  readonly setSteps: (steps: readonly Step[]) => void;
  /** The plan now stands on this entry number; sent again it is another request. */
  readonly rebase: (revision: number) => void;
  /** Our own act moved the record from one entry number to another: a plan that stood on the first stands on the second. */
  readonly begin: (from: number, to: number, steps: readonly Step[] | null) => void;
  readonly clear: (revision: number) => void;
}

/** The plan of one aircraft, kept on this device at every change. */
export function useDraft(aircraftId: string, revision: number): DraftHandle {
  const [found] = useState(() => readDraft(localStorage, aircraftId));
  const [draft, setDraft] = useState<Draft>(() => (found.state === 'kept' ? found.draft : fresh(aircraftId, revision)));
  const [kept, setKept] = useState(true);
  const put = useCallback((next: Draft) => {
    setDraft(next);
    setKept(keepDraft(localStorage, next));
  }, []);
  return {
    draft,
    unreadable: found.state === 'other-version',
    kept,
    // Other content is another request: an earlier one may have arrived although its answer did not.
    // A plan begins on the record as it is at its first step.
    setSteps: (steps) =>
      put({
        ...draft,
        revision: draft.steps.length === 0 ? revision : draft.revision,
        steps,
        commitKey: crypto.randomUUID(),
      }),
    rebase: (to) => put({ ...draft, revision: to, commitKey: crypto.randomUUID() }),
    begin: (from, to, steps) =>
      put({
        ...draft,
        revision: draft.steps.length === 0 || draft.revision === from ? to : draft.revision,
        steps: steps ?? draft.steps,
        commitKey: crypto.randomUUID(),
      }),
    clear: (to) => put(fresh(aircraftId, to)),
  };
}

function fresh(aircraftId: string, revision: number): Draft {
  return { aircraftId, revision, steps: [], commitKey: crypto.randomUUID() };
}
