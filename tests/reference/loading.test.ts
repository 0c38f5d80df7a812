import { describe, expect, test } from 'vitest';
import { adverseLoadings, ballastLb, limitsAt, percentOfChord } from '../../libs/rules/src/calculations/loading.js';
import { loadedCentre } from '../../libs/rules/src/calculations/mass.js';

/** The aircraft of AC 43.13-1B chapter 10. */
const empty = { weightLb: 1169, armIn: 10.6 };
const stations = [
  { name: 'Oil', armIn: -49, leastLb: 17, mostLb: 17 },
  { name: 'Front seats', armIn: 16, leastLb: 170, mostLb: 340 },
  { name: 'Fuel', armIn: 22, leastLb: 83, mostLb: 240 },
  { name: 'Rear seats', armIn: 48, leastLb: 0, mostLb: 340 },
  { name: 'Baggage', armIn: 75.5, leastLb: 0, mostLb: 100 },
];
const points = [
  { weightLb: 1200, forwardIn: 8.5, aftIn: 21.9 },
  { weightLb: 2100, forwardIn: 8.5, aftIn: 21.9 },
];

describe('AC 43.13-1B figures 10-10 and 10-11: the adverse loadings found by themselves', () => {
  const { forward, aft } = adverseLoadings(empty, stations, points);

  test('forward: oil, pilot, least fuel; 1439 lb at +11.2 in, behind the limit of +8.5 in', () => {
    expect(forward).toMatchObject({ weightLb: 1439, armIn: 11.191, limits: { forwardIn: 8.5 } });
  });

  test('aft: oil, pilot, rear seats, full fuel, baggage; 2036 lb at +21.3 in, ahead of the limit of +21.9 in', () => {
    expect(aft).toMatchObject({ weightLb: 2036, armIn: 21.33, limits: { aftIn: 21.9 } });
  });

  test('figure 10-14 prints 20366 lb in its quotient where the sum is 2036', () => {
    expect(Math.round((43_428 / 2036) * 10) / 10).toBe(21.3);
    expect(43_428 / 20_366).toBeLessThan(3);
  });
});

test('limits between two points run straight, below the lightest they are its own, above the heaviest there are none', () => {
  const tapered = [
    { weightLb: 2000, forwardIn: 36, aftIn: 46 },
    { weightLb: 2400, forwardIn: 40, aftIn: 46 },
  ];
  expect(limitsAt(2000, tapered)).toEqual({ forwardIn: 36, aftIn: 46 });
  expect(limitsAt(2100, tapered)).toEqual({ forwardIn: 37, aftIn: 46 });
  expect(limitsAt(2400, tapered)).toEqual({ forwardIn: 40, aftIn: 46 });
  expect(limitsAt(1500, tapered)).toEqual({ forwardIn: 36, aftIn: 46 });
  expect(limitsAt(2400.01, tapered)).toBeNull();
});

describe('percent of the mean chord', () => {
  test('FAA-H-8083-1B chapter 7: 36.4 in, leading edge 25.98, chord 58.0: 10.42 in behind it, 17.97 %', () => {
    expect(36.4 - 25.98).toBeCloseTo(10.42, 2);
    expect(percentOfChord({ armIn: 36.4, leadingEdgeIn: 25.98, chordIn: 58 })).toBe(17.97);
  });

  test('FAA handbook (from memory): 161 in, leading edge 144, trailing edge 206: 27.4 %', () => {
    expect(percentOfChord({ armIn: 161, leadingEdgeIn: 144, chordIn: 206 - 144 })).toBe(27.42);
  });
});

test('ballast (formula from memory): with it aboard the centre lies where it should', () => {
  const weightLb = ballastLb({ aircraftLb: 1900, centreIn: 38, wantedIn: 38.5, ballastArmIn: 138.5 });
  expect(weightLb).toBe(9.5);
  const after = loadedCentre([
    { weightLb: 1900, armIn: 38 },
    { weightLb, armIn: 138.5 },
  ]);
  expect(after.armIn).toBeCloseTo(38.5, 2);
  expect(() => ballastLb({ aircraftLb: 1900, centreIn: 38, wantedIn: 38.5, ballastArmIn: 10 })).toThrow('ballastArmIn');
});
