import { describe, expect, test } from 'vitest';
import { judgeCompass } from '../../libs/rules/src/calculations/compass.js';
import type { Aircraft } from '../../libs/rules/src/dossier/aircraft.js';
import type { AsBuilt } from '../../libs/rules/src/dossier/installation.js';
import type { CompassReadings } from '../../libs/rules/src/dossier/readings.js';
import { circuitOf, unitOf } from '../../libs/rules/testing/builders.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import { said, saidOfProtector } from './said.js';

/** Part 23 as it stood before amendment 23-64, edition of 2015; its source notes say since which amendment. */

const at = '2026-03-02T14:00Z';
const part23 = (amendment: number): Aircraft['basis'] => ({ code: 'part-23', amendment });
const turned = (headingDeg: number, offDeg: number) => (headingDeg + offDeg + 360) % 360;
const swing = (offDeg: number, headings: readonly number[]): CompassReadings => ({
  points: headings.map((headingDeg) => ({ headingDeg, compassDeg: turned(headingDeg, offDeg) })),
  enginesRunning: true,
  radiosStated: true,
  electricLoadsPlacarded: null,
});
const each = (stepDeg: number) => Array.from({ length: Math.floor(360 / stepDeg) }, (_, i) => i * stepDeg);

describe('compass', () => {
  test('23.1327(a)(2): ten degrees on any heading pass, more does not', () => {
    const off = (deg: number) => judgeCompass(swing(deg, each(30))).outcome;
    expect([10, -10, 10.1, -10.1].map(off)).toEqual(['met', 'met', 'not-met', 'not-met']);
  });

  test('23.1547(d): not more than 30 degree increments; 27.1547(d): 45', () => {
    // One step as asked for, all others of 15 degrees.
    const stepped = (stepDeg: number, kind: 'airplane' | 'rotorcraft') => {
      const wide = [0, stepDeg, ...each(15).filter((heading) => heading > stepDeg)];
      return judgeCompass(swing(0, wide), kind).outcome;
    };
    expect([stepped(30, 'airplane'), stepped(31, 'airplane')]).toEqual(['met', 'not-met']);
    expect([stepped(45, 'rotorcraft'), stepped(46, 'rotorcraft')]).toEqual(['met', 'not-met']);
  });

  test('23.1327(b), 23.1547(e): more from electric loads where a placard names them and a gyro or stabilized indicator is fitted', () => {
    const loaded = { ...swing(12, each(30)), electricLoadsPlacarded: true };
    expect([true, false, null].map((fitted) => judgeCompass(loaded, 'airplane', fitted).outcome)).toEqual([
      'met',
      'not-met',
      'cannot-tell',
    ]);
  });
});

describe('23.1322, lights', () => {
  type Light = NonNullable<AsBuilt['lights']>[number];
  const lit = (use: Light['use'], colour: Light['colour'], basis = part23(45)) =>
    said('annunciator-colours', {
      dossier: dossierOf({
        configuration: {
          aircraft: { basis },
          units: [
            unitOf({
              id: 'ann1',
              functions: ['integrity-annunciation'],
              asBuilt: { air: null, airwaysClear: null, couldStrike: null, bears: null, lights: [{ use, colour }] },
            }),
          ],
        },
      }),
      at,
    });

  test.each([
    ['warning', 'red'],
    ['caution', 'amber'],
    ['safe-operation', 'green'],
  ] as const)('(a) to (c) %s: %s and no other of the three', (use, colour) => {
    const right = (['red', 'amber', 'green'] as const).filter((shown) => lit(use, shown) === 'met');
    expect(right).toEqual([colour]);
  });

  test('(d) any other colour for the rest, white among them', () => {
    const shown = (['white', 'blue', 'red', 'amber', 'green'] as const).filter(
      (colour) => lit('other', colour) === 'met',
    );
    expect(shown).toEqual(['white', 'blue']);
  });

  test('came in with amendment 23-17 (41 FR 55465, 20 Dec 1976), went with 23-64', () => {
    const under = (amendment: number) => lit('warning', 'amber', part23(amendment));
    expect([16, 17, 63].map(under)).toEqual(['no statement', 'not-met', 'not-met']);
    expect(lit('warning', 'red', part23(64))).toBe('cannot-tell');
  });
});

describe('electrical system', () => {
  /** 20 A on a battery of which 80 % count: 12.5 Ah last 30 minutes, 25 Ah 60. */
  const lasts = (batteryAh: number, maxOperatingAltitudeFt: number, amendment: number) =>
    said('battery-endurance', {
      dossier: dossierOf({
        status: { completeness: [{ list: 'equipment', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] },
        configuration: {
          aircraft: { basis: part23(amendment), maxOperatingAltitudeFt },
          electrical: {
            busV: 28,
            alternatorA: 60,
            batteryAh,
            batteryShare: 0.8,
            loadWatch: 'none',
            circuits: [
              circuitOf({ id: 'c', loadA: 20, intermittent: false, usedIn: ['battery-only'], essential: true }),
            ],
          },
        },
      }),
      at,
    });

  test('23.1353(h)(1), amendment 23-62: 30 minutes to 25,000 ft, 60 above', () => {
    expect([lasts(12.5, 25_000, 62), lasts(12.45, 25_000, 62)]).toEqual(['met', 'not-met']);
    expect([lasts(12.5, 25_001, 62), lasts(24.95, 25_001, 62), lasts(25, 25_001, 62)]).toEqual([
      'not-met',
      'not-met',
      'met',
    ]);
  });

  test('before amendment 23-62: 30 minutes at any altitude', () => {
    expect([lasts(12.5, 25_001, 61), lasts(12.45, 25_001, 61)]).toEqual(['met', 'not-met']);
  });

  test('23.1357(b): a protector of an essential circuit protects no other', () => {
    const guards = (circuitsGuarded: number) => saidOfProtector(part23(45), circuitsGuarded);
    expect([guards(1), guards(2)]).toEqual(['met', 'not-met']);
  });
});
