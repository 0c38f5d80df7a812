import { describe, expect, it } from 'vitest';
import { dualVorCheck, goodAtcrbs, goodModeS, perfectAltimeter, vorCheck } from '../../testing/sample-readings.js';
import type { StaticLeakReadings } from '../dossier/readings.js';
import { judgeAltimeterTest } from './altimeter-test.js';
import { judgeBonding } from './bonding.js';
import { judgeCompass } from './compass.js';
import { judgeCorrespondence } from './correspondence.js';
import type { JudgedReadings } from './judged.js';
import { judgeStaticLeak } from './static-leak.js';
import { judgeTransponderTest } from './transponder-test.js';
import { judgeVorCheck } from './vor-check.js';

/** What a technician is shown of readings: the name of each point, where, what was read, its unit and limit, and the paragraph. */
const shown = ({ points }: JudgedReadings) =>
  points.map(({ what, at, value, unit, limit, source }) => [what, at, value, unit, limit, source.paragraph]);

/** The points of a test that are alike in Mode S and in the older classes. */
const suppressed = [
  ['suppression-equal', null, 0, '%', { most: 1 }, '(b)(1)'],
  ['suppression-nine-db', null, 100, '%', { least: 90 }, '(b)(2)'],
];
const difference = ['mode-difference', null, 0, 'dB', { most: 1 }, '(c)(2)'];
const most = [
  ['peak-power-most', null, 200, 'W', { most: 500 }, '(d)(1)(v)'],
  ['peak-power-most', null, 23.01, 'dBW', { most: 27 }, '(d)(1)(v)'],
];

describe('a transponder', () => {
  it('of Mode S, low class', () => {
    expect(shown(judgeTransponderTest(goodModeS()))).toEqual([
      ['reply-frequency', null, 1090, 'MHz', { least: 1087, most: 1093 }, '(a)(2)'],
      ['suppression-rate', null, 235, '1/s', { least: 230, most: 1000 }, '(b)'],
      ...suppressed,
      ['sensitivity-mode-s', null, -74, 'dBm', { least: -77, most: -71 }, '(c)(1)'],
      difference,
      ['peak-power-least', null, 200, 'W', { least: 70 }, '(d)(1)(iv)'],
      ['peak-power-least', null, 23.01, 'dBW', { least: 18.5 }, '(d)(1)(iv)'],
      ...most,
      ['own-address', null, true, null, { is: true }, '(f)'],
      ['wrong-addresses-tried', null, 2, 'addresses', { least: 2 }, '(f)'],
      ['wrong-addresses-answered', null, 0, 'addresses', { most: 0 }, '(f)'],
      ['altitude-reply', null, true, null, { is: true }, '(g)'],
      ['identity-reply', null, true, null, { is: true }, '(g)'],
      ['all-call', null, true, null, { is: true }, '(h)'],
      ['atcrbs-only-all-call', null, true, null, { is: true }, '(i)'],
      ['squitter', null, true, null, { is: true }, '(j)'],
    ]);
  });

  it('of Mode S with long formats and diversity, tested before the edition of 2023', () => {
    const more = { longFormatsFitted: true, longFormatsCorrect: true, diversity: true, diversityIsolationDb: 20 };
    const all = { ...goodModeS(), ...more, combinedAllCallCorrect: true };
    const beside = shown(judgeTransponderTest(all, '2023-10-16')).filter(
      ([what]) => what === 'long-formats' || what === 'diversity' || what === 'combined-all-call',
    );
    expect(beside).toEqual([
      ['diversity', null, 20, 'dB', { least: 20 }, '(e)'],
      ['long-formats', null, true, null, { is: true }, '(g)'],
      ['combined-all-call', null, true, null, { is: true }, '(h)'],
    ]);
    expect(shown(judgeTransponderTest(all)).map(([what]) => what)).not.toContain('combined-all-call');
  });

  it('of the older classes', () => {
    expect(shown(judgeTransponderTest(goodAtcrbs()))).toEqual([
      ['reply-frequency', null, 1090, 'MHz', { least: 1087, most: 1093 }, '(a)(1)'],
      ['suppression-rate', null, 235, '1/s', { least: 230, most: 1200 }, '(b)'],
      ...suppressed,
      ['sensitivity', null, -73, 'dBm', { least: -77, most: -69 }, '(c)(1)'],
      difference,
      ['peak-power-least', null, 200, 'W', { least: 125 }, '(d)(1)(i)'],
      ['peak-power-least', null, 23.01, 'dBW', { least: 21 }, '(d)(1)(i)'],
      ...most,
    ]);
  });

  it('of an unknown class is judged by what holds for all', () => {
    expect(shown(judgeTransponderTest({ ...goodModeS(), equipmentClass: null }))).toEqual([
      ['equipment-class', null, null, null, {}, '(a) to (j)'],
      ...suppressed,
      difference,
      ...most,
    ]);
  });

  it('of which the power was not read', () => {
    const points = shown(judgeTransponderTest({ ...goodAtcrbs(), peakPowerW: null, peakPowerDbw: null }));
    expect(points.filter(([what]) => String(what).startsWith('peak-power'))).toEqual([
      ['peak-power-least', null, null, 'W', {}, '(d)(1)(v)'],
    ]);
  });
});

