import { describe, expect, test } from 'vitest';
import { judgeTransponderTest } from '../../libs/rules/src/calculations/transponder-test.js';
import type { TransponderClass, TransponderReadings } from '../../libs/rules/src/dossier/readings.js';
import { goodAtcrbs, goodModeS } from '../../libs/rules/testing/sample-readings.js';

/** Class, reply frequency +/- MHz, top suppression rate, least W and dBW, MTL from and to: appendix F as of 17 Oct 2023. */
const appendixF: readonly (readonly [TransponderClass, number, number, number, number, number, number])[] = [
  ['atcrbs-1a', 3, 1200, 125, 21, -77, -69],
  ['atcrbs-1b', 3, 1000, 70, 18.5, -77, -69],
  ['atcrbs-2a', 3, 1200, 125, 21, -77, -69],
  ['atcrbs-2b', 3, 1000, 70, 18.5, -77, -69],
  ['mode-s-1a', 1, 1200, 125, 21, -77, -71],
  ['mode-s-1b', 3, 1000, 70, 18.5, -77, -71],
  ['mode-s-2a', 1, 1200, 125, 21, -77, -71],
  ['mode-s-2b', 3, 1000, 70, 18.5, -77, -71],
  ['mode-s-3a', 1, 1200, 125, 21, -77, -71],
  ['mode-s-3b', 3, 1000, 70, 18.5, -77, -71],
  ['mode-s-4', 1, 1200, 125, 21, -77, -71],
];

function good(equipmentClass: TransponderClass): TransponderReadings {
  return { ...(equipmentClass.startsWith('mode-s') ? goodModeS() : goodAtcrbs()), equipmentClass };
}

const outcome = (readings: TransponderReadings, day?: string) => judgeTransponderTest(readings, day).outcome;

describe.each(appendixF)('14 CFR part 43 appendix F, %s', (equipmentClass, mhz, topRate, watts, dbw, from, to) => {
  const base = good(equipmentClass);

  test('in the middle of every limit it passes', () => {
    expect(outcome(base)).toBe('met');
  });

  test('(a) reply frequency', () => {
    const at = (replyMHz: number) => outcome({ ...base, replyMHz });
    expect([at(1090 - mhz), at(1090 + mhz), at(1090 - mhz - 0.1), at(1090 + mhz + 0.1)]).toEqual([
      'met',
      'met',
      'not-met',
      'not-met',
    ]);
  });

  test('(b) suppression: rate and replies', () => {
    const rate = (suppressionRatePerS: number) => outcome({ ...base, suppressionRatePerS });
    expect([rate(229), rate(230), rate(1000), rate(1201)]).toEqual(['not-met', 'met', 'met', 'not-met']);
    // The text prints class 1B in both groups: between the two tops classes 1A and 1B of Mode S stay in doubt.
    const doubled = equipmentClass === 'mode-s-1a' || equipmentClass === 'mode-s-1b';
    expect(rate(1100)).toBe(doubled ? 'cannot-tell' : topRate === 1200 ? 'met' : 'not-met');
    expect([outcome({ ...base, repliesEqualPercent: 1 }), outcome({ ...base, repliesEqualPercent: 1.1 })]).toEqual([
      'met',
      'not-met',
    ]);
    expect([outcome({ ...base, repliesNineDbPercent: 90 }), outcome({ ...base, repliesNineDbPercent: 89.9 })]).toEqual([
      'met',
      'not-met',
    ]);
  });

  test('(c) sensitivity on the bench', () => {
    const key = equipmentClass.startsWith('mode-s') ? 'mtlModeSDbm' : 'mtlModeADbm';
    const at = (dbm: number) =>
      outcome({
        ...base,
        mtlModeCDbm: base.mtlModeADbm,
        [key]: dbm,
        ...(key === 'mtlModeADbm' ? { mtlModeCDbm: dbm } : {}),
      });
    expect([at(from), at(to), at(from - 0.1), at(to + 0.1)]).toEqual(['met', 'met', 'not-met', 'not-met']);
    const difference = (mtlModeCDbm: number) => outcome({ ...base, mtlModeADbm: -73, mtlModeCDbm });
    expect([difference(-72), difference(-74), difference(-71.9)]).toEqual(['met', 'met', 'not-met']);
  });

  test('(d) power: both figures hold', () => {
    const byDbw = (peakPowerDbw: number) => outcome({ ...base, peakPowerW: null, peakPowerDbw });
    const byWatts = (peakPowerW: number) => outcome({ ...base, peakPowerW });
    expect([byDbw(dbw), byDbw(dbw - 0.1)]).toEqual(['met', 'not-met']);
    expect([byWatts(watts - 0.1), byWatts(watts * 1.013), byWatts(500), byWatts(501)]).toEqual([
      'not-met',
      'met',
      'met',
      'not-met',
    ]);
    expect([byDbw(26.9), byDbw(27.1)]).toEqual(['met', 'not-met']);
  });
});

