import type { InstallationApproval } from '../dossier/installation.js';
import type { Facts } from '../graph/facts.js';

/** Units fitted or brought back whose entry of release nobody has made yet. */
export function releaseOwed(facts: Facts): readonly string[] {
  return facts.dossier.status.obligations
    .filter((each) => each.what === 'release-entry' && each.closedBy === null && facts.units.has(each.subject))
    .map((each) => each.subject);
}

/** Data for a major alteration are approved before the release; type design and minor alterations wait for nobody. */
export function needsApprovalFirst(basis: InstallationApproval['basis']): boolean {
  return basis === 'stc' || basis === 'stc-model-list' || basis === 'field-approval';
}
