import { describe, expect, test } from 'vitest';
import { emptyWeightAfter, loadedCentre, negligibleWeightLb } from '../../libs/rules/src/calculations/mass.js';
import { minimumFuelLbPerHorsepower, negligibleShiftOfChord, oilLbPerGallon } from '../../libs/rules/src/facts/mass.js';

/** The aircraft of AC 43.13-1B chapter 10: 1169 lb at +10.6 in. */
const empty = { weightLb: 1169, armIn: 10.6 };
const oil = { weightLb: 17, armIn: -49 };
const pilot = { weightLb: 170, armIn: 16 };
const rear = (persons: number) => ({ weightLb: 170 * persons, armIn: 48 });
const fuel = (weightLb: number) => ({ weightLb, armIn: 22 });
const baggage = { weightLb: 100, armIn: 75.5 };

describe('AC 43.13-1B chapter 10', () => {
  test('figure 10-10, forward extreme: 1439 lb, +11.2 in', () => {
    const found = loadedCentre([empty, oil, pilot, fuel(83)]);
    expect(found).toMatchObject({ weightLb: 1439, armIn: 11.191 });
    expect(Math.round(found.momentLbIn)).toBe(16104);
  });

  test('figure 10-11, aft extreme: 2036 lb, +21.3 in', () => {
    const found = loadedCentre([empty, oil, pilot, rear(2), fuel(240), baggage]);
    expect(found).toMatchObject({ weightLb: 2036, armIn: 21.33 });
    expect(Math.round(found.momentLbIn)).toBe(43428);
  });

  test('figure 10-13, most passengers: the figures give 18.3 in where the circular prints 18.6', () => {
    const found = loadedCentre([empty, oil, pilot, pilot, rear(2), fuel(234)]);
    expect(found).toMatchObject({ weightLb: 2100, armIn: 18.317 });
    expect(Math.round(found.momentLbIn)).toBe(38466);
  });

  test('10-2c: a change of 1, 2 or 5 lb is negligible by empty weight', () => {
    expect([4999, 5000, 50_000, 50_001].map(negligibleWeightLb)).toEqual([1, 2, 2, 5]);
    expect(negligibleShiftOfChord.value).toBe(0.0005);
  });
});

describe('AC 43.13-1B 10-2p and 10-2q', () => {
  test('least fuel for 165 horsepower is 82.5 lb, 13.75 gal at 6 lb', () => {
    expect(165 * minimumFuelLbPerHorsepower.value).toBe(82.5);
    expect((165 * minimumFuelLbPerHorsepower.value) / 6).toBe(165 / 12);
  });

  test('nine quarts of oil weigh the 17 lb of chapter 10', () => {
    expect(Math.round((9 / 4) * oilLbPerGallon.value)).toBe(17);
  });
});

describe('equipment changes', () => {
  test('FAA general knowledge test, seats out, cabinet and radio in: 3,003 lb, 36.85 in, 1.62 in aft', () => {
    const after = emptyWeightAfter({ weightLb: 2886, armIn: 35.23 }, [
      { weightLb: -30, armIn: 71 },
      { weightLb: 97, armIn: 71 },
      { weightLb: 20, armIn: 71 },
      { weightLb: 30, armIn: 94 },
    ]);
    expect(after.weightLb).toBe(3003);
    expect(after.momentLbIn).toBe(110_670.78);
    expect(after.armIn).toBeCloseTo(36.85, 2);
    expect(after.shiftIn).toBeCloseTo(1.62, 2);
  });

  test('a removed item ahead of the datum has a positive moment', () => {
    const after = emptyWeightAfter({ weightLb: 1000, armIn: 10 }, [{ weightLb: -10, armIn: -20 }]);
    expect(after.momentLbIn).toBe(10_200);
    expect(after.shiftIn).toBeGreaterThan(0);
  });
});
