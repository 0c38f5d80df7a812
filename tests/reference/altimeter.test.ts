import { describe, expect, test } from 'vitest';
import { judgeAltimeterTest } from '../../libs/rules/src/calculations/altimeter-test.js';
import { judgeCorrespondence } from '../../libs/rules/src/calculations/correspondence.js';
import { judgeStaticLeak } from '../../libs/rules/src/calculations/static-leak.js';
import {
  correspondenceInServiceFt,
  fieldElevationDoubtFt,
  scaleErrorTable,
} from '../../libs/rules/src/facts/altimeter.js';
import { perfectAltimeter, tableFour, tableOne, tableThree } from '../../libs/rules/testing/sample-readings.js';

/** Pressure in inHg at a geopotential altitude in feet, from the 1976 standard atmosphere below 65,617 ft. */
function standardPressureInHg(altitudeFt: number): number {
  const metres = altitudeFt * 0.3048;
  const seaLevel = 29.92126;
  const tropopause = 11_000;
  if (metres <= tropopause) return seaLevel * (1 - (0.0065 * metres) / 288.15) ** 5.255876;
  const at = seaLevel * (1 - (0.0065 * tropopause) / 288.15) ** 5.255876;
  return at * Math.exp((-9.80665 * (metres - tropopause)) / (287.05287 * 216.65));
}

/** Altitude in feet that stands for a setting in inHg. */
function standardAltitudeFt(pressureInHg: number): number {
  return ((1 - (pressureInHg / 29.92126) ** (1 / 5.255876)) * 288.15) / 0.0065 / 0.3048;
}

describe('14 CFR part 43 appendix E table I', () => {
  test('every row as published', () => {
    expect(scaleErrorTable.value.map((row) => [row.altitudeFt, row.pressureInHg, row.toleranceFt])).toEqual(tableOne);
  });

  test.each(tableOne)('%i ft: the pressure is that of the standard atmosphere', (altitudeFt, pressureInHg) => {
    expect(standardPressureInHg(altitudeFt)).toBeCloseTo(pressureInHg, 3);
  });

  test.each(tableOne)(
    '%i ft (%f inHg): %i ft off passes, one more fails, both ways',
    (atFt, _pressure, toleranceFt) => {
      for (const sign of [1, -1]) {
        const off = (extraFt: number) => {
          const readings = perfectAltimeter(50_000);
          const scaleError = readings.scaleError.map((point) =>
            point.atFt === atFt ? { atFt, indicatedFt: atFt + sign * (toleranceFt + extraFt) } : point,
          );
          return judgeAltimeterTest({ ...readings, scaleError }).outcome;
        };
        expect([off(-1), off(0), off(1)]).toEqual(['met', 'met', 'not-met']);
      }
    },
  );
});

describe('table II', () => {
  test.each([
    ['case leak 100 / 101 ft', (ft: number) => ({ caseLeakFt: ft }), 100],
    ['case leak the other way', (ft: number) => ({ caseLeakFt: -ft }), 100],
    [
      'hysteresis at 50 %, 75 / 76 ft',
      (ft: number) => ({ hysteresisHalf: { atFt: 10_000, ascendingFt: 9_990, descendingFt: 9_990 + ft } }),
      75,
    ],
    [
      'hysteresis at 40 %, 75 / 76 ft',
      (ft: number) => ({ hysteresisTwoFifths: { atFt: 8_000, ascendingFt: 8_010, descendingFt: 8_010 - ft } }),
      75,
    ],
    ['after effect 30 / 31 ft', (ft: number) => ({ afterEffect: { beforeFt: 120, afterFt: 120 + ft } }), 30],
  ])('%s', (_name, change, limitFt) => {
    const outcome = (ft: number) => judgeAltimeterTest({ ...perfectAltimeter(), ...change(ft) }).outcome;
    expect([outcome(limitFt - 1), outcome(limitFt), outcome(limitFt + 1)]).toEqual(['met', 'met', 'not-met']);
  });
});

describe('table III', () => {
  test.each(tableThree)('%i ft: friction of %i ft passes, one more fails', (atFt, toleranceFt) => {
    const outcome = (changeFt: number) => {
      const readings = perfectAltimeter(50_000);
      const friction = readings.friction.map((point) => (point.atFt === atFt ? { atFt, changeFt } : point));
      return judgeAltimeterTest({ ...readings, friction }).outcome;
    };
    expect([outcome(toleranceFt), outcome(-toleranceFt), outcome(toleranceFt + 1)]).toEqual(['met', 'met', 'not-met']);
  });
});

describe('table IV', () => {
  test.each(tableFour)('%f inHg is %i ft, plus or minus 25', (settingInHg, differenceFt) => {
    const outcome = (offFt: number) => {
      const readings = perfectAltimeter();
      const baroScale = readings.baroScale.map((point) =>
        point.settingInHg === settingInHg ? { settingInHg, differenceFt: differenceFt + offFt } : point,
      );
      return judgeAltimeterTest({ ...readings, baroScale }).outcome;
    };
    expect([outcome(25), outcome(-25), outcome(26), outcome(-26)]).toEqual(['met', 'met', 'not-met', 'not-met']);
  });

  test.each(tableFour)(
    '%f inHg agrees with the standard atmosphere within a foot (29.92 is printed 0, computes to -1)',
    (setting, ft) => {
      const computed = -standardAltitudeFt(setting);
      expect(Math.abs(computed - ft)).toBeLessThan(setting === 29.92 ? 1.3 : 1);
    },
  );
});

describe('worked examples on appendix E', () => {
  const scaleAt = (atFt: number, indicatedFt: number) =>
    judgeAltimeterTest({
      ...perfectAltimeter(),
      scaleError: perfectAltimeter().scaleError.map((point) => (point.atFt === atFt ? { atFt, indicatedFt } : point)),
    });

  test('10,000 ft reads 10,080 passes, 10,081 fails', () => {
    expect(scaleAt(10_000, 10_080).outcome).toBe('met');
    expect(scaleAt(10_000, 10_081).outcome).toBe('not-met');
  });

  test('18,000 ft reads 17,880 passes: 120 ft is the limit', () => {
    expect(scaleAt(18_000, 17_880).outcome).toBe('met');
  });

  test('appendix E(c): altimeter 9,980 against 10,100 passes with 120 ft, against 10,200 fails with 220 ft', () => {
    const points = [{ altimeterFt: 9_980, reportedFt: 10_100 }];
    expect(judgeCorrespondence({ points })).toMatchObject({
      outcome: 'met',
      points: [{ value: 120, limit: { most: 125 } }],
    });
    const off = [...points, { altimeterFt: 9_980, reportedFt: 10_200 }];
    expect(judgeCorrespondence({ points: off })).toMatchObject({ outcome: 'not-met', points: [{}, { value: 220 }] });
  });

  test('old 23.1325(b)(2)(i): 100 ft in one minute from 1,000 ft above the field passes, 101 ft fails', () => {
    const leak = (lossFt: number) =>
      judgeStaticLeak({
        pressurized: false,
        aboveFieldFt: 1000,
        differentialInHg: null,
        cabinEquivalentFt: null,
        lossFt,
        linesClear: true,
        portHeater: 'not-fitted',
        surroundsUnchanged: true,
      });
    expect([leak(99).outcome, leak(100).outcome, leak(101).outcome]).toEqual(['met', 'met', 'not-met']);
  });
});

test('14 CFR 91.217(a)(2): 125 ft in service; AIM 7-2-3: 75 ft off field elevation is questionable', () => {
  expect([correspondenceInServiceFt.value, fieldElevationDoubtFt.value]).toEqual([125, 75]);
});