describe('an altimeter', () => {
  const rest = '(b)(1)(ii), (iii), (v), table II';
  it('tested to 1,500 ft', () => {
    const points = shown(judgeAltimeterTest({ ...perfectAltimeter(1500), baroFromInHg: 29, baroToInHg: 29.5 }));
    expect(points).toEqual([
      ['tested-to', null, 1500, 'ft', { least: -1000 }, '(b)(1)(i), (d)'],
      ...[-1000, 0, 500, 1000].map((at) => ['scale-error', at, 0, 'ft', { most: 20 }, '(b)(1)(i), table I']),
      ['scale-error', 1500, 0, 'ft', { most: 25 }, '(b)(1)(i), table I'],
      ['hysteresis-half', 750, 0, 'ft', { most: 75 }, rest],
      ['hysteresis-two-fifths', 600, 0, 'ft', { most: 75 }, rest],
      ['after-effect', null, 0, 'ft', { most: 30 }, rest],
      ['friction', 1000, 0, 'ft', { most: 70 }, '(b)(1)(iv), table III'],
      ['case-leak', null, 0, 'ft', { most: 100 }, rest],
      ...[28.1, 28.5, 29, 29.5, 29.92, 30.5, 30.9, 30.99].map((at) => [
        'baro-scale',
        at,
        0,
        'ft',
        { most: 25 },
        '(b)(1)(vi), table IV',
      ]),
    ]);
  });

  it('of which nothing was read', () => {
    const nothing = {
      ...perfectAltimeter(1500),
      testedToFt: null,
      scaleError: [],
      hysteresisHalf: null,
      hysteresisTwoFifths: null,
      afterEffect: null,
      friction: [],
      caseLeakFt: null,
      baroScale: [],
      baroFromInHg: 29,
      baroToInHg: 29.5,
    };
    expect(shown(judgeAltimeterTest(nothing))).toEqual([
      ['tested-to', null, null, 'ft', { least: -1000 }, '(b)(1)(i), (d)'],
      ['scale-error', null, null, 'ft', {}, '(b)(1)(i), table I'],
      ['hysteresis-half', null, null, 'ft', { most: 75 }, rest],
      ['hysteresis-two-fifths', null, null, 'ft', { most: 75 }, rest],
      ['after-effect', null, null, 'ft', { most: 30 }, rest],
      ['friction', null, null, 'ft', {}, '(b)(1)(iv), table III'],
      ['case-leak', null, null, 'ft', { most: 100 }, rest],
      ['baro-scale', 29, null, 'ft', { most: 25 }, '(b)(1)(vi), table IV'],
      ['baro-scale', 29.5, null, 'ft', { most: 25 }, '(b)(1)(vi), table IV'],
    ]);
  });

  it('tested by the maker’s procedure', () => {
    const points = judgeAltimeterTest({
      ...perfectAltimeter(1500),
      method: 'maker-procedure',
      makerProcedurePassed: true,
    });
    expect(shown(points)).toEqual([
      ['tested-to', null, 1500, 'ft', { least: -1000 }, '(b)(1)(i), (d)'],
      ['maker-procedure', null, true, null, { is: true }, '(b)(2)'],
    ]);
  });

  it('read below the first row and without an altitude of its own', () => {
    const below = { ...perfectAltimeter(1500), scaleError: [{ atFt: -1500, indicatedFt: -1510 }] };
    expect(shown(judgeAltimeterTest(below)).filter(([what]) => what === 'scale-error')).toEqual([
      ['scale-error', -1500, 10, 'ft', {}, '(b)(1)(i), table I'],
      ...[-1000, 0, 500, 1000].map((at) => ['scale-error', at, null, 'ft', { most: 20 }, '(b)(1)(i), table I']),
      ['scale-error', 1500, null, 'ft', { most: 25 }, '(b)(1)(i), table I'],
    ]);
  });

  it('of which a case leak the other way is as large', () => {
    expect(judgeAltimeterTest({ ...perfectAltimeter(1500), caseLeakFt: -101 }).outcome).toBe('not-met');
  });
});