describe('14 CFR part 43 appendix F, options and what concerns Mode S alone', () => {
  const options = ['mode-s-1b', 'mode-s-2b', 'mode-s-3b'] as const;

  test.each(options)('(a)(3) %s with the tighter reply frequency: 1090 +/-1 MHz', (equipmentClass) => {
    const at = (replyMHz: number) => outcome({ ...good(equipmentClass), tighterFrequency: true, replyMHz });
    expect([1089, 1091, 1088.9, 1091.1].map(at)).toEqual(['met', 'met', 'not-met', 'not-met']);
  });

  test.each(options)('(d)(1)(iii) %s with the high power: at least 21.0 dBW (125 W)', (equipmentClass) => {
    const at = (peakPowerDbw: number) =>
      outcome({ ...good(equipmentClass), highPower: true, peakPowerW: null, peakPowerDbw });
    expect([21, 20.9].map(at)).toEqual(['met', 'not-met']);
  });

  test('(b)(2) with a radiated signal 235 +/-5 a second; a higher rate has to be approved for that place', () => {
    const at = (testSet: 'bench' | 'portable', suppressionRatePerS: number) =>
      outcome({ ...goodModeS(), testSet, suppressionRatePerS });
    expect([229, 230, 240, 241, 1000, 1001].map((rate) => at('portable', rate))).toEqual([
      'not-met',
      'met',
      'met',
      'cannot-tell',
      'cannot-tell',
      'not-met',
    ]);
    expect(at('bench', 241)).toBe('met');
  });

  test('(e) diversity: the selected antenna is at least 20 dB above the other', () => {
    const at = (diversityIsolationDb: number) => outcome({ ...goodModeS(), diversity: true, diversityIsolationDb });
    expect([20, 19.9].map(at)).toEqual(['met', 'not-met']);
  });

  test('(f) replies to its own address alone, at least two wrong ones tried', () => {
    const by = (change: Partial<TransponderReadings>) => outcome({ ...goodModeS(), ...change });
    expect([by({ wrongAddressesTried: 2 }), by({ wrongAddressesTried: 1 })]).toEqual(['met', 'not-met']);
    expect([by({ wrongAddressesAnswered: 1 }), by({ ownAddressAnswered: false })]).toEqual(['not-met', 'not-met']);
  });

  test.each([
    ['(g) UF 4: the altitude of Mode C', { altitudeReplyAgrees: false }],
    ['(g) UF 5: the identity of Mode 3/A', { identityReplyAgrees: false }],
    ['(g) UF 20, 21, 24 where equipped', { longFormatsFitted: true, longFormatsCorrect: false }],
    ['(h) UF 11: address and capability in DF 11', { allCallCorrect: false }],
    ['(i) no reply to the all-call with the 0.8 microsecond P4', { atcrbsOnlyAllCallSilent: false }],
    ['(j) acquisition squitter', { squitterCorrect: false }],
  ] as const)('%s', (_name, change) => {
    expect(outcome({ ...goodModeS(), ...change })).toBe('not-met');
    // The note before (e): these bind Mode S alone.
    expect(outcome({ ...goodAtcrbs(), ...change })).toBe('met');
  });
});

describe('worked examples on appendix F', () => {
  test('ATCRBS reply 1087.0 passes, 1086.9 fails', () => {
    expect([outcome({ ...goodAtcrbs(), replyMHz: 1087 }), outcome({ ...goodAtcrbs(), replyMHz: 1086.9 })]).toEqual([
      'met',
      'not-met',
    ]);
  });

  test('ATCRBS MTL -69 dBm passes, -68 fails on the bench', () => {
    const at = (dbm: number) => outcome({ ...goodAtcrbs(), mtlModeADbm: dbm, mtlModeCDbm: dbm });
    expect([at(-69), at(-68)]).toEqual(['met', 'not-met']);
  });

  test('class 2B: 70.8 W passes; 501 W fails on the watt figure though it is 27.0 dBW', () => {
    expect(outcome({ ...goodModeS(), peakPowerW: 70.8 })).toBe('met');
    const much = judgeTransponderTest({ ...goodModeS(), peakPowerW: 501 });
    expect(much.outcome).toBe('not-met');
    expect(much.points.filter((point) => point.what === 'peak-power-most')).toMatchObject([
      { unit: 'W', value: 501, outcome: 'not-met' },
      { unit: 'dBW', value: 27, outcome: 'met' },
    ]);
  });

  test('21.0 dBW is 125.9 W: 125.4 W passes the watt figure, misses the dBW figure and fails', () => {
    const read = judgeTransponderTest({ ...goodAtcrbs(), peakPowerW: 125.4 });
    expect(read.outcome).toBe('not-met');
    expect(read.points.filter((point) => point.what === 'peak-power-least')).toMatchObject([
      { unit: 'W', value: 125.4, outcome: 'met' },
      { unit: 'dBW', value: 20.98, outcome: 'not-met' },
    ]);
    expect(outcome({ ...goodAtcrbs(), peakPowerW: 125.9 })).toBe('met');
  });

  test('portable set: the 3 dB band is cannot-tell, beyond it fails', () => {
    const at = (dbm: number) => outcome({ ...goodAtcrbs(), testSet: 'portable', mtlModeADbm: dbm, mtlModeCDbm: dbm });
    expect([at(-69), at(-68), at(-66), at(-65.9), at(-80), at(-80.1)]).toEqual([
      'met',
      'cannot-tell',
      'cannot-tell',
      'not-met',
      'cannot-tell',
      'not-met',
    ]);
  });

  test('the combined all-call was asked for until 16 October 2023 (88 FR 71476)', () => {
    const silent = goodModeS();
    expect([outcome(silent, '2023-10-16'), outcome(silent, '2023-10-17'), outcome(silent)]).toEqual([
      'cannot-tell',
      'met',
      'met',
    ]);
    expect(outcome({ ...silent, combinedAllCallCorrect: true }, '2023-10-16')).toBe('met');
    expect(outcome({ ...silent, combinedAllCallCorrect: false }, '2023-10-16')).toBe('not-met');
    expect(outcome({ ...goodAtcrbs() }, '2023-10-16')).toBe('met');
  });
});
