import { expect, it } from 'vitest';
import { busy } from '../../testing/every-change.js';
import { added, after, give } from '../../testing/changes.js';
import type { Dossier } from '../dossier/dossier.js';
import { apply } from './changes.js';
import { differencesOf } from './differences.js';

const named = (before: Dossier, next: Dossier) => differencesOf(before, next).map(({ place, id }) => [place, id]);

it('the first thing that somebody said is named like any later one', () => {
  const none = after([added]);
  const one = apply(none, give('s1'));
  expect(differencesOf(none, one)).toEqual([{ place: 'sayings', id: 's1', was: null, is: one.status.sayings?.[0] }]);
  expect(named(one, apply(one, give('s2')))).toEqual([['sayings', 's2']]);
});

it('a fact that stands alone is told as it was and as it is', () => {
  const without = { ...busy, meters: { ...busy.meters, timeInService: null } };
  expect(differencesOf(without, busy)).toEqual([{ place: 'timeInService', id: null, was: null, is: 'tach' }]);
  expect(differencesOf(busy, without)).toEqual([{ place: 'timeInService', id: null, was: 'tach', is: null }]);
});

it('databases are told apart by unit, kind and slot', () => {
  const load = (unitId: string, slot: 'this' | 'next') => ({
    unitId,
    database: 'navigation' as const,
    slot,
    cycle: '2603',
    effective: null,
    expires: null,
    loaded: { date: '2026-03-10', at: null },
    fromFlightDeck: true,
    coverage: null,
    notices: [],
  });
  const withLoads = (...loads: ReturnType<typeof load>[]) => ({ ...busy, status: { ...busy.status, loads } });
  expect(
    named(withLoads(load('gps1', 'this')), withLoads(load('gps1', 'next'), load('gps1', 'this'), load('nav1', 'this'))),
  ).toEqual([
    ['loads', 'gps1|navigation|next'],
    ['loads', 'nav1|navigation|this'],
  ]);
});

it('what came and what went stand in one order', () => {
  const withPlacards = (...ids: readonly string[]): Dossier => ({
    ...busy,
    configuration: {
      ...busy.configuration,
      placards: ids.map((id) => ({ id, kind: 'other', unitId: null, inView: true, text: id })),
    },
  });
  expect(named(withPlacards('b'), withPlacards('a', 'c'))).toEqual([
    ['placards', 'a'],
    ['placards', 'b'],
    ['placards', 'c'],
  ]);
});
