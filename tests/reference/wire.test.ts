import { describe, expect, test } from 'vitest';
import { batteryLoad, batteryMinutesAt, continuousLoadIn } from '../../libs/rules/src/calculations/electrical-load.js';
import {
  aluminiumInPlaceOf,
  aluminiumVoltageDrop,
  bundleCurrent,
  conductorTemperature,
  groundReturnDropV,
  harnessCurrent,
  longestRun,
  mainWiresDropV,
  protectorFor,
  smallestWire,
  smallestWireForDrop,
  wireVoltageDrop,
} from '../../libs/rules/src/calculations/wire.js';
import { aluminiumTemperature, copperTemperature, protectorTable, wireTable } from '../../libs/rules/src/facts/wire.js';
import type { LoadCondition } from '../../libs/rules/src/dossier/installation.js';
import { loadCondition } from '../../libs/rules/src/dossier/installation.js';
import { lowVoltageLightOf } from '../../libs/rules/src/rules/circuits.js';
import { circuitOf } from '../../libs/rules/testing/builders.js';

/** Gauge, A at 105, 150 and 200 C, ohm per 1,000 ft, circular mils: AC 43.13-1B table 11-9 (00, 000, 0000 as -1, -2, -3). */
const table119: readonly (readonly [number, number, number, number, number, number])[] = [
  [24, 2.5, 4, 5, 28.4, 475],
  [22, 3, 5, 6, 16.2, 755],
  [20, 4, 7, 9, 9.88, 1216],
  [18, 6, 9, 12, 6.23, 1900],
  [16, 7, 11, 14, 4.81, 2426],
  [14, 10, 14, 18, 3.06, 3831],
  [12, 13, 19, 25, 2.02, 5874],
  [10, 17, 26, 32, 1.26, 9354],
  [8, 38, 57, 71, 0.7, 16983],
  [6, 50, 76, 97, 0.44, 26818],
  [4, 68, 103, 133, 0.28, 42615],
  [2, 95, 141, 179, 0.18, 66500],
  [1, 113, 166, 210, 0.15, 81700],
  [0, 128, 192, 243, 0.12, 104500],
  [-1, 147, 222, 285, 0.09, 133000],
  [-2, 172, 262, 335, 0.07, 166500],
  [-3, 204, 310, 395, 0.06, 210900],
];

/** Feet at 14 V (0.5 V) and 28 V (1 V) for 5, 10 and 20 A, from the same resistances. */
const runs: Readonly<Record<number, readonly (readonly [number, number])[]>> = {
  22: [
    [6.2, 12.3],
    [3.1, 6.2],
    [1.5, 3.1],
  ],
  20: [
    [10.1, 20.2],
    [5.1, 10.1],
    [2.5, 5.1],
  ],
  18: [
    [16.1, 32.1],
    [8, 16.1],
    [4, 8],
  ],
  16: [
    [20.8, 41.6],
    [10.4, 20.8],
    [5.2, 10.4],
  ],
  14: [
    [32.7, 65.4],
    [16.3, 32.7],
    [8.2, 16.3],
  ],
  12: [
    [49.5, 99],
    [24.8, 49.5],
    [12.4, 24.8],
  ],
  10: [
    [79.4, 158.7],
    [39.7, 79.4],
    [19.8, 39.7],
  ],
  8: [
    [142.9, 285.7],
    [71.4, 142.9],
    [35.7, 71.4],
  ],
};

describe('AC 43.13-1B table 11-9', () => {
  test('every row as published', () => {
    const rows = wireTable.value.map(({ awg, bundleA, ohmPer1000Ft, circularMils }) => [
      awg,
      bundleA.c105,
      bundleA.c150,
      bundleA.c200,
      ohmPer1000Ft,
      circularMils,
    ]);
    expect(rows).toEqual(table119);
  });

  test.each(table119)('gauge %i: one ampere over 1,000 ft loses its resistance in volts', (awg, _a, _b, _c, ohm) => {
    expect(wireVoltageDrop({ awg, lengthFt: 1000, currentA: 1 })).toBeCloseTo(ohm, 4);
  });

  test.each(table119)(
    'gauge %i: resistance and area belong together, within the two figures that thick wires are printed to',
    (_awg, _a, _b, _c, ohm, mils) => {
      // Copper has 10.37 ohm a mil foot at 20 C; stranding and tin add to it, most in the thinnest wire.
      const ohmMilFoot = (ohm / 1000) * mils;
      expect(ohmMilFoot).toBeGreaterThan(11.4);
      expect(ohmMilFoot).toBeLessThan(13.6);
    },
  );

  test('from each gauge to the next thicker one every column grows, and resistance falls', () => {
    const rows = wireTable.value;
    rows.slice(1).forEach((row, i) => {
      const thinner = rows[i];
      if (!thinner) return;
      expect(row.ohmPer1000Ft).toBeLessThan(thinner.ohmPer1000Ft);
      expect(row.circularMils).toBeGreaterThan(thinner.circularMils);
      for (const rating of ['c105', 'c150', 'c200'] as const)
        expect(row.bundleA[rating]).toBeGreaterThan(thinner.bundleA[rating]);
    });
  });

  test.each(Object.entries(runs))('longest runs of gauge %s at 5, 10 and 20 A', (awg, expected) => {
    const found = [5, 10, 20].map((currentA) =>
      [0.5, 1].map((dropV) => longestRun({ awg: Number(awg), currentA, dropV })),
    );
    found.flat().forEach((feet, i) => {
      expect(Math.abs(feet - (expected.flat()[i] ?? NaN))).toBeLessThan(0.06);
    });
  });
});

