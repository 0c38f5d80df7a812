import { describe, expect, test } from 'vitest';
import { antennaDragLb, distanceBetween } from '../../libs/rules/src/calculations/antenna.js';
import {
  limitManoeuvreFactor,
  mountFactors,
  mountLoadLb,
  mountLoadsLb,
  rotorcraftMountFactors,
  transportMountFactors,
} from '../../libs/rules/src/calculations/mount.js';
import { antennaDragFactor } from '../../libs/rules/src/facts/antenna.js';
import {
  forwardWhereNobodyIsStruck,
  transportTestFactors,
  ultimateOverLimit,
} from '../../libs/rules/src/facts/load-factors.js';

describe('14 CFR 23.337(a), before amendment 23-64', () => {
  test.each([
    [2300, 3.8],
    [4118, 3.8],
    [6000, 3.6],
    [12_500, 3.17],
  ])('normal category, %i lb: %f', (weightLb, factor) => {
    expect(limitManoeuvreFactor('normal', weightLb)).toBe(factor);
  });

  test('2.1 + 24,000 / (W + 10,000) falls to 3.8 between 4,117 and 4,118 lb', () => {
    expect(2.1 + 24_000 / 14_117).toBeGreaterThan(3.8);
    expect(2.1 + 24_000 / 14_118).toBeLessThan(3.8);
  });

  test('utility 4.4 and acrobatic 6.0 whatever the weight; ultimate 5.7, 6.6 and 9.0', () => {
    const limits = (['normal', 'utility', 'acrobatic'] as const).map((each) => limitManoeuvreFactor(each, 2300));
    expect(limits).toEqual([3.8, 4.4, 6]);
    expect(limits.map((each) => Math.round(each * ultimateOverLimit.value * 10) / 10)).toEqual([5.7, 6.6, 9]);
  });
});

describe('a box of 7 lb', () => {
  test('AC 43.13-2B, utility (from memory): 63 forward, 21 up, 10.5 sideward, 46.2 lb down', () => {
    const factors = mountFactors({ acrobatic: false, massItems: false, couldStrike: true });
    expect(mountLoadsLb(7, factors)).toEqual({ forward: 63, up: 21, side: 10.5, down: 46.2 });
  });

  test('23.561(b)(3), where the basis has it: 126 forward, 21 up, 31.5 lb sideward', () => {
    const factors = mountFactors({ acrobatic: false, massItems: true, couldStrike: true });
    expect(mountLoadsLb(7, factors)).toMatchObject({ forward: 126, up: 21, side: 31.5 });
  });

  test('acrobatic: 4.5 up and 9.0 down', () => {
    const factors = mountFactors({ acrobatic: true, massItems: false, couldStrike: true });
    expect(factors).toEqual({ forward: 9, up: 4.5, side: 1.5, down: 9 });
  });

  test('AC 43.13-2A chapter 1, note: 2.0 g forward is enough where it could strike nobody', () => {
    expect(forwardWhereNobodyIsStruck.value).toBe(2);
    expect(mountLoadsLb(7, mountFactors({ acrobatic: false, massItems: true, couldStrike: false })).forward).toBe(14);
  });
});

describe('AC 43.13-2B chapter 1, acceptable test factors (from memory), each column', () => {
  const of = (acrobatic: boolean) => mountFactors({ acrobatic, massItems: false, couldStrike: true });

  test.each([
    ['normal and utility', of(false), { side: 1.5, up: 3, forward: 9, down: 6.6 }],
    ['acrobatic', of(true), { side: 1.5, up: 4.5, forward: 9, down: 9 }],
    ['rotorcraft', rotorcraftMountFactors(false), { side: 2, up: 1.5, forward: 4, down: 4 }],
    [
      'transport; upward and downward its maker is asked',
      transportMountFactors(true),
      { side: 1.5, up: 2, forward: 9, down: null },
    ],
  ])('%s', (_column, factors, published) => {
    expect(factors).toEqual(published);
  });

  test('of the transport column nothing upward or downward is good enough by the table alone', () => {
    expect(transportTestFactors.value.askMaker).toEqual(['up', 'down']);
    expect(mountLoadLb(7, 2)).toBe(14);
  });
});

describe('AC 43.13-2B chapter 3, antenna drag (from memory)', () => {
  test('0.135 sq ft at 250 mph: 2.759 lb, which the circular gives as 2.75', () => {
    expect(antennaDragLb({ frontalAreaSqFt: 0.135, neverExceedMph: 250 })).toBe(2.759);
  });

  test.each([
    [0.1, 200, 1.308],
    [0.2, 160, 1.674],
    [0.05, 180, 0.53],
  ])('%f sq ft at %i mph: %f lb', (frontalAreaSqFt, neverExceedMph, drag) => {
    expect(antennaDragLb({ frontalAreaSqFt, neverExceedMph })).toBeCloseTo(drag, 3);
  });

  test('a tenth of a blunt shape: 0.00256 times a drag coefficient of 1.28; in knots 0.000433', () => {
    expect((0.00256 * 1.28) / 10 / antennaDragFactor.value).toBeCloseTo(1, 2);
    expect(antennaDragFactor.value * 1.15078 ** 2).toBeCloseTo(0.000433, 6);
  });

  test('distance of two antennas: 3, 4, 5', () => {
    expect(distanceBetween({ xIn: 60, yIn: 0 }, { xIn: 90, yIn: -40 })).toBe(50);
  });
});
