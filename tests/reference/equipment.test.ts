import { describe, expect, test } from 'vitest';
import type { Aircraft, EquipmentItem } from '../../libs/rules/src/dossier/aircraft.js';
import { equipmentItem } from '../../libs/rules/src/dossier/aircraft.js';
import { ruleBook } from '../../libs/rules/src/assess/rule-book.js';
import { sparesFor } from '../../libs/rules/src/calculations/spare-fuses.js';
import {
  dayItems,
  highAltitudeItems,
  instrumentItems,
  nightItems,
  nightSparesOfEach,
} from '../../libs/rules/src/facts/equipment.js';
import type { FlightConditions } from '../../libs/rules/src/verdict/conditions.js';
import { goodDay, trainer, trainerTypes } from '../../libs/rules/testing/trainer.js';
import { said } from './said.js';

/** The list of 14 CFR 91.205 as printed in the issue of 24 August 2026, each item taken out of a trainer that has them all. */

type Part = Partial<Aircraft>;
const types = Object.values(trainerTypes);
const rules = ['day-equipment', 'night-equipment', 'instrument-equipment'] as const;
const overWater: Partial<FlightConditions> = { purpose: 'carriage-for-hire', overWaterBeyondGlide: true };

/** A third attitude system, which stands in for another item, stays out. */
const without = (item: EquipmentItem | null, aircraft: Part = {}) => {
  const base = trainer({ configuration: { aircraft } });
  return trainer({
    configuration: {
      aircraft,
      equipment: base.configuration.equipment.map((each) => ({
        ...each,
        state: each.item === item || each.item === 'third-attitude' ? 'absent' : 'fitted',
      })),
    },
  });
};
const asks = (
  rule: (typeof rules)[number],
  item: EquipmentItem | null,
  aircraft: Part = {},
  subject: 'aircraft' | 'for-hire' = 'aircraft',
  flight: Partial<FlightConditions> = overWater,
) => said(rule, { dossier: without(item, aircraft), types, subject, at: goodDay, flight });

test('with everything there nothing is missed', () => {
  expect(rules.map((rule) => asks(rule, null))).toEqual(['met', 'met', 'met']);
});

describe('91.205: what every flight of its kind needs', () => {
  test.each([
    ['airspeed-indicator', '(b)(1)', 'day-equipment'],
    ['altimeter', '(b)(2)', 'day-equipment'],
    ['magnetic-direction-indicator', '(b)(3)', 'day-equipment'],
    ['tachometer', '(b)(4)', 'day-equipment'],
    ['oil-pressure', '(b)(5)', 'day-equipment'],
    ['oil-temperature', '(b)(7)', 'day-equipment'],
    ['fuel-quantity', '(b)(9)', 'day-equipment'],
    ['safety-belts', '(b)(13)', 'day-equipment'],
    ['position-lights', '(c)(2)', 'night-equipment'],
    ['anticollision-lights', '(c)(3)', 'night-equipment'],
    ['electrical-source', '(c)(5)', 'night-equipment'],
    ['spare-fuses', '(c)(6)', 'night-equipment'],
    ['rate-of-turn', '(d)(3)', 'instrument-equipment'],
    ['slip-skid', '(d)(4)', 'instrument-equipment'],
    ['sensitive-altimeter', '(d)(5)', 'instrument-equipment'],
    ['clock', '(d)(6)', 'instrument-equipment'],
    ['generator', '(d)(7)', 'instrument-equipment'],
    ['pitch-and-bank', '(d)(8)', 'instrument-equipment'],
    ['direction-gyro', '(d)(9)', 'instrument-equipment'],
  ] as const)('%s, %s: %s alone', (item, _paragraph, rule) => {
    expect(rules.filter((each) => asks(each, item) === 'not-met')).toEqual([rule]);
    // Experimental and light-sport certificates are not bound: (a).
    expect(asks(rule, item, { certificate: 'experimental' })).toBe('not-applicable');
  });
});