describe('AC 43.13-1B table 11-7: size from length at 20 A', () => {
  test('107 ft, 1 V: No. 6, 0.9416 V', () => {
    expect(smallestWireForDrop({ dropV: 1, lengthFt: 107, currentA: 20 })).toBe(6);
    expect(wireVoltageDrop({ awg: 6, lengthFt: 107, currentA: 20 })).toBe(0.9416);
  });

  test('90 ft, 0.5 V: the chart reads No. 4, whose own resistance loses 0.504 V: by the formula it is No. 2', () => {
    expect(wireVoltageDrop({ awg: 4, lengthFt: 90, currentA: 20 })).toBe(0.504);
    expect(smallestWireForDrop({ dropV: 0.504, lengthFt: 90, currentA: 20 })).toBe(4);
    expect(smallestWireForDrop({ dropV: 0.5, lengthFt: 90, currentA: 20 })).toBe(2);
  });

  test('100 ft, 7 V: No. 14, 6.12 V', () => {
    expect(smallestWireForDrop({ dropV: 7, lengthFt: 100, currentA: 20 })).toBe(14);
    expect(wireVoltageDrop({ awg: 14, lengthFt: 100, currentA: 20 })).toBe(6.12);
  });

  test('88 ft, 4 V: No. 12. The circular prints 3.60; its own figures give 3.555', () => {
    expect(smallestWireForDrop({ dropV: 4, lengthFt: 88, currentA: 20 })).toBe(12);
    expect(wireVoltageDrop({ awg: 12, lengthFt: 88, currentA: 20 })).toBeCloseTo(3.555, 3);
  });
});

describe('AC 43.13-1B table 11-8: longest run of No. 10 at 20 A', () => {
  test.each([
    [1, 39, 39.68, 0.983],
    [4, 156, 158.73, 3.931],
    [7, 273, 277.77, 6.88],
  ])('%f V: the chart reads %i ft, 0 to 2 % short of the formula', (dropV, chartFt, formulaFt, dropAtChart) => {
    const feet = longestRun({ awg: 10, currentA: 20, dropV });
    expect(feet).toBe(formulaFt);
    expect(chartFt / feet).toBeGreaterThan(0.98);
    expect(wireVoltageDrop({ awg: 10, lengthFt: chartFt, currentA: 20 })).toBeCloseTo(dropAtChart, 3);
  });

  test('the row printed .366 loses .49 V over the 14 V run', () => {
    expect(longestRun({ awg: 10, currentA: 20, dropV: 0.5 })).toBeCloseTo(19.8, 1);
    expect(wireVoltageDrop({ awg: 10, lengthFt: 19.5, currentA: 20 })).toBeCloseTo(0.49, 2);
  });

  test('115 V and 200 V limits: 158.7 and 277.8 ft', () => {
    expect(longestRun({ awg: 10, currentA: 20, dropV: 4 })).toBeCloseTo(158.7, 1);
    expect(longestRun({ awg: 10, currentA: 20, dropV: 7 })).toBeCloseTo(277.77, 2);
  });
});

