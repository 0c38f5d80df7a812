import { describe, expect, test } from 'vitest';
import type { FunctionCode } from '../../libs/rules/src/catalogue/type.js';
import type { Identity } from '../../libs/rules/src/dossier/upkeep.js';
import { judgeAdsBReport, leastAdsBCodes } from '../../libs/rules/src/calculations/ads-b.js';
import { adsBClasses, adsBCodes, adsBElements, adsBLimits } from '../../libs/rules/src/facts/ads-b.js';
import { ruleBook } from '../../libs/rules/src/assess/rule-book.js';
import { classAFromFt, equippedFromFt } from '../../libs/rules/src/facts/airspace.js';
import type { Airspace } from '../../libs/rules/src/verdict/conditions.js';
import { widenConditions } from '../../libs/rules/src/verdict/conditions.js';
import { typeOf, unitOf } from '../../libs/rules/testing/builders.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import { said } from './said.js';

const at = '2026-03-02T14:00Z';
const nm = 1852;

/** Code and its bound, best first, in metres and metres a second: "The 1090 MHz Riddle", chapter on uncertainties, version 2 as 1. */
const nic = [
  [11, 7.5],
  [10, 25],
  [9, 75],
  [8, 0.1 * nm],
  [7, 0.2 * nm],
  [6, 0.6 * nm],
  [5, nm],
  [4, 2 * nm],
  [3, 4 * nm],
  [2, 8 * nm],
  [1, 20 * nm],
] as const;
const nacp = [
  [11, 3],
  [10, 10],
  [9, 30],
  [8, 0.05 * nm],
  [7, 0.1 * nm],
  [6, 0.3 * nm],
  [5, 0.5 * nm],
  [4, nm],
  [3, 2 * nm],
  [2, 4 * nm],
  [1, 10 * nm],
] as const;
const nacv = [
  [4, 0.3],
  [3, 1],
  [2, 3],
  [1, 10],
] as const;
const sil = [
  [3, 1e-7],
  [2, 1e-5],
  [1, 1e-3],
] as const;
/** From memory, and as the 2015 text of the rule prints code 2. */
const sda = [
  [3, 1e-7],
  [2, 1e-5],
  [1, 1e-3],
] as const;

describe('14 CFR 91.227(c), issue of 3 September 2026', () => {
  test('the codes as published, and from memory for SDA', () => {
    const tables = Object.values(adsBCodes).map(({ value }) => value);
    expect(tables).toEqual([nic, nacp, nacv, sil, sda]);
    expect([adsBCodes.nic.source.status, adsBCodes.sda.source.status]).toEqual(['secondary', 'from-memory']);
  });

  test('the least codes that the printed limits allow: NIC 7, NACp 8, NACv 1, SIL 3, SDA 2', () => {
    expect(leastAdsBCodes()).toEqual({ nic: 7, nacp: 8, nacv: 1, sil: 3, sda: 2 });
    const { nicBelowNm, nacpBelowNm, nacvBelowMps, silMost, sdaMost } = adsBLimits.value;
    expect([nicBelowNm, nacpBelowNm, nacvBelowMps, silMost, sdaMost]).toEqual([0.2, 0.05, 10, 1e-7, 1e-5]);
  });

  const least = { nic: 7, nacp: 8, nacv: 1, sil: 3, sda: 2 };

  test('a report with just these is sound, and with more', () => {
    expect(judgeAdsBReport(least)).toMatchObject({ outcome: 'met', points: Array(5).fill({ unit: 'code' }) });
    expect(judgeAdsBReport({ nic: 11, nacp: 11, nacv: 4, sil: 3, sda: 3 }).outcome).toBe('met');
  });

  test.each(['nic', 'nacp', 'nacv', 'sil', 'sda'] as const)(
    '%s one less is a fault, not read is cannot-tell',
    (code) => {
      const fault = judgeAdsBReport({ ...least, [code]: least[code] - 1 });
      expect(fault.outcome).toBe('not-met');
      expect(fault.points.filter(({ outcome }) => outcome === 'not-met').map(({ what }) => what)).toEqual([code]);
      expect(judgeAdsBReport({ ...least, [code]: null }).outcome).toBe('cannot-tell');
    },
  );

  test('(c)(2), (c)(3), (e): seconds of change, of delay, and between positions', () => {
    const { changeWithinS, nicChangeWithinS, latencyMostS, uncompensatedMostS, movingEveryS, standingEveryS } =
      adsBLimits.value;
    expect([changeWithinS, nicChangeWithinS, latencyMostS, uncompensatedMostS]).toEqual([10, 12, 2, 0.6]);
    expect([movingEveryS, standingEveryS]).toEqual([1, 5]);
  });

  test('(d): nineteen elements of the message', () => {
    expect(adsBElements.value).toHaveLength(19);
    expect(new Set(adsBElements.value).size).toBe(19);
  });

  test('the rule on the report says to a reader what it takes', () => {
    const asks = ruleBook.find(({ id }) => id === 'ads-b-performance')?.asks;
    for (const words of [
      'NIC 7',
      'NACp 8',
      'NACv 1',
      'SIL 3',
      'SDA 2',
      '19 elements',
      'every 1 s',
      'every 5 s',
      '2 s late',
    ])
      expect(asks).toContain(words);
  });
});

