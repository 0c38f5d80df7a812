import { useApolloClient } from '@apollo/client/react';
import { useState } from 'react';
import { problemOf, type Problem } from '../../app/problem.js';
import type { EntryDraft } from './draft.js';
import { EnterMutation, PreviewQuery, ReviseMutation, type Preview } from './query.js';

export interface Saving {
  readonly busy: 'looking' | 'saving' | null;
  /** Why the last question or saving came to nothing; null once another one began. */
  readonly problem: Problem | null;
  /** What the draft as it stands would do; null until asked, and again once the draft changed. */
  readonly previewOf: (draft: EntryDraft) => Preview | null;
  readonly look: (draft: EntryDraft) => Promise<void>;
  /** Gives the id of the version made, or null where it was not saved. */
  readonly save: (draft: EntryDraft) => Promise<string | null>;
  readonly forget: () => void;
}

/** Asks what an entry would do, and saves it. Whatever goes wrong is kept to be shown; the draft is somebody else's. */
export function useSaving(onStale: () => Promise<unknown>): Saving {
  const client = useApolloClient();
  const [busy, setBusy] = useState<Saving['busy']>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [seen, setSeen] = useState<{ readonly key: string; readonly preview: Preview } | null>(null);

  async function attempt<T>(what: NonNullable<Saving['busy']>, work: () => Promise<T>): Promise<T | null> {
    setBusy(what);
    setProblem(null);
    try {
      return await work();
    } catch (error) {
      const found = problemOf(error);
      if (found.code === 'STALE_REVISION') await onStale().catch(() => undefined);
      setProblem(found);
      return null;
    } finally {
      setBusy(null);
    }
  }

  async function look({ entry, expectedId, key }: EntryDraft): Promise<void> {
    await attempt('looking', async () => {
      const { data } = await client.query({
        query: PreviewQuery,
        variables: { input: { body: entry, expectedId } },
        fetchPolicy: 'network-only',
      });
      if (data) setSeen({ key, preview: data.previewType });
    });
  }

  async function save({ entry, expectedId, key }: EntryDraft): Promise<string | null> {
    return await attempt('saving', async () => {
      const id =
        expectedId === null
          ? (await client.mutate({ mutation: EnterMutation, variables: { input: { key, body: entry } } })).data
              ?.enterType.id
          : (await client.mutate({ mutation: ReviseMutation, variables: { input: { key, expectedId, body: entry } } }))
              .data?.reviseType.id;
      // Lists and pages were read before this version; each is read again when it is shown.
      client.cache.evict({ id: 'ROOT_QUERY', fieldName: 'catalogue' });
      client.cache.evict({ id: 'ROOT_QUERY', fieldName: 'equipmentType' });
      return id ?? null;
    });
  }

  return {
    busy,
    problem,
    previewOf: ({ key }) => (seen?.key === key ? seen.preview : null),
    look,
    save,
    forget: () => setProblem(null),
  };
}
