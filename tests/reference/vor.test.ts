import { describe, expect, test } from 'vitest';
import { judgeVorCheck } from '../../libs/rules/src/calculations/vor-check.js';
import { vorMethod } from '../../libs/rules/src/dossier/readings.js';
import { vorMethods } from '../../libs/rules/src/facts/vor.js';
import { addDays } from '../../libs/rules/src/time/calendar.js';
import { databaseCycle } from '../../libs/rules/src/time/cycles.js';
import { dualVorCheck, vorCheck } from '../../libs/rules/testing/sample-readings.js';
import { entries, trainer, trainerRecords, trainerTypes } from '../../libs/rules/testing/trainer.js';
import { said } from './said.js';

describe('14 CFR 91.171', () => {
  test.each([
    ['test-signal', 4, '(b)(1)'],
    ['repair-station-signal', 4, '(b)(1)'],
    ['ground-checkpoint', 4, '(b)(2)'],
    ['airborne-checkpoint', 6, '(b)(3)'],
    ['airway', 6, '(b)(4)'],
  ] as const)('%s: %i degrees, %s', (method, limit, paragraph) => {
    const at = (error: number) => judgeVorCheck(vorCheck(method, 180, 180 + error)).outcome;
    expect([at(limit), at(-limit), at(limit + 0.1), at(-limit - 0.1)]).toEqual(['met', 'met', 'not-met', 'not-met']);
    expect(vorMethods[method].source.paragraph).toContain(paragraph);
  });

  test('(c) dual check: 118 and 122 pass, 118 and 123 fail; one limit on the ground and in the air', () => {
    expect(judgeVorCheck(dualVorCheck(118, 122)).outcome).toBe('met');
    expect(judgeVorCheck(dualVorCheck(118, 123)).outcome).toBe('not-met');
  });

  test('ground error 4.0 passes, 4.1 fails', () => {
    expect(judgeVorCheck(vorCheck('ground-checkpoint', 90, 94)).outcome).toBe('met');
    expect(judgeVorCheck(vorCheck('ground-checkpoint', 90, 94.1)).outcome).toBe('not-met');
  });

  test('AIM 1-1-4: a test signal reads 0 FROM or 180 TO, on any other bearing it is none', () => {
    const on = (bearing: number) => judgeVorCheck(vorCheck('test-signal', bearing, bearing)).outcome;
    expect([0, 180, 360].map(on)).toEqual(['met', 'met', 'met']);
    expect([1, 90, 179, 181, 270].map(on)).toEqual(Array(5).fill('not-met'));
  });

  test('across north 359 against 1 is 2 degrees, 357 against 2 is 5', () => {
    expect(judgeVorCheck(dualVorCheck(359, 1))).toMatchObject({ outcome: 'met', points: [{ value: 2 }, {}, {}] });
    expect(judgeVorCheck(vorCheck('test-signal', 0, 357))).toMatchObject({
      outcome: 'met',
      points: [{ value: 3 }, {}],
    });
    expect(judgeVorCheck(dualVorCheck(357, 2))).toMatchObject({ outcome: 'not-met', points: [{ value: 5 }, {}, {}] });
    expect(judgeVorCheck(dualVorCheck(0, 360))).toMatchObject({ outcome: 'met', points: [{ value: 0 }, {}, {}] });
  });

  test('a check on each day that data change cycle never lapses: 28 days on it is still inside its 30', () => {
    const checked = '2026-01-22';
    const dossier = trainer(
      entries({ without: ['vor'], and: [{ ...trainerRecords.vor, id: 'asked', done: { date: checked, at: null } }] }),
    );
    const at = (moment: string) =>
      said('vor-check', { dossier, types: Object.values(trainerTypes), subject: 'nav1', at: moment });
    const nextCycleDay = databaseCycle(checked).next;
    expect(nextCycleDay).toBe(addDays(checked, 28));
    expect(at(`${nextCycleDay}T23:00Z`)).toBe('met');
    expect([at(`${addDays(checked, 31)}T05:59Z`), at(`${addDays(checked, 31)}T06:00Z`)]).toEqual(['met', 'not-met']);
  });

  test('every method of the readings has its limit', () => {
    expect(Object.keys(vorMethods)).toEqual(vorMethod.options);
  });
});
