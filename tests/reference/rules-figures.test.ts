import { describe, expect, test } from 'vitest';
import { nextHundredHour } from '../../libs/rules/src/calculations/hundred-hour.js';
import { adsBLeastCodes, adsBPerformance, adsBTso } from '../../libs/rules/src/facts/ads-b.js';
import { classAFromFt, equippedFromFt } from '../../libs/rules/src/facts/airspace.js';
import { compassDeviationDeg, compassStepDeg, compassStepRotorcraftDeg } from '../../libs/rules/src/facts/compass.js';
import * as elt from '../../libs/rules/src/facts/elt.js';
import {
  dayItems,
  highAltitudeFromFt,
  highAltitudeItems,
  instrumentItems,
  nightItems,
} from '../../libs/rules/src/facts/equipment.js';
import {
  c129Classes,
  c196,
  lpFromLetter,
  notForIfr,
  needsOtherMeans,
  sbasOperationalClasses,
} from '../../libs/rules/src/facts/gnss.js';
import { alterationFormHours, calendarMonths } from '../../libs/rules/src/facts/intervals.js';
import {
  cabinMassItems,
  emergencyLanding,
  equipmentTestFactors,
  limitManoeuvre,
  ultimateOverLimit,
} from '../../libs/rules/src/facts/load-factors.js';
import { equipmentItem } from '../../libs/rules/src/dossier/aircraft.js';

describe('14 CFR 91.409(b)', () => {
  test.each([
    ['due 650, done 658 en route', 650, 658, true, 750, 8, true],
    ['done early at 640', 650, 640, false, 740, 0, true],
    ['done at 661 en route: the limit is broken', 650, 661, true, 750, 11, false],
    ['due 1,250.0, done 1,257.3 en route', 1250, 1257.3, true, 1350, 7.3, true],
    ['due 1,250.0, flown to 1,255.0, not en route', 1250, 1255, false, 1350, 5, false],
    ['4 h beyond fall inside the next 100 (study card, secondary)', 100, 104, true, 200, 4, true],
  ])('%s', (_name, due, done, enRoute, next, overflown, allowed) => {
    expect(nextHundredHour({ due, done, enRoute })).toEqual({ next, overflown, allowed });
  });
});

test('calendar months of 91.207, 91.327, 91.409, 91.411, 91.413', () => {
  expect(Object.fromEntries(Object.entries(calendarMonths).map(([name, { value }]) => [name, value]))).toEqual({
    annual: 12,
    progressive: 12,
    lightSportCondition: 12,
    staticAndAltimeter: 24,
    transponder: 24,
    eltInspection: 12,
  });
});

test('14 CFR 91.207: months, hour of use, half the life, days, miles, date', () => {
  expect([
    elt.eltInspectionMonths.value,
    elt.eltBatteryUseHours.value,
    elt.eltBatteryLifeShare.value,
    elt.eltRemovedDays.value,
    elt.eltTrainingNm.value,
    elt.eltC91LastInstallation.value,
  ]).toEqual([12, 1, 0.5, 90, 50, '1995-06-21']);
  expect(elt.eltInspectionItems.value).toHaveLength(4);
});

describe('14 CFR 91.205', () => {
  test('counts of (b), (c), (d), (e), and every item is one that the aircraft record can hold', () => {
    expect([dayItems.length, nightItems.length, instrumentItems.length, highAltitudeItems.length]).toEqual([
      18, 5, 7, 1,
    ]);
    const known: readonly string[] = [...equipmentItem.options, 'elt'];
    const all = [...dayItems, ...nightItems, ...instrumentItems, ...highAltitudeItems];
    expect(all.filter(({ item }) => !known.includes(item))).toEqual([]);
    expect(highAltitudeFromFt.value).toBe(24_000);
  });

  test('what is not in (b) to (d): vertical speed indicator, transponder, outside-air thermometer', () => {
    const items = [...dayItems, ...nightItems, ...instrumentItems].map(({ item }) => item);
    for (const absent of ['vertical-speed-indicator', 'transponder', 'outside-air-temperature'])
      expect(items).not.toContain(absent);
  });

  test('conditions that the text writes', () => {
    const when = (item: string) =>
      [...dayItems, ...nightItems, ...instrumentItems].filter((need) => need.item === item).map((need) => need.when);
    expect(when('landing-light')).toEqual([['for-hire']]);
    expect(when('gear-position')).toEqual([['retractable-gear']]);
    expect(when('anticollision-lights')).toEqual([['small-airplane-part-23-after-1996-03-11'], ['us-registered']]);
    expect(when('flotation-gear')).toEqual([['for-hire', 'over-water-beyond-glide']]);
    expect(when('altimeter')).toEqual([[]]);
    expect(when('rate-of-turn')).toEqual([['no-third-attitude-system']]);
  });
});

