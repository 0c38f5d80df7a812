import { expect, test } from 'vitest';
import { CalculationError } from './errors.js';
import { emptyWeightAfter, loadedCentre, negligibleWeightLb } from './mass.js';

test('no change shifts nothing', () => {
  expect(emptyWeightAfter({ weightLb: 1500, armIn: 40.25 }, [])).toEqual({
    weightLb: 1500,
    momentLbIn: 60_375,
    armIn: 40.25,
    shiftIn: 0,
  });
});

test('an item taken out and put back leaves the aircraft as it was', () => {
  const radio = { weightLb: 7.35, armIn: 13.3 };
  const after = emptyWeightAfter({ weightLb: 1500, armIn: 40.25 }, [{ ...radio, weightLb: -radio.weightLb }, radio]);
  expect(after).toMatchObject({ weightLb: 1500, armIn: 40.25, shiftIn: 0 });
});

test('impossible input names the item', () => {
  expect(() =>
    loadedCentre([
      { weightLb: 100, armIn: 1 },
      { weightLb: NaN, armIn: 1 },
    ]),
  ).toThrow(/items\[1\]\.weightLb/);
  expect(() => loadedCentre([{ weightLb: 100, armIn: Infinity }])).toThrow(/items\[0\]\.armIn/);
  expect(() => loadedCentre([])).toThrow(CalculationError);
  expect(() => emptyWeightAfter({ weightLb: 100, armIn: 1 }, [{ weightLb: -100, armIn: 1 }])).toThrow(/0 lb/);
  expect(() => emptyWeightAfter({ weightLb: NaN, armIn: 1 }, [])).toThrow(/before\.weightLb/);
  expect(() => negligibleWeightLb(0)).toThrow(CalculationError);
});
