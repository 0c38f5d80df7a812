import { describe, expect, test } from 'vitest';
import { judgeAltimeterTest } from '../../libs/rules/src/calculations/altimeter-test.js';
import { judgeCorrespondence } from '../../libs/rules/src/calculations/correspondence.js';
import { judgeStaticLeak } from '../../libs/rules/src/calculations/static-leak.js';
import { scaleErrorTable } from '../../libs/rules/src/facts/altimeter.js';
import type { StaticLeakReadings } from '../../libs/rules/src/dossier/readings.js';
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
});

describe('old 23.1325(b)(2), through amendment 23-62: the figures that appendix E(a) does not print', () => {
  const leak = (part: Partial<StaticLeakReadings>) =>
    judgeStaticLeak({
      pressurized: false,
      aboveFieldFt: 1000,
      differentialInHg: null,
      cabinEquivalentFt: null,
      lossFt: 0,
      linesClear: true,
      portHeater: 'not-fitted',
      surroundsUnchanged: true,
      ...part,
    }).outcome;

  test('(i) unpressurized: 100 ft in one minute passes, 101 ft fails', () => {
    expect([99, 100, 101].map((lossFt) => leak({ lossFt }))).toEqual(['met', 'met', 'not-met']);
  });

  test('(i) evacuated to about 1 inHg, or to 1,000 ft above the elevation of the aircraft', () => {
    expect([1000, 999].map((aboveFieldFt) => leak({ aboveFieldFt }))).toEqual(['met', 'not-met']);
    const byPressure = (differentialInHg: number) => leak({ aboveFieldFt: null, differentialInHg });
    expect([1, 0.94].map(byPressure)).toEqual(['met', 'not-met']);
  });

  test('(ii) pressurized: 2 % of the equivalent altitude of the greatest cabin difference, or 100 ft, whichever is greater', () => {
    const lost = (cabinEquivalentFt: number, lossFt: number) => leak({ pressurized: true, cabinEquivalentFt, lossFt });
    expect([lost(8000, 160), lost(8000, 161)]).toEqual(['met', 'not-met']);
    expect([lost(4000, 100), lost(4000, 101)]).toEqual(['met', 'not-met']);
  });
});

test('appendix E(c): 125 ft at each point passes, 126 ft fails, both ways', () => {
  const off = (ft: number) =>
    judgeCorrespondence({
      points: [
        { altimeterFt: 0, reportedFt: 0 },
        { altimeterFt: 10_000, reportedFt: 10_000 + ft },
      ],
    }).outcome;
  expect([125, -125, 126, -126].map(off)).toEqual(['met', 'met', 'not-met', 'not-met']);
});
