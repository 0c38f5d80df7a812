import { describe, expect, it } from 'vitest';
import { AircraftData } from './aircraft.data.js';
import { compare } from './differences.data.js';
import { cycleNamed } from './judge.js';
import type { Row } from './judge.js';
import { carryOpenings } from './openings.js';
import { fill } from './refusals.js';
import { catalogueVersion, equipmentTypeId, isLaterVersion, stampOf } from './stamp.js';

const numbered = { key: ['profile_id', 'n'], columns: ['from_at', 'ready'] };
const row = (profile_id: string, from_at: string, ready: string, n?: number): Row => ({
  profile_id,
  from_at,
  ready,
  ...(n === undefined ? {} : { n }),
});

describe('differences', () => {
  it('are none for the same rows in another order', () => {
    const old = [row('a', '1', 'yes', 0), row('a', '2', 'no', 1), row('b', '1', 'yes', 0)];
    expect(compare(numbered, old, [row('b', '1', 'yes'), row('a', '2', 'no'), row('a', '1', 'yes')])).toEqual({
      put: [],
      remove: [],
    });
  });
  it('write only the row that changed, in its old place', () => {
    const old = [row('a', '1', 'yes', 0), row('a', '2', 'no', 1)];
    expect(compare(numbered, old, [row('a', '1', 'yes'), row('a', '3', 'no')])).toEqual({
      put: [row('a', '3', 'no', 1)],
      remove: [],
    });
  });
  it('do not shift everything for one row in front', () => {
    const old = [row('a', '2', 'no', 0), row('a', '3', 'yes', 1)];
    expect(compare(numbered, old, [row('a', '1', 'yes'), row('a', '2', 'no'), row('a', '3', 'yes')])).toEqual({
      put: [row('a', '1', 'yes', 2)],
      remove: [],
    });
  });
  it('remove what is no longer there, by its key', () => {
    const old = [row('a', '1', 'yes', 0), row('a', '2', 'no', 1), row('b', '1', 'yes', 7)];
    expect(compare(numbered, old, [row('a', '2', 'no')]).remove).toEqual([
      { profile_id: 'a', n: 0 },
      { profile_id: 'b', n: 7 },
    ]);
  });
  it('keep equal rows apart', () => {
    expect(compare(numbered, [row('a', '1', 'yes', 0)], [row('a', '1', 'yes'), row('a', '1', 'yes')]).put).toEqual([
      row('a', '1', 'yes', 1),
    ]);
  });
  it('replace under a key of its own', () => {
    const named = { key: ['unit_id'], columns: ['cycle'] };
    const difference = compare(named, [{ unit_id: 'u', cycle: '1' }], [{ unit_id: 'u', cycle: '2' }]);
    expect(difference).toEqual({ put: [{ unit_id: 'u', cycle: '2' }], remove: [] });
  });
});

describe('openings of findings', () => {
  const now = new Date('2026-03-10T09:30:00Z');
  const finding = (opens_at: string, closes_at: string | null, more: Row = {}): Row => ({
    rule_id: 'r',
    subject: 's',
    outcome: 'not-met',
    above: -1,
    up_to: null,
    opens_at,
    closes_at,
    ...more,
  });
  it('stay what they were when the finding was open before', () => {
    const [kept] = carryOpenings([finding('2026-01-05T10:00Z', null)], [finding('2026-03-10T00:00Z', null)], now);
    expect(kept?.['opens_at']).toBe('2026-01-05T10:00Z');
  });
  it('are now when the work opened it', () => {
    const [fresh] = carryOpenings([], [finding('2026-03-10T00:00Z', null)], now);
    expect(fresh?.['opens_at']).toBe('2026-03-10T09:30Z');
    const [other] = carryOpenings(
      [finding('2026-01-05T10:00Z', null, { subject: 't' })],
      [finding('2026-03-10T00:00Z', null)],
      now,
    );
    expect(other?.['opens_at']).toBe('2026-03-10T09:30Z');
  });
  it('to come are left alone', () => {
    const later = finding('2026-06-01T00:00Z', null);
    expect(carryOpenings([finding('2026-01-05T10:00Z', null)], [later], now)).toEqual([later]);
  });
  it('do not reach over a gap', () => {
    const [again] = carryOpenings(
      [finding('2026-01-05T10:00Z', '2026-02-01T00:00Z')],
      [finding('2026-03-10T00:00Z', null)],
      now,
    );
    expect(again?.['opens_at']).toBe('2026-03-10T09:30Z');
  });
});