describe('AIM 1-1-17 and 1-1-18, satellite navigation classes', () => {
  test.each([
    ['A1', true, 'receiver'],
    ['A2', false, 'receiver'],
    ['B1', true, 'receiver'],
    ['B2', false, 'receiver'],
    ['B3', true, 'integrated-system'],
    ['B4', false, 'integrated-system'],
    ['C1', true, 'receiver'],
    ['C2', false, 'receiver'],
    ['C3', true, 'integrated-system'],
    ['C4', false, 'integrated-system'],
  ])('C129 %s: approach %s, integrity by the %s', (name, approach, raim) => {
    expect(c129Classes.value[name]).toMatchObject({
      nonPrecisionApproach: approach,
      raim,
      oceanic: true,
      enRoute: true,
      terminal: true,
    });
    // The text of b.3(b) names A1, B1, B3, C1, C3 alone for domestic en route, though the table says yes for all.
    expect(c129Classes.value[name]?.enRouteNamedByText).toBe(['A1', 'B1', 'B3', 'C1', 'C3'].includes(name));
  });

  test('operational classes: vertical guidance by satellite alone is class 3 and 4, LNAV/VNAV class 2, 3 and 4', () => {
    const classes = (minima: 'lpv' | 'lnav-vnav' | 'lnav') =>
      Object.entries(sbasOperationalClasses)
        .filter(([, { value }]) => value.approaches.includes(minima))
        .map(([name]) => name);
    expect([classes('lpv'), classes('lnav-vnav')]).toEqual([
      ['3', '4'],
      ['2', '3', '4'],
    ]);
    expect(lpFromLetter.value).toBe('b');
  });

  test('C129 and C196 lean on another means, C145 and C146 do not', () => {
    expect(needsOtherMeans.value).toEqual({ C129: true, C196: true, C145: false, C146: false });
    expect(c196.value.approaches).toEqual(['lnav']);
    expect(notForIfr.value).toEqual(['C115a']);
  });
});

test('14 CFR 91.227(c) and 91.225', () => {
  expect(adsBPerformance.value).toEqual({
    nacpBelowNm: 0.05,
    nacvBelowMps: 10,
    nicBelowNm: 0.2,
    changeWithinS: 10,
    nicChangeWithinS: 12,
    latencyMostS: 2,
    uncompensatedMostS: 0.6,
  });
  expect(adsBLeastCodes.value).toEqual({ nic: 7, nacp: 8, nacv: 1, sil: 3, sda: 2 });
  expect(adsBTso.value).toEqual({ es1090: ['C166b', 'C166c'], uat978: ['C154c', 'C154d'], uatBelowFt: 18_000 });
});

test('old 23.1327, 23.1547, 27.1547: 10 degrees, steps of 30 and 45', () => {
  expect([compassDeviationDeg.value, compassStepDeg.value, compassStepRotorcraftDeg.value]).toEqual([10, 30, 45]);
});

test('old 23.337 and 23.561: limit times 1.5 gives 5.7, 6.6 and 9.0; a 7 lb box on the 18 g basis 126 lb', () => {
  const { normal, utility, acrobatic } = limitManoeuvre.value;
  expect([normal, utility, acrobatic].map((factor) => Math.round(factor * ultimateOverLimit.value * 10) / 10)).toEqual([
    5.7, 6.6, 9,
  ]);
  expect([cabinMassItems.value.forward * 7, cabinMassItems.value.side * 7, cabinMassItems.value.up * 7]).toEqual([
    126, 31.5, 21,
  ]);
  expect(emergencyLanding.value).toEqual({ up: 3, upAcrobatic: 4.5, forward: 9, side: 1.5 });
});

test('AC 43.13-2B, 7 lb box, utility (figures from memory): 10.5, 21, 63 and 46.2 lb', () => {
  const { side, up, forward, down } = equipmentTestFactors.value['normal-utility'];
  expect([side, up, forward, down].map((factor) => Math.round(factor * 70) / 10)).toEqual([10.5, 21, 63, 46.2]);
  expect(equipmentTestFactors.source.status).toBe('from-memory');
});

test('part 43 appendix B(a): the copy of the form within 48 hours', () => {
  expect(alterationFormHours.value).toBe(48);
});

test('14 CFR 71.33(a), 91.215(b)(5)(i): class A from 18,000 ft; equipment by altitude alone from 10,000 ft', () => {
  expect([classAFromFt.value, equippedFromFt.value]).toEqual([18_000, 10_000]);
  expect([classAFromFt.source.status, equippedFromFt.source.status]).toEqual(['verified', 'verified']);
});
