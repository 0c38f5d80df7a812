import { useApolloClient, useMutation } from '@apollo/client/react';
import { useRef, useState } from 'react';
import { problemOf } from '../../app/problem.js';
import { refreshShown } from '../../app/live/refresh.js';
import { keep, readKept, type Kept } from './keep.js';
import { RecordReadings } from './query.js';
import { saveSheet, type Outcome } from './save.js';
import { blankEntry, type Batch, type Entries, type Entry } from './sheet.js';

export interface Reported {
  readonly batch: Batch;
  readonly outcome: Outcome;
}

export interface SheetHandle {
  readonly entries: Entries;
  /** False where the device would not keep what is typed. */
  readonly kept: boolean;
  readonly saving: { readonly done: number; readonly total: number } | null;
  /** What became of the last recording, by aircraft. */
  readonly reports: readonly Reported[];
  readonly type: (key: string, change: Partial<Entry>) => void;
  readonly replace: (entries: Entries) => void;
  readonly save: (batches: readonly Batch[]) => Promise<void>;
}

/** What is typed, kept on this device at every stroke, and the way it is recorded. */
export function useSheet(memberId: string): SheetHandle {
  const client = useApolloClient();
  const [commit] = useMutation(RecordReadings);
  const [state, setState] = useState<Kept>(() => readKept(localStorage, memberId));
  const [kept, setKept] = useState(true);
  const [saving, setSaving] = useState<SheetHandle['saving']>(null);
  const [reports, setReports] = useState<readonly Reported[]>([]);
  // Recording goes on over several strokes: it looks at what is typed now, not at what was when it began.
  const latest = useRef(state);
  const change = (next: (before: Kept) => Kept) => {
    latest.current = next(latest.current);
    setState(latest.current);
    setKept(keep(localStorage, memberId, latest.current));
  };

  async function save(batches: readonly Batch[]): Promise<void> {
    const { entries: sent, attempts } = latest.current;
    setReports([]);
    await saveSheet(batches, attempts, {
      send: async (input) => {
        const { data } = await commit({ variables: { input } });
        if (!data) throw new Error('an answer without data');
        return data.commitChanges;
      },
      problemOf,
      newKey: () => crypto.randomUUID(),
      onProgress: (done, total) => setSaving(done < total ? { done, total } : null),
      onOutcome: (batch, outcome) => {
        setReports((before) => [...before, { batch, outcome }]);
        // What was typed while it travelled is another reading and stays.
        if (outcome.kind === 'recorded')
          change((before) => ({
            ...before,
            entries: Object.fromEntries(
              Object.entries(before.entries).filter(([key, entry]) => !batch.keys.includes(key) || entry !== sent[key]),
            ),
          }));
      },
      keepAttempt: (aircraftId, attempt) =>
        change(({ entries, attempts }) => {
          const { [aircraftId]: _, ...others } = attempts;
          return { entries, attempts: attempt === null ? others : { ...others, [aircraftId]: attempt } };
        }),
    });
    await refreshShown(client).catch(() => undefined); // What could not be sent says so; the list is asked again when it can be.
  }

  return {
    entries: state.entries,
    kept,
    saving,
    reports,
    type: (key, typed) =>
      change((before) => ({
        ...before,
        // A changed reading is asked about anew.
        entries: {
          ...before.entries,
          [key]: { ...(before.entries[key] ?? blankEntry), ...('dial' in typed ? { sure: false } : {}), ...typed },
        },
      })),
    replace: (entries) => change((before) => ({ ...before, entries })),
    save,
  };
}