describe('AC 43.13-1B 11-66c', () => {
  test('example 1: 28 V, 20 A continuous, 50 ft with ground: between 8 and 10, take No. 8', () => {
    expect(smallestWireForDrop({ dropV: 1, lengthFt: 50, currentA: 20 })).toBe(8);
    expect(wireVoltageDrop({ awg: 10, lengthFt: 50, currentA: 20 })).toBeGreaterThan(1);
  });

  test('(4) hot copper: 9.5 ft of 15.5 ft are left at 182 C; resistance at 100 C is 1.314 times that at 20 C', () => {
    const cold = longestRun({ awg: 14, currentA: 20, dropV: 1 });
    expect(cold).toBeCloseTo(16.3, 1);
    const hot = longestRun({ awg: 14, currentA: 20, dropV: 1, conductorC: 181.6 });
    expect((hot / cold) * 15.5).toBeCloseTo(9.48, 2);
    expect(wireVoltageDrop({ awg: 14, lengthFt: 15.5, currentA: 20, conductorC: 181.6 })).toBeGreaterThan(1);
    const ratio = wireVoltageDrop({ awg: 24, lengthFt: 100, currentA: 1, conductorC: 100 }) / 2.84;
    expect(ratio).toBeCloseTo(1.314, 3);
    expect([copperTemperature.value, aluminiumTemperature.value]).toEqual([
      { zeroC: 234.5, at20C: 254.5 },
      { zeroC: 238.1, at20C: 258.1 },
    ]);
  });

  test('example 2: 47 A free air, 0.91 at 20,000 ft, 0.6 in the bundle: 25.66 A (the text takes 26)', () => {
    expect(bundleCurrent({ freeAirA: 47, bundleFactor: 0.6, altitudeFactor: 0.91 })).toBe(25.66);
    expect(bundleCurrent({ freeAirA: 47, bundleFactor: 1, altitudeFactor: 0.91 })).toBe(42.77);
  });

  test('11-69 harness (figures from memory, arithmetic checked): 6.6 A and 8.8 A a wire', () => {
    expect(bundleCurrent({ freeAirA: 16.2, bundleFactor: 0.52, altitudeFactor: 0.79 })).toBeCloseTo(6.6, 0);
    expect(bundleCurrent({ freeAirA: 21.5, bundleFactor: 0.52, altitudeFactor: 0.79 })).toBeCloseTo(8.8, 1);
  });
});

describe('AC 43.13-1B 11-66d to f and 11-69', () => {
  test('example 2: No. 14 at 182 C keeps 1 V over 9.5 of its 15.5 ft, so it fails', () => {
    const conductorC = conductorTemperature({ ambientC: 50, ratingC: 200, currentA: 20, mostA: 26 });
    expect(conductorC).toBeCloseTo(181.6, 1);
    expect(Math.round(conductorC)).toBe(182);
    expect((254.5 * 15.5) / (234.5 + conductorC)).toBeCloseTo(9.48, 2);
    expect(wireVoltageDrop({ awg: 14, lengthFt: 15.5, currentA: 20, conductorC })).toBeGreaterThan(1);
  });

  test('at no load the conductor is as warm as the air, at its limit as its rating', () => {
    const at = (currentA: number) => conductorTemperature({ ambientC: 50, ratingC: 200, currentA, mostA: 26 });
    expect([at(0), at(26)]).toEqual([50, 200]);
  });

  test('11-69 harness (figures from memory): 25 wires of 6.6 A and 10 of 8.8 A, 20 % in use: 50.6 A', () => {
    const wires = [...Array<number>(25).fill(6.6), ...Array<number>(10).fill(8.8)];
    expect(harnessCurrent(wires, 0.2)).toBe(50.6);
    expect(7 / wires.length).toBe(0.2);
  });
});

describe('AC 43.13-1B 11-66 and table 11-9: aluminium in the place of copper', () => {
  test.each([
    [10, 8],
    [8, 6],
    [6, 4],
    [4, 2],
    [2, 0],
    [1, -1],
    [0, -2],
    [-1, -3],
    [-2, null],
    [-3, null],
  ])('for copper No. %i it is two numbers larger: %s', (copper, aluminium) => {
    expect(aluminiumInPlaceOf(copper)).toBe(aluminium);
  });

  test.each([24, 22, 20, 18, 16, 14, 12])('for copper No. %i it is no thinner than No. 8', (copper) => {
    expect(aluminiumInPlaceOf(copper)).toBe(8);
    expect(() => aluminiumVoltageDrop({ awg: copper, lengthFt: 10, currentA: 1 })).toThrow(/thinner than No. 8/);
  });

  // Ohm per 1,000 ft of aluminium at 20 C: table 11-10, from memory.
  test.each([
    [8, 1.093],
    [6, 0.641],
    [4, 0.427],
    [2, 0.268],
    [0, 0.169],
    [-1, 0.133],
    [-2, 0.109],
    [-3, 0.085],
  ])('aluminium No. %i has about the resistance that the copper gives it, and never more', (awg, ohm) => {
    const ours = aluminiumVoltageDrop({ awg, lengthFt: 1000, currentA: 1 });
    expect(ours / ohm).toBeGreaterThanOrEqual(1);
    expect(ours / ohm).toBeLessThan(1.16);
    // In the same gauge copper would lose a third less.
    expect(ours / wireVoltageDrop({ awg, lengthFt: 1000, currentA: 1 })).toBeGreaterThan(1.45);
  });

  test('No. 1, for which the table holds no copper No. 3, takes No. 4, on the safe side of 0.214', () => {
    expect(aluminiumVoltageDrop({ awg: 1, lengthFt: 1000, currentA: 1 })).toBe(0.28);
  });

  test('(4) hot: the run shrinks by 258.1 over 238.1 + T, 1.310 at 100 C, where copper has 1.314', () => {
    const run = { lengthFt: 1000, currentA: 10 };
    const cold = aluminiumVoltageDrop({ awg: 6, ...run });
    const hot = aluminiumVoltageDrop({ awg: 6, ...run, conductorC: 100 });
    expect(hot / cold).toBeCloseTo(338.1 / 258.1, 4);
    expect(hot / cold).toBeLessThan(334.5 / 254.5);
    expect(aluminiumVoltageDrop({ awg: 6, ...run, conductorC: 20 })).toBe(cold);
  });
});

