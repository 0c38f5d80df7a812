import type { Facts } from '../graph/facts.js';

/** Units fitted or brought back whose entry of release nobody has made yet. */
export function releaseOwed(facts: Facts): readonly string[] {
  return facts.dossier.status.obligations
    .filter((each) => each.what === 'release-entry' && each.closedBy === null && facts.units.has(each.subject))
    .map((each) => each.subject);
}
