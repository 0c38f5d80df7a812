import { keepOnDevice, readKept } from '../../form/kept.js';
import { entrySpec, type Entry } from './entry.js';

/** What is being written, and over which version. */
export interface EntryDraft {
  readonly entry: Entry;
  /** The version that was in force when it was begun; null for a new product. */
  readonly expectedId: string | null;
  /** Sent with the entry, so that sending it twice saves it once. Other content is another request. */
  readonly key: string;
}

/** A draft of an entry with other fields cannot be shown; the names of the fields say which it is. */
const version = `1:${entrySpec.fields.map(({ name }) => name).join(',')}`;
const nameOf = (task: string) => `tallywing.entry.${task}`;

export type KeptEntry =
  { readonly state: 'none' | 'other-version' } | { readonly state: 'kept'; readonly draft: EntryDraft };

export function readEntryDraft(storage: Pick<Storage, 'getItem'>, task: string): KeptEntry {
  const found = readKept(storage, nameOf(task), version);
  if (found.state !== 'kept') return found;
  const { entry, expectedId, key } = found.value as EntryDraft;
  return { state: 'kept', draft: { entry, expectedId, key } };
}

/** Null: there is nothing to keep. Returns false where the device would not keep it. */
export function keepEntryDraft(
  storage: Pick<Storage, 'setItem' | 'removeItem'>,
  task: string,
  draft: EntryDraft | null,
): boolean {
  return keepOnDevice(storage, nameOf(task), version, draft);
}
