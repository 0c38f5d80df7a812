import { expect, it } from 'vitest';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { NextPart } from '../calculations/recurrence.js';
import { factsOf } from '../graph/facts.js';
import { dueOf, intervalParts } from './in-interval.js';

const facts = factsOf(dossierOf(), catalogueOf());
const day = (lastGoodDay: string): NextPart => ({ kind: 'date', lastGoodDay, toleratedTo: null });
const hours: NextPart = { kind: 'meter', meter: 'tach', at: 414_000, toleratedTo: null };

// A day ends at midnight in Chicago, five hours behind in summer.
it.each<[string, readonly NextPart[], 'first' | 'last', object | null]>([
  ['the earlier of two days', [day('2026-06-01'), day('2026-04-01')], 'first', { lastGoodDay: '2026-04-01' }],
  ['whichever stands first', [day('2026-04-01'), day('2026-06-01')], 'first', { lastGoodDay: '2026-04-01' }],
  ['the later of two days', [day('2026-06-01'), day('2026-04-01')], 'last', { lastGoodDay: '2026-06-01' }],
  ['whichever stands last', [day('2026-04-01'), day('2026-06-01')], 'last', { lastGoodDay: '2026-06-01' }],
  ['hours and a day', [hours, day('2026-04-01')], 'first', { lastGoodDay: '2026-04-01', meter: 'tach', at: 414_000 }],
  ['hours alone', [hours], 'first', { meter: 'tach', at: 414_000 }],
  ['nothing known', [{ kind: 'unknown', meter: null }], 'first', null],
])('falls due at %s', (_, parts, combine, expected) => {
  const found = dueOf(facts, 'Item', parts, combine).map(({ what, lapses, ...rest }) => [
    what,
    lapses?.slice(10),
    rest,
  ]);
  const lapses = expected && 'lastGoodDay' in expected ? 'T05:00Z' : undefined;
  expect(found).toEqual(expected === null ? [] : [['Item', lapses, { ...expected, combine }]]);
});

it('an interval in hours or landings needs its meter; a tolerance is handed on where there is one', () => {
  const part = { kind: 'days' as const, count: 30, meter: null, tolerance: null };
  expect(intervalParts([part, { ...part, kind: 'landings', meter: 'tach', tolerance: 5 }])).toStrictEqual([
    { kind: 'days', count: 30 },
    { kind: 'landings', meter: 'tach', count: 30, tolerance: 5 },
  ]);
  expect(intervalParts([part, { ...part, kind: 'hours' }])).toBeNull();
});
