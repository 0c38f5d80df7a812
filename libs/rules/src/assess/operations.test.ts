import { describe, expect, it } from 'vitest';
import type { Airspace, FlightConditions } from '../verdict/conditions.js';
import { airspaces } from '../verdict/conditions.js';
import { fixedOperations, needsOf } from './operations.js';

const vfr: FlightConditions = {
  rules: 'vfr',
  light: 'day',
  purpose: 'private',
  airspace: [],
  topFt: 9500,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
};

/**
 * Where a transponder with altitude reporting and ADS-B Out are asked: 91.215(b), 91.225(a), (d). The second has no ring of 10 NM
 * (appendix D section 2) and adds the Gulf from 3,000 ft.
 */
const table: readonly (readonly [Airspace, string | null, string | null])[] = [
  ['controlled', null, null],
  ['class-a', '91.215(b)(1)', '91.225(a)'],
  ['class-b-c', '91.215(b)(1)', '91.225(d)(1)'],
  ['over-class-b-c', '91.215(b)(4)', '91.225(d)(3)'],
  ['ring-30nm', '91.215(b)(2)', '91.225(d)(2)'],
  ['ring-10nm', '91.215(b)(5)(ii)', null],
  ['at-or-above-10000', '91.215(b)(5)(i)', '91.225(d)(4)'],
  ['gulf-3000', null, '91.225(d)(5)'],
];

describe('airspace that asks for equipment', () => {
  it('is all in the table', () => {
    expect(table.map(([airspace]) => airspace).sort()).toEqual([...airspaces].sort());
  });

  it.each(table)('%s: transponder by %s, ADS-B Out by %s', (airspace, transponder, adsB) => {
    const needs = needsOf({ ...vfr, airspace: [airspace] });
    const asks = (capability: string) => needs.some((each) => 'capability' in each && each.capability === capability);
    expect(asks('altitude-reporting')).toBe(transponder !== null);
    expect(asks('ads-b-out')).toBe(adsB !== null);
  });

  it('asks both where a flight passes the ring of 10 NM and the Gulf', () => {
    const needs = needsOf({ ...vfr, airspace: ['ring-10nm', 'gulf-3000'] });
    expect(needs).toEqual([{ capability: 'fly' }, { capability: 'altitude-reporting' }, { capability: 'ads-b-out' }]);
  });
});

describe('a flight needs', () => {
  const one = (capability: string) => ({ capability });
  const navigation = { anyOf: [one('nav-vor'), one('nav-gnss')] };

  it.each<readonly [string, Partial<FlightConditions>, readonly object[]]>([
    ['by day under VFR: an aircraft that may fly', {}, [one('fly')]],
    ['by night: what night asks', { light: 'night' }, [one('fly'), one('night')]],
    ['for hire: what hire asks', { purpose: 'carriage-for-hire' }, [one('fly'), one('hire')]],
    ['instruction given: what hire asks', { purpose: 'training-provided' }, [one('fly'), one('hire')]],
    [
      'under IFR: radio and one source of navigation',
      { rules: 'ifr' },
      [one('fly'), one('ifr-aircraft'), one('two-way-radio'), navigation],
    ],
    [
      'to an approach: IFR, and one of those asked for',
      { approaches: ['lpv', 'ils'] },
      [
        one('fly'),
        one('ifr-aircraft'),
        one('two-way-radio'),
        navigation,
        { anyOf: [one('approach-lpv'), one('approach-ils')] },
      ],
    ],
    [
      'in class B or C: radio, altitude reporting and ADS-B Out',
      { airspace: ['class-b-c'] },
      [one('fly'), one('two-way-radio'), one('altitude-reporting'), one('ads-b-out')],
    ],
    [
      'in class A: the same',
      { airspace: ['class-a'] },
      [one('fly'), one('two-way-radio'), one('altitude-reporting'), one('ads-b-out')],
    ],
  ])('%s', (_, part, expected) => {
    expect(needsOf({ ...vfr, ...part })).toEqual(expected);
  });

  it('is asked for the flight and beside it for every operation there is, each without the wishes of the flight', () => {
    const asked: FlightConditions = { ...vfr, light: 'night', topFt: 4000, approaches: ['lp'] };
    const { flight, ...others } = fixedOperations(asked);
    expect(flight).toBe(asked);
    const plain = { ...asked, approaches: [] };
    expect(others).toEqual({
      'vfr-day': { ...plain, light: 'day' },
      'vfr-night': plain,
      ifr: { ...plain, rules: 'ifr' },
      ...Object.fromEntries(
        (['vor', 'loc', 'ils', 'lnav', 'lp', 'lnav-vnav', 'lpv'] as const).map((each) => [
          `approach-${each}`,
          { ...plain, rules: 'ifr', approaches: [each] },
        ]),
      ),
    });
  });
});
