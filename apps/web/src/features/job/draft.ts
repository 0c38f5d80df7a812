import { dossierSchemaVersion } from '@tallywing/rules';
import type { Step } from './plan.js';

/** Planned work, kept on this device so that neither a lost network nor a refusal loses what was typed. */
export interface Draft {
  readonly aircraftId: string;
  /** Entry number of the aircraft record that the plan was made on. */
  readonly revision: number;
  readonly steps: readonly Step[];
  /** Sent with the work, so that sending it twice records it once. */
  readonly commitKey: string;
}

/** The form of a draft: its own, and that of the dossier that its changes speak of. */
const version = `1.${dossierSchemaVersion}`;
const keyOf = (aircraftId: string) => `tallywing.draft.${aircraftId}`;

export type Kept =
  | { readonly state: 'none' }
  | { readonly state: 'kept'; readonly draft: Draft }
  | { readonly state: 'other-version'; readonly text: string };

export function readDraft(storage: Pick<Storage, 'getItem'>, aircraftId: string): Kept {
  const text = storage.getItem(keyOf(aircraftId));
  if (text === null) return { state: 'none' };
  try {
    const kept = JSON.parse(text) as Draft & { version?: unknown };
    if (kept.version !== version) return { state: 'other-version', text };
    return {
      state: 'kept',
      draft: { aircraftId, revision: kept.revision, steps: kept.steps, commitKey: kept.commitKey },
    };
  } catch {
    return { state: 'other-version', text };
  }
}

/** Returns false where the device has no room or forbids it: the screen must then say so. */
export function keepDraft(storage: Pick<Storage, 'setItem' | 'removeItem'>, draft: Draft): boolean {
  try {
    if (draft.steps.length === 0) storage.removeItem(keyOf(draft.aircraftId));
    else storage.setItem(keyOf(draft.aircraftId), JSON.stringify({ version, ...draft }));
    return true;
  } catch {
    return false;
  }
}
