import fc from 'fast-check';
import { expect, it } from 'vitest';
import { adverseLoadings, limitsAt } from '../../libs/rules/src/calculations/loading.js';
import { loadedCentre } from '../../libs/rules/src/calculations/mass.js';
import type { Envelope, Station } from '../../libs/rules/src/dossier/installation.js';

/** Arms and limits are rounded to 0.001 in, and weights to 0.01 lb before a limit is read off. */
const roundingIn = 0.005;

const arm = fc.integer({ min: -200, max: 1200 }).map((tenths) => tenths / 10);
const station = fc
  .record({ armIn: arm, leastLb: fc.integer({ min: 0, max: 80 }), more: fc.integer({ min: 0, max: 400 }) })
  .map(({ armIn, leastLb, more }): Station => ({ name: 'Station', armIn, leastLb, mostLb: leastLb + more }));
const stations = fc.array(station, { minLength: 1, maxLength: 5 });
const step = fc.record({
  by: fc.integer({ min: 0, max: 300 }),
  forwardIn: fc.integer({ min: 300, max: 420 }).map((tenths) => tenths / 10),
  rangeIn: fc.integer({ min: 0, max: 150 }).map((tenths) => tenths / 10),
});
const points = fc.array(step, { minLength: 1, maxLength: 6 }).map((steps): Envelope['points'] => {
  let weightLb = 1500;
  return steps.map(({ by, forwardIn, rangeIn }) => ({
    weightLb: (weightLb += by),
    forwardIn,
    aftIn: forwardIn + rangeIn,
  }));
});
const empty = fc.record({
  weightLb: fc.integer({ min: 1200, max: 1700 }),
  armIn: fc.integer({ min: 300, max: 500 }).map((tenths) => tenths / 10),
});
type Side = 'forward' | 'aft';

it('no loading, of those tried pound by pound and of any at all, lies farther out than the worst that was found', () => {
  const shares = fc.array(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 5, maxLength: 5 }), {
    minLength: 40,
    maxLength: 40,
  });
  fc.assert(
    fc.property(empty, stations, points, shares, (aircraft, list, limits, any) => {
      const found = adverseLoadings(aircraft, list, limits);
      const heaviest = Math.max(...limits.map((each) => each.weightLb));
      const tried = [
        ...any.map((parts) =>
          list.map(({ leastLb, mostLb }, index) => leastLb + (parts[index] ?? 0) * (mostLb - leastLb)),
        ),
        ...inOrder(list, 1),
        ...inOrder(list, -1),
      ];
      for (const loads of tried) {
        const items = [aircraft, ...list.map(({ armIn }, index) => ({ weightLb: loads[index] ?? 0, armIn }))];
        const weight = items.reduce((sum, each) => sum + each.weightLb, 0);
        // Heavier than the aircraft may be is no loading of it, unless it is so with what is always aboard.
        if (weight > heaviest) continue;
        const centre = weight === 0 ? 0 : items.reduce((sum, each) => sum + each.weightLb * each.armIn, 0) / weight;
        for (const side of ['forward', 'aft'] as const)
          expect(marginOf(side, found[side])).toBeLessThanOrEqual(marginAt(side, weight, centre, limits) + roundingIn);
      }
    }),
    { numRuns: 300, seed: 17 },
  );
}, 60_000);

it('the worst that was found can be loaded', () => {
  fc.assert(
    fc.property(empty, stations, points, (aircraft, list, limits) => {
      const least = loadedCentre([aircraft, ...list.map(({ leastLb, armIn }) => ({ weightLb: leastLb, armIn }))]);
      const most = list.reduce((sum, { mostLb }) => sum + mostLb, aircraft.weightLb);
      const heaviest = Math.max(...limits.map((each) => each.weightLb));
      for (const each of Object.values(adverseLoadings(aircraft, list, limits))) {
        expect(each.weightLb).toBeGreaterThanOrEqual(least.weightLb);
        expect(each.weightLb).toBeLessThanOrEqual(Math.max(least.weightLb, Math.min(most, heaviest)));
        expect(each.limits).toEqual(limitsAt(each.weightLb, limits));
      }
    }),
    { numRuns: 300, seed: 19 },
  );
});

/** Filled from the front or from the rear, one pound more each time. */
function inOrder(list: readonly Station[], direction: 1 | -1): readonly (readonly number[])[] {
  const order = list
    .map((_, index) => index)
    .sort((a, b) => direction * ((list[a]?.armIn ?? 0) - (list[b]?.armIn ?? 0)));
  const loads = list.map(({ leastLb }) => leastLb);
  const found = [[...loads]];
  for (const index of order)
    while ((loads[index] ?? 0) < (list[index]?.mostLb ?? 0)) {
      loads[index] = (loads[index] ?? 0) + 1;
      found.push([...loads]);
    }
  return found;
}

function marginOf(side: Side, { armIn, limits }: ReturnType<typeof adverseLoadings>[Side]): number {
  if (limits === null) return -Infinity;
  return side === 'forward' ? armIn - limits.forwardIn : limits.aftIn - armIn;
}

/** By limits read off without rounding, to which a sampled loading is held. */
function marginAt(side: Side, weightLb: number, armIn: number, limits: Envelope['points']): number {
  const key = side === 'forward' ? 'forwardIn' : 'aftIn';
  const sign = side === 'forward' ? 1 : -1;
  const exact = limits.filter((each) => each.weightLb === weightLb).map((each) => each[key]);
  const above = limits.find((each) => each.weightLb > weightLb);
  const below = limits.findLast((each) => each.weightLb < weightLb);
  const between =
    above && below
      ? [below[key] + ((weightLb - below.weightLb) / (above.weightLb - below.weightLb)) * (above[key] - below[key])]
      : [above ?? below].flatMap((each) => (each ? [each[key]] : []));
  return Math.min(...(exact.length > 0 ? exact : between).map((limit) => sign * (armIn - limit)));
}
