import { describe, expect, test } from 'vitest';
import { navChannel, vhfChannel, vhfHarmonic } from '../../libs/rules/src/calculations/vhf.js';
import { viewAngle } from '../../libs/rules/src/calculations/view.js';
import { interferenceTestMHz, l1HalfWidthMHz } from '../../libs/rules/src/facts/vhf.js';
import { linkOf, unitOf } from '../../libs/rules/testing/builders.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import { said } from './said.js';

describe('AC 23.1311-1C 15.2 and 15.3', () => {
  const eyeDistanceIn = 30;
  const offset = (deg: number) => eyeDistanceIn * Math.tan((deg * Math.PI) / 180);
  /** Degrees to the right, and degrees above the horizontal: the line of sight itself dips 15 below it. */
  const seen = (code: 'lateral-deviation' | 'approach-annunciation', rightDeg: number, aboveDeg: number) =>
    said('indicator-in-view', {
      dossier: dossierOf({
        configuration: {
          openings: [
            {
              id: 'hole',
              place: 'pilot-panel',
              widthIn: null,
              heightIn: null,
              depthIn: null,
              rightOfEyeIn: offset(rightDeg),
              belowEyeIn: -offset(aboveDeg),
              eyeDistanceIn,
            },
          ],
          units: [
            unitOf({ id: 'nav1', functions: ['vor-receiver'] }),
            unitOf({ id: 'u', functions: [code], openingId: 'hole' }),
          ],
          links: [linkOf('nav1', 'lateral-deviation', 'u', 'lateral-deviation')],
        },
      }),
      at: '2026-03-02T14:00Z',
      subject: 'u',
    });

  test.each([
    [
      'optimum, primary indication: 15 to the side, from the horizontal to 30 below it',
      'lateral-deviation',
      15,
      0,
      -30,
    ],
    ['maximum, the rest: 35 to the side, 25 above the horizontal to 35 below it', 'approach-annunciation', 35, 25, -35],
  ] as const)('%s', (_name, code, sideDeg, topDeg, lowDeg) => {
    const all = [
      [sideDeg, -15],
      [-sideDeg, -15],
      [0, topDeg],
      [0, lowDeg],
    ] as const;
    expect(all.map(([right, above]) => seen(code, right, above))).toEqual(Array(4).fill('met'));
    const beyond = [
      [sideDeg + 0.1, -15],
      [-sideDeg - 0.1, -15],
      [0, topDeg + 0.1],
      [0, lowDeg - 0.1],
    ] as const;
    expect(beyond.map(([right, above]) => seen(code, right, above))).toEqual(Array(4).fill('not-met'));
  });

  test.each([
    [30, [8.04, 10.92, 21.01, 25.17]],
    [28, [7.5, 10.19, 19.61, 23.49]],
  ])('at %i in, offsets for 15, 20, 35 and 40 degrees', (distanceIn, offsets) => {
    [15, 20, 35, 40].forEach((angle, i) => {
      expect(viewAngle({ offsetIn: offsets[i] ?? NaN, distanceIn })).toBeCloseTo(angle, 1);
    });
  });

  test.each([
    [4, 7.6],
    [6, 11.3],
    [8, 14.9],
    [13.8, 24.7],
    [15, 26.6],
    [21, 35],
  ])('%f in off at 30 in is %f degrees', (offsetIn, angle) => {
    expect(viewAngle({ offsetIn, distanceIn: 30 })).toBeCloseTo(angle, 1);
    expect(viewAngle({ offsetIn: -offsetIn, distanceIn: 30 })).toBeCloseTo(-angle, 1);
  });
});

describe('harmonics on L1, 1575.42 MHz', () => {
  test.each([
    [121.15, 13, 1574.95, -0.47],
    [121.175, 13, 1575.275, -0.145],
    [121.2, 13, 1575.6, 0.18],
    [121.225, 13, 1575.925, 0.505],
    [121.25, 13, 1576.25, 0.83],
    [131.2, 12, 1574.4, -1.02],
    [131.225, 12, 1574.7, -0.72],
    [131.25, 12, 1575, -0.42],
    [131.275, 12, 1575.3, -0.12],
    [131.3, 12, 1575.6, 0.18],
    [131.325, 12, 1575.9, 0.48],
    [131.35, 12, 1576.2, 0.78],
  ])('%f MHz: harmonic %i lands on %f, %f from L1', (frequency, order, landsMHz, offsetMHz) => {
    expect(vhfHarmonic(frequency)).toEqual({ order, landsMHz, offsetMHz });
  });

  test('130.285 does not reach L1, 131.285 does: the former is a misprint in circulation', () => {
    expect(Math.abs(vhfHarmonic(130.285).offsetMHz)).toBeGreaterThan(10);
    expect(Math.abs(vhfHarmonic(131.28333).offsetMHz)).toBeLessThan(0.03);
  });
});

describe('which transmitters reach the code around L1 (figures from memory, arithmetic checked)', () => {
  const reaches = (frequencyMHz: number) => Math.abs(vhfHarmonic(frequencyMHz).offsetMHz) <= l1HalfWidthMHz.value;

  test('121.1075 to 121.2649 and 131.1998 to 131.3703 MHz do, just outside they do not', () => {
    expect([121.1076, 121.2648, 131.1999, 131.3702].map(reaches)).toEqual([true, true, true, true]);
    expect([121.1074, 121.265, 131.1997, 131.3704].map(reaches)).toEqual([false, false, false, false]);
  });

  test('every frequency of the ground test does', () => {
    expect(interferenceTestMHz.value).toHaveLength(6);
    expect(interferenceTestMHz.value.filter((frequencyMHz) => !reaches(frequencyMHz))).toEqual([]);
  });
});

