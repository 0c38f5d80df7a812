import { dossierSchemaVersion } from '@tallywing/rules';
import { keepOnDevice, readKept } from '../../form/kept.js';
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

export type Kept = { readonly state: 'none' | 'other-version' } | { readonly state: 'kept'; readonly draft: Draft };

export function readDraft(storage: Pick<Storage, 'getItem'>, aircraftId: string): Kept {
  const found = readKept(storage, keyOf(aircraftId), version);
  if (found.state !== 'kept') return found;
  const { revision, steps, commitKey } = found.value as Draft;
  return { state: 'kept', draft: { aircraftId, revision, steps, commitKey } };
}

/** Returns false where the device would not keep it. */
export function keepDraft(storage: Pick<Storage, 'setItem' | 'removeItem'>, draft: Draft): boolean {
  return keepOnDevice(storage, keyOf(draft.aircraftId), version, draft.steps.length === 0 ? null : draft);
}
