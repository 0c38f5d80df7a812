import { admit, apply, blankDossier } from '@tallywing/rules';
import type { Catalogue, Change, Dossier } from '@tallywing/rules';
import { worded } from '../aircraft/refusals.js';
import { canonical, contentHash } from '../common/canonical.js';
import type { CarriedAircraft } from './aircraft-records.js';
import { CellProblem } from './problems.js';

/**
 * The entries of an aircraft record that are still to be recorded here. What is stored has to be where the file has been or
 * is going: then nothing is doubled, and nothing of two histories is mixed.
 * @param hashAt hash of the stored record after its n-th entry, as far as there is one
 * @throws CellProblem naming the entry that is refused, or where the two part
 */
export function takenOver(
  { changes, record, path, registration }: CarriedAircraft,
  stored: Dossier,
  hashAt: string | null,
  catalogue: Catalogue,
  now: string,
): { readonly dossier: Dossier; readonly changes: readonly Change[]; readonly older: boolean } {
  let dossier = blankDossier(stored.aircraftId);
  const fresh: Change[] = [];
  changes.forEach((change, index) => {
    const [refusal] = admit(dossier, catalogue, change, now);
    if (refusal) {
      const { message, wayOut } = worded(refusal, null);
      throw new CellProblem(message, wayOut, `${path}.entries.${index}.change.${refusal.field}`);
    }
    dossier = apply(dossier, change);
    if (dossier.revision === stored.revision && contentHash(dossier) !== contentHash(stored))
      throw parted(registration);
    if (dossier.revision > stored.revision) fresh.push(change);
  });
  if (canonical({ ...record, aircraftId: '' }) !== canonical({ ...dossier, aircraftId: '' }))
    throw new CellProblem(
      'Its entries do not give the record that the file states.',
      'Take the file as it was written; nobody may change it by hand.',
      `${path}.record`,
    );
  if (dossier.revision >= stored.revision) return { dossier, changes: fresh, older: false };
  if (contentHash(dossier) !== hashAt) throw parted(registration);
  return { dossier: stored, changes: [], older: true };
}

function parted(registration: string): CellProblem {
  return new CellProblem(
    `${registration} is recorded here with another history.`,
    'Record by hand what this house does not have yet, or take the aircraft out of the file.',
    'registration',
  );
}