describe('ICAO Annex 10 volume V channel names', () => {
  test.each([
    ['118.000', 25, 118],
    ['118.005', 8.33, 118],
    ['118.010', 8.33, 118.0083],
    ['118.015', 8.33, 118.0167],
    ['118.025', 25, 118.025],
    ['118.030', 8.33, 118.025],
    ['118.035', 8.33, 118.0333],
    ['118.040', 8.33, 118.0417],
    ['118.050', 25, 118.05],
    ['118.055', 8.33, 118.05],
    ['118.060', 8.33, 118.0583],
    ['118.065', 8.33, 118.0667],
    ['118.075', 25, 118.075],
    ['118.080', 8.33, 118.075],
    ['118.085', 8.33, 118.0833],
    ['118.090', 8.33, 118.0917],
    ['118.100', 25, 118.1],
    ['121.185', 8.33, 121.1833],
    ['132.055', 8.33, 132.05],
    ['136.990', 8.33, 136.9917],
    ['121.5', 25, 121.5],
  ])('%s', (name, spacingKHz, carrierMHz) => {
    expect(vhfChannel(name)).toEqual({ spacingKHz, carrierMHz });
  });

  test.each([
    '118.020',
    '118.045',
    '118.070',
    '118.095',
    '118.001',
    '117.975',
    '137.000',
    '108.100',
    '1185',
    '',
    '118.0000',
    'abc',
  ])('%s names no channel', (name) => {
    expect(vhfChannel(name)).toBeNull();
  });

  test('760 channels at 25 kHz, 2280 at 8.33', () => {
    const names = Array.from({ length: 19_000 }, (_, i) => (118 + i / 1000).toFixed(3));
    const spacings = names.map((name) => vhfChannel(name)?.spacingKHz);
    expect(spacings.filter((spacing) => spacing === 25)).toHaveLength(760);
    expect(spacings.filter((spacing) => spacing === 8.33)).toHaveLength(2280);
  });
});

describe('AIM 1-1-9 h, TBL 1-1-4, 20 April 2023: localizer and glide slope', () => {
  const pairs: readonly (readonly [number, number])[] = [
    [108.1, 334.7],
    [108.15, 334.55],
    [108.3, 334.1],
    [108.35, 333.95],
    [108.5, 329.9],
    [108.55, 329.75],
    [108.7, 330.5],
    [108.75, 330.35],
    [108.9, 329.3],
    [108.95, 329.15],
    [109.1, 331.4],
    [109.15, 331.25],
    [109.3, 332],
    [109.35, 331.85],
    [109.5, 332.6],
    [109.55, 332.45],
    [109.7, 333.2],
    [109.75, 333.05],
    [109.9, 333.8],
    [109.95, 333.65],
    [110.1, 334.4],
    [110.15, 334.25],
    [110.3, 335],
    [110.35, 334.85],
    [110.5, 329.6],
    [110.55, 329.45],
    [110.7, 330.2],
    [110.75, 330.05],
    [110.9, 330.8],
    [110.95, 330.65],
    [111.1, 331.7],
    [111.15, 331.55],
    [111.3, 332.3],
    [111.35, 332.15],
    [111.5, 332.9],
    [111.55, 332.75],
    [111.7, 333.5],
    [111.75, 333.35],
    [111.9, 331.1],
    [111.95, 330.95],
  ];

  test.each(pairs)('%f MHz belongs to %f MHz', (localizerMHz, glideSlopeMHz) => {
    expect(navChannel(localizerMHz)).toEqual({ kind: 'localizer', glideSlopeMHz });
  });

  test('forty pairs, and each glide slope from 329.15 to 335 MHz in steps of 150 kHz once', () => {
    const found = pairs.map(([localizerMHz]) => {
      const channel = navChannel(localizerMHz);
      return channel?.kind === 'localizer' ? channel.glideSlopeMHz : 0;
    });
    const steps = Array.from({ length: 40 }, (_, index) => Math.round((329.15 + index * 0.15) * 100) / 100);
    expect(found.sort((a, b) => a - b)).toEqual(steps);
  });

  test('of 200 channels in the band 40 are localizers, all others VOR (split from memory)', () => {
    const all = Array.from({ length: 200 }, (_, index) => navChannel(108 + index * 0.05)?.kind);
    expect(all.filter((kind) => kind === 'localizer')).toHaveLength(40);
    expect(all.filter((kind) => kind === 'vor')).toHaveLength(160);
  });

  test.each([
    [108, 'vor'],
    [108.05, 'vor'],
    [108.1, 'localizer'],
    [108.2, 'vor'],
    [111.95, 'localizer'],
    [112, 'vor'],
    [112.1, 'vor'],
    [117.95, 'vor'],
    [117.975, undefined],
    [118, undefined],
    [107.95, undefined],
    [108.12, undefined],
    [NaN, undefined],
  ])('%f MHz: %s', (frequencyMHz, kind) => {
    expect(navChannel(frequencyMHz)?.kind).toBe(kind);
  });
});