describe('a static system', () => {
  const leak = (change: Partial<StaticLeakReadings>) =>
    shown(
      judgeStaticLeak({
        pressurized: false,
        aboveFieldFt: 1000,
        differentialInHg: null,
        cabinEquivalentFt: null,
        lossFt: -40,
        linesClear: true,
        portHeater: 'works',
        surroundsUnchanged: true,
        ...change,
      }),
    ).map(([what, , ...others]) => [what, ...others.slice(0, 3)]);

  const condition = [
    ['lines-clear', true, null, { is: true }],
    ['port-heater-works', true, null, { is: true }],
    ['surrounds-unchanged', true, null, { is: true }],
  ];

  it('unpressurized', () => {
    expect(leak({})).toEqual([
      ['suction', 1000, 'ft', { least: 1000 }],
      ['loss', 40, 'ft', { most: 100 }],
      ...condition,
    ]);
    expect(leak({ aboveFieldFt: 900, differentialInHg: 0.97 })[0]).toEqual(['suction', 1, 'inHg', { least: 1 }]);
  });

  it('pressurized', () => {
    expect(leak({ pressurized: true, cabinEquivalentFt: 8000 })).toEqual([
      ['loss', 40, 'ft', { most: 160 }],
      ...condition,
    ]);
    expect(leak({ pressurized: true, cabinEquivalentFt: 8000, lossFt: null })).toEqual([
      ['loss', null, 'ft', { most: 160 }],
      ...condition,
    ]);
    expect(leak({ pressurized: true })).toEqual([['cabin-equivalent', null, 'ft', {}], ...condition]);
  });

  it('of which that is not known', () => {
    expect(leak({ pressurized: null })).toEqual([
      ['pressurized', null, null, {}],
      ['loss', 40, 'ft', { most: 100 }],
      ...condition,
    ]);
    expect(leak({ linesClear: null, portHeater: null, surroundsUnchanged: false }).slice(2)).toEqual([
      ['lines-clear', null, null, { is: true }],
      ['port-heater-works', null, null, { is: true }],
      ['surrounds-unchanged', false, null, { is: true }],
    ]);
    expect(leak({ portHeater: 'not-fitted' }).map(([what]) => what)).not.toContain('port-heater-works');
  });
});

