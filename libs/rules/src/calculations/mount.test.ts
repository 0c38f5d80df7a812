import { expect, it } from 'vitest';
import { antennaDragLb, distanceBetween } from './antenna.js';
import { limitManoeuvreFactor, mountFactors, mountLoadsLb } from './mount.js';

it('asks more where more may happen, in no direction less', () => {
  const least = mountFactors({ acrobatic: false, massItems: false, couldStrike: false });
  const most = mountFactors({ acrobatic: true, massItems: true, couldStrike: true });
  for (const direction of ['forward', 'up', 'side', 'down'] as const)
    expect(most[direction]).toBeGreaterThanOrEqual(least[direction]);
  expect(most).toEqual({ forward: 18, up: 4.5, side: 4.5, down: 9 });
});

it('has no distance without both places', () => {
  expect(distanceBetween({ xIn: 10, yIn: null }, { xIn: 20, yIn: 0 })).toBeNull();
  expect(distanceBetween({ xIn: 10, yIn: 0 }, { xIn: 20_000, yIn: 0 })).toBeNull();
});

it.each([
  [
    'a unit without mass',
    () => mountLoadsLb(0, mountFactors({ acrobatic: false, massItems: false, couldStrike: true })),
    'massLb',
  ],
  ['an aircraft without weight', () => limitManoeuvreFactor('normal', 0), 'maxWeightLb'],
  ['a negative area', () => antennaDragLb({ frontalAreaSqFt: -1, neverExceedMph: 200 }), 'frontalAreaSqFt'],
  [
    'a speed that is no number',
    () => antennaDragLb({ frontalAreaSqFt: 1, neverExceedMph: Infinity }),
    'neverExceedMph',
  ],
])('refuses %s', (_name, call, field) => {
  expect(call).toThrow(expect.objectContaining({ name: 'CalculationError', field }) as Error);
});