describe('91.205: what only some aircraft or flights need', () => {
  test.each([
    [
      'coolant-temperature, (b)(6), liquid-cooled engine',
      'coolant-temperature',
      { liquidCooled: true },
      { liquidCooled: false },
    ],
    ['oil-temperature, (b)(7), air-cooled engine', 'oil-temperature', { liquidCooled: false }, { liquidCooled: true }],
    [
      'manifold-pressure, (b)(8), altitude engine',
      'manifold-pressure',
      { altitudeEngine: true },
      { altitudeEngine: false },
    ],
    [
      'gear-position, (b)(10), retractable gear',
      'gear-position',
      { retractableGear: true },
      { retractableGear: false },
    ],
    [
      'anticollision lights, (b)(11), part 23 after 11 March 1996',
      'anticollision-lights',
      { basis: { code: 'part-23', amendment: 49 }, manufactured: '1998-03-12' },
      { basis: { code: 'part-23', amendment: 48 }, manufactured: '1996-03-11' },
    ],
    [
      'harness, (b)(14), made after 18 July 1978',
      'shoulder-harness',
      { manufactured: '1978-07-19' },
      { manufactured: '1978-07-18' },
    ],
    [
      'harness, (b)(17), rotorcraft made after 16 September 1992',
      'shoulder-harness',
      { kind: 'helicopter', manufactured: '1992-09-17' },
      { kind: 'helicopter', manufactured: '1992-09-16' },
    ],
  ] as const)('%s', (_name, item, bound, free) => {
    expect([asks('day-equipment', item, bound), asks('day-equipment', item, free)]).toEqual(['not-met', 'met']);
  });

  test.each([
    ['flotation-gear, (b)(12)', 'flotation-gear'],
    ['pyrotechnic-device, (b)(12)', 'pyrotechnic-device'],
  ] as const)('%s: for hire and beyond gliding distance from shore, both', (_name, item) => {
    const on = (flight: Partial<FlightConditions>, absent: EquipmentItem | null = item) =>
      asks('day-equipment', absent, {}, 'for-hire', flight);
    expect([on(overWater), on(overWater, null)]).toEqual(['not-met', 'met']);
    expect(on({ ...overWater, overWaterBeyondGlide: false })).toBe('not-applicable');
    expect(on({ ...overWater, purpose: 'private' })).toBe('not-applicable');
  });

  test('landing-light, (c)(4): one, if the aircraft is operated for hire', () => {
    const on = (purpose: FlightConditions['purpose']) =>
      asks('night-equipment', 'landing-light', {}, 'for-hire', { ...overWater, purpose });
    expect([on('carriage-for-hire'), on('private')]).toEqual(['not-met', 'not-applicable']);
  });

  test('(d)(3): a third attitude instrument system stands in for the rate-of-turn indicator', () => {
    const base = trainer();
    const swapped = trainer({
      configuration: {
        equipment: base.configuration.equipment.map((each) => {
          if (each.item === 'rate-of-turn') return { ...each, state: 'absent' };
          return each.item === 'third-attitude' ? { ...each, state: 'fitted' } : each;
        }),
      },
    });
    expect(said('instrument-equipment', { dossier: swapped, types, at: goodDay })).toBe('met');
  });

  test('(e): DME or suitable RNAV at and above 24,000 ft, where VOR is the navigation', () => {
    const at = (topFt: number, gnss: 'met' | 'not-met') =>
      said('high-altitude-equipment', {
        dossier: trainer({ configuration: { units: trainer().configuration.units.filter(({ id }) => id !== 'gps1') } }),
        types,
        at: goodDay,
        flight: { rules: 'ifr', topFt },
        capabilities: { 'nav-gnss': gnss },
      });
    expect([at(23_999, 'not-met'), at(24_000, 'not-met'), at(24_000, 'met')]).toEqual([
      'not-applicable',
      'not-met',
      'met',
    ]);
  });
});

describe('the lists themselves', () => {
  const all = [...dayItems, ...nightItems, ...instrumentItems, ...highAltitudeItems];

  test('every numbered paragraph of (b) to (e) is there: (b)(16) is reserved, (c)(1) and (d)(1) refer back, (d)(2) is judged by capability', () => {
    const asked = [...new Set(all.map(({ source }) => /^\((\w)\)(?:\((\d+)\))?/.exec(source.paragraph)?.[0]))];
    const numbered = (letter: string, ...numbers: readonly number[]) => numbers.map((each) => `(${letter})(${each})`);
    expect(asked.sort()).toEqual(
      [
        ...numbered('b', 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 17),
        ...numbered('c', 2, 3, 4, 5, 6),
        ...numbered('d', 3, 4, 5, 6, 7, 8, 9),
        '(e)',
      ].sort(),
    );
  });

  test('what is not in (b) to (d): vertical speed indicator, transponder, outside-air thermometer', () => {
    for (const absent of ['vertical-speed-indicator', 'transponder', 'outside-air-temperature'])
      expect(all.map(({ item }) => item)).not.toContain(absent);
  });

  test('the aircraft record can hold every item; the emergency transmitter has a rule of its own', () => {
    const known: readonly string[] = [...equipmentItem.options, 'elt'];
    expect(all.filter(({ item }) => !known.includes(item))).toEqual([]);
  });
});

describe('14 CFR 23.1357(e) before amendment 23-64, and 91.205(c)(6): spare fuses of one rating', () => {
  test.each([
    [1, 1],
    [2, 1],
    [3, 2],
    [4, 2],
    [5, 3],
  ])('%i in use: %i, the more of one and half', (inUse, spares) => {
    expect(sparesFor(inUse)).toBe(spares);
  });

  test('by night three of each, where no set of all is aboard', () => {
    expect(nightSparesOfEach).toMatchObject({ value: 3, source: { paragraph: '(c)(6)', status: 'verified' } });
    const words = ruleBook.find(({ id }) => id === 'spare-fuses')?.messages ?? {};
    for (const each of Object.values(words)) expect(each).toContain('a set of all, or 3 of each');
  });

  test('half a fuse is none', () => {
    expect(() => sparesFor(1.5)).toThrow(/whole number/);
    expect(() => sparesFor(0)).toThrow(/inUse/);
  });
});
