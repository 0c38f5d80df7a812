import { useCallback, useState } from 'react';
import { keepEntryDraft, readEntryDraft, type EntryDraft } from './draft.js';
import type { Entry } from './entry.js';
import { same } from './merge.js';

export interface EntryDraftHandle {
  readonly draft: EntryDraft;
  /** Something was written that is not saved. */
  readonly changed: boolean;
  /** Written with an older form of this program: kept on the device, not shown. */
  readonly unreadable: boolean;
  /** False where the device would not keep it. */
  readonly kept: boolean;
  readonly set: (entry: Entry) => void;
  /** The draft now stands on this version; sent again it is another request. */
  readonly rebase: (entry: Entry, expectedId: string) => void;
  readonly discard: () => void;
}

/** The draft of one entry, kept on this device at every change. `start` and `expectedId` are what a new draft begins with. */
export function useEntryDraft(task: string, start: Entry, expectedId: string | null): EntryDraftHandle {
  const [found] = useState(() => readEntryDraft(localStorage, task));
  const [draft, setDraft] = useState<EntryDraft>(() =>
    found.state === 'kept' ? found.draft : { entry: start, expectedId, key: crypto.randomUUID() },
  );
  const [kept, setKept] = useState(true);
  const put = useCallback(
    (entry: Entry, over: string | null, keep: boolean) => {
      const next = { entry, expectedId: over, key: crypto.randomUUID() };
      setDraft(next);
      setKept(keepEntryDraft(localStorage, task, keep ? next : null));
    },
    [task],
  );
  return {
    draft,
    changed: !same(draft.entry, start),
    unreadable: found.state === 'other-version',
    kept,
    set: (entry) => put(entry, draft.expectedId, !same(entry, start)),
    rebase: (entry, to) => put(entry, to, true),
    discard: () => put(start, expectedId, false),
  };
}
