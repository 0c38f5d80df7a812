import { useState } from 'react';
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

/**
 * The draft of one entry, kept on this device at every change. Until something is written it is `start` over `expectedId`, also when
 * these are read anew.
 */
export function useEntryDraft(task: string, start: Entry, expectedId: string | null): EntryDraftHandle {
  const [found] = useState(() => readEntryDraft(localStorage, task));
  const [written, setWritten] = useState<EntryDraft | null>(found.state === 'kept' ? found.draft : null);
  const [freshKey, setFreshKey] = useState(() => crypto.randomUUID());
  const [kept, setKept] = useState(true);
  const draft = written ?? { entry: start, expectedId, key: freshKey };
  const write = (entry: Entry, over: string | null, keep: boolean) => {
    const next = { entry, expectedId: over, key: crypto.randomUUID() };
    setWritten(next);
    setKept(keepEntryDraft(localStorage, task, keep ? next : null));
  };
  return {
    draft,
    changed: !same(draft.entry, start),
    unreadable: found.state === 'other-version',
    kept,
    set: (entry) => write(entry, draft.expectedId, !same(entry, start)),
    rebase: (entry, to) => write(entry, to, true),
    discard: () => {
      setWritten(null);
      setFreshKey(crypto.randomUUID());
      setKept(keepEntryDraft(localStorage, task, null));
    },
  };
}