describe('versions of the rules', () => {
  it.each([
    ['2026.11.27.10', '2026.11.27.9', true],
    ['2026.11.27.9', '2026.11.27.10', false],
    ['2026.11.27.9', '2026.11.27.9', false],
    ['2027.1.1', '2026.12.31.40', true],
    ['2026.11.27.1', '2026.11.27', true],
    ['2026.11.27', '2026.11.27.1', false],
    ['0', '2026.11.27.1', false],
  ])('%s comes after %s: %s', (one, than, later) => {
    expect(isLaterVersion(one, than)).toBe(later);
  });
});

describe('stamps', () => {
  const profile = (id: string, topFt: number) => ({ id, name: 'n', conditions: { ...conditions, topFt } });
  const conditions = {
    rules: 'vfr',
    light: 'day',
    purpose: 'private',
    airspace: [],
    localTrainingNm: null,
    overWaterBeyondGlide: false,
    crewOnly: false,
    errand: null,
    region: null,
    approaches: [],
  } as const;
  it('change with what is asked, not with its name or order', () => {
    const one = stampOf([profile('a', 1000), profile('b', 2000)], []);
    expect(stampOf([profile('b', 2000), { ...profile('a', 1000), name: 'other' }], [])).toEqual(one);
    expect(stampOf([profile('a', 1000), profile('b', 2001)], []).profiles).not.toBe(one.profiles);
    expect(stampOf([profile('a', 1000)], []).profiles).not.toBe(one.profiles);
  });
  it('name the slice of the catalogue by what is used', () => {
    expect(catalogueVersion(['b', 'a', 'b'])).toBe(catalogueVersion(['a', 'b']));
    expect(catalogueVersion(['a'])).not.toBe(catalogueVersion(['b']));
  });
  it('give an entry an id from its content', () => {
    const body = { family: 'qn', name: 'one' } as never;
    expect(equipmentTypeId(body)).toMatch(/^qn@[0-9a-f]{12}$/);
    expect(equipmentTypeId({ ...(body as object), name: 'two' } as never)).not.toBe(equipmentTypeId(body));
  });
});

describe('words and cycles', () => {
  it('fill the places that are known', () => {
    expect(fill('{a} and {b} and {c}', { a: 1, b: null })).toBe('1 and not recorded and {c}');
  });
  // AIM 1-1-17 and the published dates: cycle 2001 took effect on 2 January 2020, 2613 on 24 December 2026.
  it.each([
    ['2001', '2020-01-02T09:01Z', '2020-01-30T09:01Z'],
    ['2613', '2026-12-24T09:01Z', '2027-01-21T09:01Z'],
  ])('cycle %s', (id, effective, expires) => {
    expect(cycleNamed(id)).toEqual({ effective, expires });
  });
  it.each(['2615', '2000', '9901', 'abcd'])('no cycle %s', (id) => {
    expect(cycleNamed(id)).toBeNull();
  });
});

describe('the catalogue of today', () => {
  it('says which of its versions another has taken the place of: they are there for the units aboard alone', async () => {
    const types = [
      { id: 'qn@old', body: { id: 'qn@old' }, superseded: true },
      { id: 'qn@new', body: { id: 'qn@new' }, superseded: false },
    ];
    const query = (text: string) => Promise.resolve(text.includes('from equipment_types') ? types : []);
    const data = new AircraftData({ query } as never, 'shop-one');
    expect(await data.currentCatalogue(['qn@old'])).toEqual({
      version: catalogueVersion(['qn@new', 'qn@old']),
      types: { 'qn@old': { id: 'qn@old' }, 'qn@new': { id: 'qn@new' } },
      superseded: ['qn@old'],
    });
  });
});
