import { expect, it } from 'vitest';
import { typeOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { EquipmentType } from '../catalogue/type.js';
import type { InstalledUnit } from '../dossier/installation.js';
import { factsOf } from '../graph/facts.js';
import { timelessOutcome } from './entry-outcome.js';
import { asked, missingPaths } from './gaps.js';
import { inView } from './in-view.js';

type View = NonNullable<EquipmentType['view']>;
const silent: View = { approvedPlaces: [], maxHorizontalDeg: null, maxOffsetIn: null, document: 'Manual' };
interface Measured {
  readonly eyeDistanceIn: number | null;
  readonly rightOfEyeIn: number | null;
  readonly belowEyeIn: number | null;
}
// 15 degrees below the horizontal: 8.04 in at 30 in.
const ahead: Measured = { eyeDistanceIn: 30, rightOfEyeIn: 0, belowEyeIn: 8.04 };

function seen(view: Partial<View> | null, measured: Measured, part: Partial<InstalledUnit> = {}) {
  const type = typeOf({ id: 'type', functions: ['lateral-deviation'], view: view && { ...silent, ...view } });
  const units = [unitOf({ id: 'u', typeId: 'type', openingId: 'o', place: 'pilot-panel', ...part })];
  const openings = [{ id: 'o', ...measured }] as never;
  const facts = factsOf(dossierOf({ configuration: { units, openings } }), catalogueOf(type));
  const unit = facts.units.get('u');
  if (!unit) throw new Error('The unit is aboard.');
  return inView(facts, unit, 'optimum');
}

it.each<[string, Partial<View> | null, Measured, string]>([
  [
    'in a place that the manual approves, whatever its angle',
    { approvedPlaces: ['pilot-panel'], maxHorizontalDeg: 10 },
    { ...ahead, rightOfEyeIn: 20 },
    'met',
  ],
  ['in a place that it does not approve', { approvedPlaces: ['centre-stack'] }, ahead, 'not-met'],
  [
    'beyond the angle of a manual that names no place',
    { maxHorizontalDeg: 10 },
    { ...ahead, rightOfEyeIn: 20 },
    'not-met',
  ],
  ['within it', { maxHorizontalDeg: 40 }, { ...ahead, rightOfEyeIn: 20 }, 'met'],
  ['ahead, by a manual that says nothing', {}, ahead, 'met'],
  ['aside, by a manual that says nothing', {}, { ...ahead, rightOfEyeIn: 20 }, 'not-met'],
  ['ahead, without a manual', null, ahead, 'met'],
  ['at a distance that no cabin has', null, { ...ahead, eyeDistanceIn: 241 }, 'cannot-tell'],
  ['at the longest that one may have', null, { eyeDistanceIn: 240, rightOfEyeIn: 0, belowEyeIn: 64.3 }, 'met'],
])('%s: %s', (_, view, measured, outcome) => {
  expect(timelessOutcome(seen(view, measured))).toBe(outcome);
});

it.each<[string, Partial<Measured>, readonly string[]]>([
  ['distance', { eyeDistanceIn: null }, ['eyeDistanceIn']],
  ['one side', { rightOfEyeIn: null }, ['rightOfEyeIn']],
  [
    'nothing',
    { eyeDistanceIn: null, rightOfEyeIn: null, belowEyeIn: null },
    ['eyeDistanceIn', 'rightOfEyeIn', 'belowEyeIn'],
  ],
])('asks for what was not measured: %s', (_, part, missing) => {
  expect(missingPaths(seen(null, { ...ahead, ...part }))).toEqual(
    missing.map((each) => `configuration.openings.o.${each}`),
  );
});

it('shows the limit of the side on which it lies', () => {
  const vertical = (belowEyeIn: number) =>
    asked(seen(null, { ...ahead, belowEyeIn })).find(({ label }) => label === 'vertical-angle')?.limit?.amount;
  expect([vertical(0), vertical(20)]).toEqual([15, -15]);
});
