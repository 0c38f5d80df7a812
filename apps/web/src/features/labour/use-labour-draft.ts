import { useCallback, useState } from 'react';
import { keepOnDevice, readKept } from '../../form/kept.js';
import { differs, draftOf } from './view-model.js';
import type { LabourDraft } from './view-model.js';
import type { LabourAnswer } from './query.js';

const NAME = 'tallywing.labour';
const FORM = '1';

/** The table as it is being written, kept on this device until it is saved. */
export function useLabourDraft(table: LabourAnswer) {
  const [draft, setDraft] = useState<LabourDraft>(() => {
    const found = readKept(localStorage, NAME, FORM);
    return found.state === 'kept' ? (found.value as LabourDraft) : draftOf(table);
  });
  const put = useCallback(
    (next: LabourDraft) => {
      setDraft(next);
      keepOnDevice(localStorage, NAME, FORM, differs(next, table) ? next : null);
    },
    [table],
  );
  return { draft, put, changed: differs(draft, table) };
}
