import { describe, expect, test } from 'vitest';
import { perfectAltimeter } from '../../testing/sample-readings.js';
import { judgeAltimeterTest } from './altimeter-test.js';

const outcome = (change: Partial<ReturnType<typeof perfectAltimeter>>, topFt = 20_000) =>
  judgeAltimeterTest({ ...perfectAltimeter(topFt), ...change }).outcome;

describe('altimeter test', () => {
  test('a complete set is met at every table altitude from 1,000 ft', () => {
    for (const topFt of [1000, 10_000, 16_000, 20_000, 25_000, 50_000]) expect(outcome({}, topFt)).toBe('met');
  });

  test.each(perfectAltimeter().scaleError.map(({ atFt }) => atFt))(
    'without the point at %i ft: cannot tell',
    (atFt) => {
      expect(outcome({ scaleError: perfectAltimeter().scaleError.filter((point) => point.atFt !== atFt) })).toBe(
        'cannot-tell',
      );
    },
  );

  test.each(perfectAltimeter().friction.map(({ atFt }) => atFt))('without friction at %i ft: cannot tell', (atFt) => {
    expect(outcome({ friction: perfectAltimeter().friction.filter((point) => point.atFt !== atFt) })).toBe(
      'cannot-tell',
    );
  });

  test.each([
    ['testedToFt', null],
    ['scaleError', []],
    ['hysteresisHalf', null],
    ['hysteresisTwoFifths', null],
    ['afterEffect', null],
    ['friction', []],
    ['caseLeakFt', null],
    ['baroScale', []],
  ])('without %s: cannot tell', (field, nothing) => {
    expect(outcome({ [field]: nothing })).toBe('cannot-tell');
  });

  test('one bad point outweighs what is missing', () => {
    expect(outcome({ caseLeakFt: null, afterEffect: { beforeFt: 0, afterFt: 31 } })).toBe('not-met');
  });

  test('between rows the lower row decides: 9,000 ft has the 60 ft of 8,000 ft', () => {
    const at = (indicatedFt: number) =>
      outcome({ scaleError: [...perfectAltimeter().scaleError, { atFt: 9000, indicatedFt }] });
    expect([at(9060), at(9061), at(8940), at(8939)]).toEqual(['met', 'not-met', 'met', 'not-met']);
    const point = judgeAltimeterTest({
      ...perfectAltimeter(),
      scaleError: [{ atFt: 9000, indicatedFt: 9060 }],
    }).points.find(({ at: where }) => where === 9000);
    expect(point).toMatchObject({ limit: { most: 60 }, source: { status: 'reading' } });
  });

  test('a maximum between rows asks for a reading at the maximum itself', () => {
    const half = { atFt: 12_000, ascendingFt: 12_000, descendingFt: 12_000 };
    const twoFifths = { atFt: 9600, ascendingFt: 9600, descendingFt: 9600 };
    const to24 = { testedToFt: 24_000, hysteresisHalf: half, hysteresisTwoFifths: twoFifths };
    const scaleError = perfectAltimeter(22_000).scaleError;
    expect(outcome({ ...to24, scaleError })).toBe('cannot-tell');
    expect(outcome({ ...to24, scaleError: [...scaleError, { atFt: 24_000, indicatedFt: 24_140 }] })).toBe('met');
    expect(outcome({ ...to24, scaleError: [...scaleError, { atFt: 24_000, indicatedFt: 24_141 }] })).toBe('not-met');
  });

  test('below the first row there is no tolerance', () => {
    expect(outcome({ scaleError: [...perfectAltimeter().scaleError, { atFt: -1500, indicatedFt: -1500 }] })).toBe(
      'cannot-tell',
    );
  });

  test('hysteresis far from 50 % of the maximum does not count, unless it fails anyway', () => {
    const at = (atFt: number, descendingFt: number) =>
      outcome({ hysteresisHalf: { atFt, ascendingFt: atFt, descendingFt } });
    expect([at(9000, 9000), at(11_000, 11_000), at(8999, 8999), at(3000, 3000), at(3000, 3076)]).toEqual([
      'met',
      'met',
      'cannot-tell',
      'cannot-tell',
      'not-met',
    ]);
  });

  test('settings outside the altimeter’s range are not asked for; with the range unknown all are', () => {
    const baroScale = perfectAltimeter().baroScale.filter(
      ({ settingInHg }) => settingInHg >= 28.5 && settingInHg <= 30.5,
    );
    expect(outcome({ baroScale })).toBe('cannot-tell');
    expect(outcome({ baroScale, baroFromInHg: 28.5, baroToInHg: 30.5 })).toBe('met');
    expect(outcome({ baroScale, baroFromInHg: null, baroToInHg: 30.5 })).toBe('cannot-tell');
    expect(outcome({ baroScale: [], baroFromInHg: 29, baroToInHg: 28 })).toBe('cannot-tell');
  });

  test('a test by the maker’s procedure rests on the tester’s statement', () => {
    const by = (makerProcedurePassed: boolean | null, testedToFt: number | null = 20_000) =>
      judgeAltimeterTest({
        ...perfectAltimeter(),
        method: 'maker-procedure',
        makerProcedurePassed,
        testedToFt,
        scaleError: [],
        friction: [],
        baroScale: [],
      });
    expect([by(true).outcome, by(false).outcome, by(null).outcome, by(true, null).outcome]).toEqual([
      'met',
      'not-met',
      'cannot-tell',
      'cannot-tell',
    ]);
    expect(by(true).points.at(-1)?.source.status).toBe('maker');
  });

  test('the method not recorded is held to the tables', () => {
    expect(outcome({ method: null })).toBe('met');
    expect(outcome({ method: null, scaleError: [], makerProcedurePassed: true })).toBe('cannot-tell');
  });

  test('results survive JSON', () => {
    const found = judgeAltimeterTest(perfectAltimeter());
    expect(JSON.parse(JSON.stringify(found))).toEqual(found);
  });
});

test('a reading on a row is judged by the table, one between rows by our reading of it', () => {
  const scaleError = [
    { atFt: 1000, indicatedFt: 1000 },
    { atFt: 1200, indicatedFt: 1200 },
  ];
  const points = judgeAltimeterTest({ ...perfectAltimeter(), scaleError }).points.filter(({ value }) => value !== null);
  expect(points.filter(({ what }) => what === 'scale-error').map(({ source }) => source.status)).toEqual([
    'verified',
    'reading',
  ]);
});

test('a hysteresis read far from its point is shown with what was read and why it does not count', () => {
  const reading = { atFt: 3000, ascendingFt: 3000, descendingFt: 3010 };
  const judged = judgeAltimeterTest({ ...perfectAltimeter(), hysteresisHalf: reading });
  expect(judged.points.find(({ what }) => what === 'hysteresis-half')).toMatchObject({
    at: 3000,
    value: 10,
    unit: 'ft',
  });
  const untold = judgeAltimeterTest({ ...perfectAltimeter(), hysteresisHalf: reading, testedToFt: null });
  expect(untold.points.find(({ what }) => what === 'hysteresis-half')?.outcome).toBe('met');
});