describe('14 CFR 91.227(b): classes of power and antenna', () => {
  const all = ['A0', 'A1', 'A1S', 'A1H', 'A1L', 'A2', 'A3', 'B0', 'B1', 'B1S', 'C1', 'C3'];
  const taken = (tso: string, code: FunctionCode) =>
    all.filter((each) => serves(tso, code, ['class-b-c'], 17_999, each) === 'met');

  test('of TSO-C166b A1, A1S, A2, A3, B1 and B1S; of C154c A1H, A1S, A2, A3, B1 and B1S', () => {
    expect(taken('C166b', 'ads-b-out-1090')).toEqual(['A1', 'A1S', 'A2', 'A3', 'B1', 'B1S']);
    expect(taken('C154c', 'ads-b-out-uat')).toEqual(['A1S', 'A1H', 'A2', 'A3', 'B1', 'B1S']);
    expect(adsBClasses.source.status).toBe('verified');
  });
});

const serves = (tso: string, code: FunctionCode, airspace: readonly Airspace[], topFt: number, mark = 'B1S') =>
  said('ads-b-out-fitted', {
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'out1', typeId: 't' })] } }),
    types: [typeOf({ id: 't', functions: [code], authorisations: [{ tso, class: mark }] })],
    at,
    subject: 'out1',
    flight: { airspace, topFt },
  });

describe('14 CFR 91.225(a), (b)', () => {
  test.each([
    ['C166a', 'not-met'],
    ['C166b', 'met'],
    ['C166c', 'met'],
    ['C154c', 'not-met'],
  ] as const)('class A takes 1090 MHz alone: TSO-%s %s', (tso, outcome) => {
    expect(serves(tso, 'ads-b-out-1090', ['class-a'], 25_000)).toBe(outcome);
  });

  test.each([
    ['C154b', 'not-met'],
    ['C154c', 'met'],
    ['C154d', 'met'],
  ] as const)('978 MHz below 18,000 ft: TSO-%s %s', (tso, outcome) => {
    expect(serves(tso, 'ads-b-out-uat', ['class-b-c'], 17_999)).toBe(outcome);
    expect(serves(tso, 'ads-b-out-uat', ['class-b-c'], 18_000)).toBe('not-met');
    expect(serves(tso, 'ads-b-out-uat', ['class-a'], 17_999)).toBe('not-met');
  });
});

test('91.215(b)(5)(i), 91.225(d)(4), 71.33(a): from 10,000 and from 18,000 ft the altitude alone asks', () => {
  const asked = (topFt: number) => widenConditions({ airspace: [], topFt }).airspace;
  expect([9_999, 10_000, 17_999, 18_000].map(asked)).toEqual([
    [],
    ['at-or-above-10000'],
    ['at-or-above-10000'],
    ['at-or-above-10000', 'class-a'],
  ]);
  expect([equippedFromFt.source.status, classAFromFt.source.status]).toEqual(['verified', 'verified']);
});

test('91.215(a): any class of TSO-C74b or C74c, the appropriate class of C112', () => {
  const meets = (tso: string) =>
    said('transponder-fitted', {
      dossier: dossierOf({ configuration: { units: [unitOf({ id: 'xp1', typeId: 't' })] } }),
      types: [typeOf({ id: 't', functions: ['transponder'], authorisations: [{ tso, class: null }] })],
      at,
    });
  expect(['C74a', 'C74b', 'C74c', 'C112', 'C112e'].map(meets)).toEqual(['not-met', 'met', 'met', 'met', 'met']);
});

test('emitter category by weight, as the FAA sorted its reports of 2016 (secondary): light below 15,500 lb, small to 75,000', () => {
  const sends = (emitterCategory: Identity['emitterCategory'], maxWeightLb: number) =>
    said('ads-b-identity', {
      dossier: dossierOf({
        configuration: {
          aircraft: { maxWeightLb },
          units: [unitOf({ id: 'xp1', functions: ['transponder', 'ads-b-out-1090'] })],
          identities: [
            {
              id: 'xp1',
              address: 'A1B2C3',
              flightId: 'TW01Q',
              emitterCategory,
              positionUnit: null,
              pairing: null,
              seen: { asOf: '2026-01-10', by: 'R. Tamsin' },
            },
          ],
        },
      }),
      at,
    });
  const fits = (maxWeightLb: number) =>
    (['light', 'small', 'large'] as const).filter((category) => sends(category, maxWeightLb) === 'met');
  expect([15_499, 15_500, 75_000, 75_001].map(fits)).toEqual([['light'], ['small'], ['small'], ['large']]);
});
