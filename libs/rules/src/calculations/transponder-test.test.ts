import { describe, expect, test } from 'vitest';
import { goodAtcrbs, goodModeS } from '../../testing/sample-readings.js';
import type { TransponderReadings } from '../dossier/readings.js';
import { judgeTransponderTest } from './transponder-test.js';

const modeS = (change: Partial<TransponderReadings>) => judgeTransponderTest({ ...goodModeS(), ...change }).outcome;
const atcrbs = (change: Partial<TransponderReadings>) => judgeTransponderTest({ ...goodAtcrbs(), ...change }).outcome;

describe('transponder test', () => {
  test.each([
    'equipmentClass',
    'replyMHz',
    'suppressionRatePerS',
    'repliesEqualPercent',
    'repliesNineDbPercent',
    'mtlModeADbm',
    'mtlModeCDbm',
    'mtlModeSDbm',
    'peakPowerW',
    'ownAddressAnswered',
    'wrongAddressesTried',
    'wrongAddressesAnswered',
    'altitudeReplyAgrees',
    'identityReplyAgrees',
    'allCallCorrect',
    'atcrbsOnlyAllCallSilent',
    'squitterCorrect',
    'diversity',
    'longFormatsFitted',
  ] as const)('Mode S without %s: cannot tell', (field) => {
    expect(modeS({ [field]: null })).toBe('cannot-tell');
  });

  test.each([
    'equipmentClass',
    'replyMHz',
    'suppressionRatePerS',
    'repliesEqualPercent',
    'repliesNineDbPercent',
    'mtlModeADbm',
    'mtlModeCDbm',
    'peakPowerW',
  ] as const)('ATCRBS without %s: cannot tell', (field) => {
    expect(atcrbs({ [field]: null })).toBe('cannot-tell');
  });

  test.each([
    'ownAddressAnswered',
    'altitudeReplyAgrees',
    'identityReplyAgrees',
    'allCallCorrect',
    'atcrbsOnlyAllCallSilent',
    'squitterCorrect',
  ] as const)('Mode S with %s false: not met', (field) => {
    expect(modeS({ [field]: false })).toBe('not-met');
  });

  test('at least two wrong addresses, none answered', () => {
    expect(modeS({ wrongAddressesTried: 1 })).toBe('not-met');
    expect(modeS({ wrongAddressesAnswered: 1 })).toBe('not-met');
  });

  test('diversity: 20 dB where fitted', () => {
    expect(modeS({ diversity: true })).toBe('cannot-tell');
    expect(modeS({ diversity: true, diversityIsolationDb: 20 })).toBe('met');
    expect(modeS({ diversity: true, diversityIsolationDb: 19.9 })).toBe('not-met');
  });

  test('long formats only where fitted', () => {
    expect(modeS({ longFormatsFitted: true })).toBe('cannot-tell');
    expect(modeS({ longFormatsFitted: true, longFormatsCorrect: true })).toBe('met');
    expect(modeS({ longFormatsFitted: true, longFormatsCorrect: false })).toBe('not-met');
  });

  test('the optional tighter frequency: unknown leaves the band between 1 and 3 MHz in doubt', () => {
    const at = (tighterFrequency: boolean | null) =>
      [1091, 1092, 1093.1].map((replyMHz) => modeS({ tighterFrequency, replyMHz }));
    expect(at(false)).toEqual(['met', 'met', 'not-met']);
    expect(at(true)).toEqual(['met', 'not-met', 'not-met']);
    expect(at(null)).toEqual(['met', 'cannot-tell', 'not-met']);
  });

  test('the optional high power: unknown leaves 70 to 125 W in doubt', () => {
    const at = (highPower: boolean | null) => [126, 100, 70].map((peakPowerW) => modeS({ highPower, peakPowerW }));
    expect(at(false)).toEqual(['met', 'met', 'not-met']);
    expect(at(true)).toEqual(['met', 'not-met', 'not-met']);
    expect(at(null)).toEqual(['met', 'cannot-tell', 'not-met']);
  });

  test('power read both ways: the stricter decides', () => {
    expect(atcrbs({ peakPowerW: 126, peakPowerDbw: 21 })).toBe('met');
    expect(atcrbs({ peakPowerW: 126, peakPowerDbw: 20.9 })).toBe('not-met');
    expect(atcrbs({ peakPowerW: 125.4, peakPowerDbw: 21 })).toBe('not-met');
    expect(atcrbs({ peakPowerW: 0 })).toBe('not-met');
  });

  test('the kind of test set unknown is as doubtful as a portable one', () => {
    expect(modeS({ testSet: null, mtlModeSDbm: -71 })).toBe('met');
    expect(modeS({ testSet: null, mtlModeSDbm: -70 })).toBe('cannot-tell');
    expect(modeS({ testSet: null, mtlModeSDbm: -67.9 })).toBe('not-met');
  });

  test('without a class what binds every class is still judged', () => {
    expect(atcrbs({ equipmentClass: null, peakPowerW: 501 })).toBe('not-met');
    expect(atcrbs({ equipmentClass: null, mtlModeADbm: -73, mtlModeCDbm: -71 })).toBe('not-met');
  });

  test('results survive JSON', () => {
    const found = judgeTransponderTest(goodModeS(), '2020-01-01');
    expect(JSON.parse(JSON.stringify(found))).toEqual(found);
  });
});

test('no power at all is far below every least power, in watts and in dBW', () => {
  const judged = judgeTransponderTest({ ...goodAtcrbs(), peakPowerW: 0, peakPowerDbw: null });
  const least = judged.points.filter(({ what }) => what === 'peak-power-least');
  expect(least.map(({ value, unit, outcome }) => [value, unit, outcome])).toEqual([
    [0, 'W', 'not-met'],
    [-30, 'dBW', 'not-met'],
  ]);
});

test('a sensitivity that only the allowance for a portable set would save cites that allowance, a good one the limit', () => {
  const by = (mtlModeSDbm: number) =>
    judgeTransponderTest({ ...goodModeS(), testSet: 'portable', mtlModeSDbm }).points.find(
      ({ what }) => what === 'sensitivity-mode-s',
    );
  expect(by(-74)).toMatchObject({ outcome: 'met', source: { status: 'verified' } });
  expect(by(-69)).toMatchObject({ outcome: 'cannot-tell', source: { status: 'reading' } });
  expect(by(-67.9)).toMatchObject({ outcome: 'not-met', source: { status: 'reading' } });
});