describe('AC 43.13-1B 11-66: main wires and ground return', () => {
  test.each([
    [14, 0.28],
    [28, 0.56],
  ])('at %i V the main power wires lose at most 2 %%: %f V', (regulatedV, dropV) => {
    expect(mainWiresDropV(regulatedV)).toBe(dropV);
  });

  test('0.005 ohm back through the structure: 20 A lose 0.1 V, a tenth of what 28 V may', () => {
    expect(groundReturnDropV(20)).toBe(0.1);
    expect(groundReturnDropV(0)).toBe(0);
    expect(() => groundReturnDropV(-1)).toThrow(/currentA/);
    expect(() => mainWiresDropV(0)).toThrow(/regulatedV/);
  });
});

describe('AC 43.13-1B 11-35b: a light for low voltage', () => {
  test.each([
    [14, 13],
    [28, 26],
  ])('of a %i V system it trips below %i V', (busV, lightV) => {
    expect(lowVoltageLightOf({ busV })).toBe(lightV);
  });

  test('a 12 and a 24 V battery belong to these systems; of others the circular names none', () => {
    expect([12, 24, 48, null].map((busV) => lowVoltageLightOf({ busV }))).toEqual([13, 26, null, null]);
  });
});

describe('AC 43.13-1B table 11-3', () => {
  const published: readonly (readonly [number, number | null, number])[] = [
    [22, 5, 5],
    [20, 7.5, 5],
    [18, 10, 10],
    [16, 15, 10],
    [14, 20, 15],
    [12, 30, 20],
    [10, 40, 30],
    [8, 50, 50],
    [6, 80, 70],
    [4, 100, 70],
    [2, 125, 100],
    [1, null, 150],
    [0, null, 150],
  ];

  test.each(published)('gauge %i: breaker %s A, fuse %s A', (awg, breakerA, fuseA) => {
    expect(protectorFor(awg)).toEqual({ breakerA, fuseA });
  });

  test('no row beyond the published ones; gauges of table 11-9 alone have no figure', () => {
    expect(protectorTable.value).toHaveLength(published.length);
    expect([protectorFor(24), protectorFor(-3)]).toEqual([
      { breakerA: null, fuseA: null },
      { breakerA: null, fuseA: null },
    ]);
  });

  test('drop alone would choose No. 24 for 20 A over 1.5 ft; current and protector ask for thicker', () => {
    const input = { dropV: 1, lengthFt: 1.5, currentA: 20 };
    expect(smallestWireForDrop(input)).toBe(24);
    expect(smallestWire({ ...input, wireRatingC: 150, protector: { kind: 'breaker', ratingA: 20 } })).toEqual({
      awg: 10,
      byDrop: 24,
      byCurrent: 10,
      byProtector: 14,
    });
  });
});

describe('AC 43.13-1B 11-35a and 14 CFR 23.1353(h), by circuits', () => {
  const circuit = (id: string, loadA: number, usedIn: readonly LoadCondition[], essential: boolean) =>
    circuitOf({ id, loadA, usedIn: [...usedIn], essential, intermittent: false });
  const circuits = [
    circuit('radio', 4, ['ground', 'taxi', 'take-off', 'cruise', 'landing', 'battery-only'], true),
    circuit('pitot', 8, ['take-off', 'cruise', 'landing'], false),
    circuit('light', 7, ['taxi', 'landing'], false),
  ];

  test('sums by condition', () => {
    const sums = loadCondition.options.map((each) => continuousLoadIn(each, circuits).loadA);
    expect(sums).toEqual([4, 11, 12, 12, 19, 4]);
  });

  test('25 Ah of which 80 % count carry 20 A for 60 minutes; what is essential counts once', () => {
    expect(batteryMinutesAt(20, 25, 0.8)).toBe(60);
    expect(batteryLoad(circuits)).toEqual({ loadA: 4, open: [] });
  });
});
