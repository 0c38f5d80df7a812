import type { Attempt } from './save.js';
import type { Entries } from './sheet.js';

/** What is typed on the sheet, kept on this device until it is recorded. */
export interface Kept {
  readonly entries: Entries;
  readonly attempts: Readonly<Record<string, Attempt>>;
}

const version = 1;
const nothing: Kept = { entries: {}, attempts: {} };
/** Each person's own: a device in the hangar has many. */
const keyFor = (memberId: string) => `tallywing.meters.${memberId}`;

export function readKept(storage: Pick<Storage, 'getItem'>, memberId: string): Kept {
  try {
    const kept = JSON.parse(storage.getItem(keyFor(memberId)) ?? 'null') as (Kept & { version?: unknown }) | null;
    return kept?.version === version ? { entries: kept.entries, attempts: kept.attempts } : nothing;
  } catch {
    return nothing;
  }
}

/** Returns false where the device has no room or forbids it: the screen must then say so. */
export function keep(storage: Pick<Storage, 'setItem' | 'removeItem'>, memberId: string, kept: Kept): boolean {
  const typed = Object.entries(kept.entries).filter(([, entry]) => entry.dial.trim() !== '');
  try {
    if (typed.length === 0 && Object.keys(kept.attempts).length === 0) storage.removeItem(keyFor(memberId));
    else
      storage.setItem(
        keyFor(memberId),
        JSON.stringify({ version, entries: Object.fromEntries(typed), attempts: kept.attempts }),
      );
    return true;
  } catch {
    return false;
  }
}
