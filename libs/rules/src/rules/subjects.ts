import type { RecordKind } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';

/** Whether an id stands for something that is recorded now, other than a unit. */
function otherThan(facts: Facts, id: string): boolean {
  const { configuration, status } = facts.dossier;
  return (
    id === 'aircraft' ||
    configuration.staticSystems.some((each) => each.id === id) ||
    configuration.equipment.some((each) => each.item === id) ||
    status.directives.some((each) => each.id === id) ||
    status.recurring.some((each) => each.id === id) ||
    status.lifeLimits.some((each) => each.id === id)
  );
}

/** Recorded now: the aircraft, a unit, a static system, a 91.205 item, a directive, a recurring item, a part with a life limit. */
export function isRecorded(facts: Facts, id: string): boolean {
  return facts.units.has(id) || otherThan(facts, id);
}

/** Entries that are made about units alone. */
const ofUnits: readonly RecordKind[] = [
  'altimeter-test',
  'altitude-reporting-test',
  'transponder-test',
  'elt-inspection',
  'elt-battery',
  'vor-check',
  'gnss-function-check',
  'vhf-interference-check',
  'data-verification',
];

/**
 * Taken out, as its papers and entries that stayed show. What left no trace may have been a part whose limit was ended: the part
 * that came in its place is still there.
 */
export function wasUnit(facts: Facts, id: string): boolean {
  if (isRecorded(facts, id)) return false;
  const { configuration, status } = facts.dossier;
  return (
    configuration.packs.some((each) => each.unitId === id) ||
    configuration.identities.some((each) => each.id === id) ||
    configuration.supplements.some((each) => each.units.includes(id)) ||
    configuration.placards.some((each) => each.unitId === id) ||
    status.records.some((each) => ofUnits.includes(each.kind) && each.subjects.includes(id))
  );
}
