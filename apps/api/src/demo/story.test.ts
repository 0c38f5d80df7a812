import { admit, apply, blankDossier } from '@tallywing/rules';
import type { Catalogue, Change, Dossier } from '@tallywing/rules';
import { describe, expect, it } from 'vitest';
import { demoTypes } from './catalogue.js';
import { Days } from './days.js';
import { secondFleet, shopFleet } from './fleet.js';
import { live } from './life.js';

const catalogue: Catalogue = {
  version: 'demo',
  types: Object.fromEntries(Object.values(demoTypes).map((type) => [type.id, type])),
};

function fleetOn(today: string) {
  return [...shopFleet, ...secondFleet].map((spec) => live(spec, new Days(today)));
}

function takenOn(dossier: Dossier, changes: readonly Change[], now: string): Dossier {
  return changes.reduce((before, change) => {
    expect({ change, refused: admit(before, catalogue, change, now) }).toEqual({ change, refused: [] });
    return apply(before, change);
  }, dossier);
}

// A day in a long month, the last day of a leap February, the day before a change of cycle.
describe.each(['2026-11-25', '2028-02-29', '2027-01-20'])('the demo seeded on %s', (today) => {
  const fleet = fleetOn(today);

  it.each(fleet.map((each) => [each.spec.registration, each] as const))('%s: every change is admitted', (_, each) => {
    let dossier = blankDossier(each.aircraftId);
    for (const { on, change } of each.entries) dossier = takenOn(dossier, [change], `${on}T22:30Z`);
    expect(each.entries.length).toBeGreaterThan(40);
    expect(dossier.revision).toBe(each.entries.length);
  });
});
