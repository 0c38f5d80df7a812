import { describe, expect, test } from 'vitest';
import { dualVorCheck, vorCheck } from '../../testing/sample-readings.js';
import { judgeVorCheck } from './vor-check.js';

describe('VOR check', () => {
  test('airborne methods count only where the earlier ones were not available', () => {
    const by = (earlierMethodsUnavailable: boolean | null) =>
      judgeVorCheck({ ...vorCheck('airway', 90, 92), earlierMethodsUnavailable }).outcome;
    expect([by(true), by(false), by(null)]).toEqual(['met', 'not-met', 'cannot-tell']);
    expect(judgeVorCheck({ ...vorCheck('ground-checkpoint', 90, 92), earlierMethodsUnavailable: null }).outcome).toBe(
      'met',
    );
  });

  test('a ground checkpoint is held to its bearing alone', () => {
    const { points } = judgeVorCheck(vorCheck('ground-checkpoint', 90, 92));
    expect(points.map(({ what }) => what)).toEqual(['bearing-error']);
  });

  test('a repair-station signal needs the station’s entry', () => {
    const by = (stationEntryMade: boolean | null) =>
      judgeVorCheck({ ...vorCheck('repair-station-signal', 0, 1), stationEntryMade }).outcome;
    expect([by(true), by(false), by(null)]).toEqual(['met', 'not-met', 'cannot-tell']);
  });

  test('a dual check needs independent units on one station', () => {
    const check = dualVorCheck(90, 92);
    expect(judgeVorCheck({ ...check, independentUnits: false }).outcome).toBe('not-met');
    expect(judgeVorCheck({ ...check, independentUnits: null }).outcome).toBe('cannot-tell');
    expect(judgeVorCheck({ ...check, sameStation: false }).outcome).toBe('not-met');
    expect(judgeVorCheck({ ...check, sameStation: null }).outcome).toBe('cannot-tell');
  });

  test.each(['method', 'expectedDeg', 'indicatedDeg'] as const)('without %s: cannot tell', (field) => {
    expect(judgeVorCheck({ ...vorCheck('test-signal', 180, 181), [field]: null }).outcome).toBe('cannot-tell');
  });

  test('the dual check without the second indication: cannot tell', () => {
    expect(judgeVorCheck({ ...dualVorCheck(90, 92), otherIndicatedDeg: null }).outcome).toBe('cannot-tell');
  });
});
