import { describe, expect, it } from 'vitest';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { DatabaseLoad } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { databaseCycle } from '../time/cycles.js';
import { instantsOfCycle, navigationLoads, nextCycleAfter } from './navigation-data.js';

// ICAO's table of effective dates 2020 to 2029; a year has 13 cycles, 1998, 2020 and 2043 have 14.
describe('instantsOfCycle', () => {
  it.each([
    ['2001', '2020-01-02T09:01Z', '2020-01-30T09:01Z'],
    ['2014', '2020-12-31T09:01Z', '2021-01-28T09:01Z'],
    ['2101', '2021-01-28T09:01Z', '2021-02-25T09:01Z'],
    ['2601', '2026-01-22T09:01Z', '2026-02-19T09:01Z'],
    ['9814', '1998-12-31T09:01Z', '1999-01-28T09:01Z'],
  ])('%s', (id, from, before) => {
    expect(instantsOfCycle(id)).toEqual({ from, before });
  });

  it.each(['2600', '2614', '2100', '2199', '6101', '8901', '9000', '6099'])('there is no cycle %s', (id) => {
    expect(instantsOfCycle(id)).toBeNull();
  });

  it('agrees with the cycle of every date from 1990 to 2060', () => {
    for (let cycle = databaseCycle('1990-02-01'); cycle.next < '2060-12-31'; cycle = databaseCycle(cycle.next))
      expect(instantsOfCycle(cycle.id)).toEqual({ from: `${cycle.effective}T09:01Z`, before: `${cycle.next}T09:01Z` });
  });
});

describe('nextCycleAfter', () => {
  it('changes at 0901Z', () => {
    expect(nextCycleAfter('2026-02-19T09:00Z')).toBe('2026-02-19T09:01Z');
    expect(nextCycleAfter('2026-02-19T09:01Z')).toBe('2026-03-19T09:01Z');
  });

  it('knows no cycle beyond its table', () => {
    expect(nextCycleAfter('1989-12-31T23:59Z')).toBeNull();
    expect(nextCycleAfter('2060-12-01T00:01Z')).toBeNull();
  });
});

describe('navigationLoads', () => {
  const load = (unitId: string, slot: DatabaseLoad['slot'], database: DatabaseLoad['database'] = 'navigation') => ({
    unitId,
    database,
    slot,
    cycle: null,
    effective: null,
    expires: null,
    loaded: { date: '2026-02-19', at: null },
    fromFlightDeck: null,
    coverage: null,
    notices: [],
  });
  it.each([
    [load('gps1', 'next'), load('gps1', 'this')],
    [load('gps1', 'this'), load('gps1', 'next')],
  ])('are those of the unit, this cycle first', (...two) => {
    const loads = [load('gps2', 'this'), ...two, load('gps1', 'this', 'terrain')];
    const found = navigationLoads(factsOf(dossierOf({ status: { loads } }), catalogueOf()), 'gps1');
    expect(found).toEqual([load('gps1', 'this'), load('gps1', 'next')]);
  });
});

it('the table begins with the first cycle of 1990 and ends in 2060', () => {
  expect(instantsOfCycle('9001')?.from).toBe('1990-01-11T09:01Z');
  expect(nextCycleAfter('1990-01-11T09:01Z')).toBe('1990-02-08T09:01Z');
  expect(nextCycleAfter('2060-11-30T23:59Z')).not.toBeNull();
});
