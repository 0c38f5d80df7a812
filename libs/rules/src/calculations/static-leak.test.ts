import { expect, test } from 'vitest';
import type { StaticLeakReadings } from '../dossier/readings.js';
import { judgeStaticLeak } from './static-leak.js';

const unpressurized: StaticLeakReadings = {
  pressurized: false,
  aboveFieldFt: 1000,
  differentialInHg: null,
  cabinEquivalentFt: null,
  lossFt: 40,
  linesClear: true,
  portHeater: 'works',
  surroundsUnchanged: true,
};
const outcome = (change: Partial<StaticLeakReadings>) => judgeStaticLeak({ ...unpressurized, ...change }).outcome;

test('the suction by height or by difference of pressure', () => {
  expect(outcome({})).toBe('met');
  expect(outcome({ aboveFieldFt: 999 })).toBe('not-met');
  expect(outcome({ aboveFieldFt: null })).toBe('cannot-tell');
  expect(outcome({ aboveFieldFt: null, differentialInHg: 0.95 })).toBe('met');
  expect(outcome({ aboveFieldFt: null, differentialInHg: 0.94 })).toBe('not-met');
  expect(outcome({ aboveFieldFt: 900, differentialInHg: 1 })).toBe('met');
});

test('the loss: 100 ft, either way; not read, cannot tell', () => {
  expect([
    outcome({ lossFt: 100 }),
    outcome({ lossFt: 101 }),
    outcome({ lossFt: -101 }),
    outcome({ lossFt: null }),
  ]).toEqual(['met', 'not-met', 'not-met', 'cannot-tell']);
});

test('pressurized: 2 % of the equivalent altitude or 100 ft, the greater (old 23.1325(b)(2)(ii))', () => {
  const cabin = (cabinEquivalentFt: number | null, lossFt: number) =>
    judgeStaticLeak({ ...unpressurized, pressurized: true, cabinEquivalentFt, lossFt });
  expect([cabin(4000, 100).outcome, cabin(4000, 101).outcome]).toEqual(['met', 'not-met']);
  expect([cabin(8000, 160).outcome, cabin(8000, 161).outcome]).toEqual(['met', 'not-met']);
  expect(cabin(null, 10).outcome).toBe('cannot-tell');
  expect(cabin(8000, 160).points[0]?.source.status).toBe('verified');
});

test('pressurized or not unknown: cannot tell', () => {
  expect(outcome({ pressurized: null })).toBe('cannot-tell');
});

test('a height that suffices stands although a smaller difference of pressure was written down too', () => {
  expect(judgeStaticLeak({ ...unpressurized, differentialInHg: 0.5 }).points[0]).toMatchObject({
    what: 'suction',
    unit: 'ft',
    outcome: 'met',
  });
});

test('appendix E(a)(1), (3), (4): lines clear, heater works where fitted, surface as it was; each not said, cannot tell', () => {
  expect([outcome({ linesClear: false }), outcome({ linesClear: null })]).toEqual(['not-met', 'cannot-tell']);
  expect([
    outcome({ portHeater: 'not-fitted' }),
    outcome({ portHeater: 'does-not-work' }),
    outcome({ portHeater: null }),
  ]).toEqual(['met', 'not-met', 'cannot-tell']);
  expect([outcome({ surroundsUnchanged: false }), outcome({ surroundsUnchanged: null })]).toEqual([
    'not-met',
    'cannot-tell',
  ]);
  expect(outcome({ pressurized: true, cabinEquivalentFt: 8000, linesClear: false })).toBe('not-met');
  expect(outcome({ pressurized: null, surroundsUnchanged: false })).toBe('not-met');
});