describe('a VOR receiver', () => {
  const check = (readings: Parameters<typeof judgeVorCheck>[0]) =>
    shown(judgeVorCheck(readings)).map(([what, , value, unit, limit]) => [what, value, unit, limit]);

  it('by each method, with what makes it count', () => {
    expect(check(vorCheck('test-signal', 0, 359))).toEqual([
      ['bearing-error', 1, 'deg', { most: 4 }],
      ['test-signal-bearing', true, null, { is: true }],
    ]);
    expect(check({ ...vorCheck('repair-station-signal', 0, 1), stationEntryMade: true })).toEqual([
      ['bearing-error', 1, 'deg', { most: 4 }],
      ['station-entry', true, null, { is: true }],
    ]);
    expect(check({ ...vorCheck('airway', 90, 92), earlierMethodsUnavailable: true })).toEqual([
      ['bearing-error', 2, 'deg', { most: 6 }],
      ['earlier-methods-unavailable', true, null, { is: true }],
    ]);
    expect(check(dualVorCheck(90, 92))).toEqual([
      ['difference', 2, 'deg', { most: 4 }],
      ['independent-units', true, null, { is: true }],
      ['same-station', true, null, { is: true }],
    ]);
  });

  it('without a method', () => {
    expect(shown(judgeVorCheck({ ...vorCheck('test-signal', 0, 0), method: null }))).toEqual([
      ['method', null, null, null, {}, '(b), (c)'],
    ]);
  });

  it('with an entry of the station of the paragraph on entries', () => {
    expect(
      shown(judgeVorCheck(vorCheck('repair-station-signal', 0, 1)))
        .at(-1)
        ?.at(-1),
    ).toBe('(d)');
  });
});

describe('a compass', () => {
  const points = [0, 30].map((headingDeg) => ({ headingDeg, compassDeg: headingDeg + 12 }));
  const readings = { points, enginesRunning: true, radiosStated: true, electricLoadsPlacarded: null };
  const brief = (of: JudgedReadings) =>
    of.points.map(({ what, at, value, unit, limit }) => [what, at, value, unit, limit]);

  it('has a point for each heading, one for the steps, and what was stated', () => {
    expect(brief(judgeCompass(readings))).toEqual([
      ['deviation', 0, 12, 'deg', { most: 10 }],
      ['deviation', 30, 12, 'deg', { most: 10 }],
      ['step', null, 330, 'deg', { most: 30 }],
      ['engines-running', null, true, null, { is: true }],
      ['radios-stated', null, true, null, { is: true }],
    ]);
    expect(
      judgeCompass(readings)
        .points.slice(-2)
        .map(({ source }) => source.paragraph),
    ).toEqual(['(b)', '(c)']);
  });

  it('has no limit where a placard names the loads, and none of its own without a reading', () => {
    const placarded = judgeCompass({ ...readings, electricLoadsPlacarded: true });
    expect(brief(placarded)[0]).toEqual(['deviation', 0, 12, 'deg', {}]);
    expect(placarded.points[0]?.outcome).toBe('met');
    expect(brief(judgeCompass({ ...readings, points: [] })).slice(0, 2)).toEqual([
      ['deviation', null, null, 'deg', { most: 10 }],
      ['step', null, null, 'deg', { most: 30 }],
    ]);
  });

  it('takes 360 for north', () => {
    const north = {
      ...readings,
      points: [
        { headingDeg: 360, compassDeg: 1 },
        { headingDeg: 20, compassDeg: 20 },
      ],
    };
    expect(brief(judgeCompass(north))[2]).toEqual(['step', null, 340, 'deg', { most: 30 }]);
  });
});

it('a bond is named by its kind and place', () => {
  const bond = (kind: 'equipment-frame' | 'jumper-connection') =>
    judgeBonding({ points: [{ kind, place: 'rack', milliohm: 2 }] }).points.map(({ what, at, unit, limit }) => [
      what,
      at,
      unit,
      limit,
    ]);
  expect(bond('equipment-frame')).toEqual([['equipment-frame', 'rack', 'mohm', { below: 2.5 }]]);
  expect(bond('jumper-connection')).toEqual([['jumper-connection', 'rack', 'mohm', { most: 3 }]]);
  expect(judgeBonding({ points: [] }).points).toMatchObject([{ what: 'bond', at: null, value: null, unit: 'mohm' }]);
});

it('a correspondence is named by the altimeter’s altitude', () => {
  const points = [{ altimeterFt: 5000, reportedFt: 4900 }];
  expect(judgeCorrespondence({ points }).points).toMatchObject([
    { what: 'correspondence', at: 5000, value: 100, unit: 'ft', limit: { most: 125 } },
  ]);
  expect(judgeCorrespondence({ points: [] }).points).toMatchObject([
    { what: 'correspondence', at: null, value: null, unit: 'ft', limit: { most: 125 } },
  ]);
});
