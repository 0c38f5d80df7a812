import { expect, it } from 'vitest';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import { factsOf } from '../graph/facts.js';
import type { DuePoint } from './due-point.js';
import { dueAt, dueWords } from './due-point.js';

const facts = factsOf(dossierOf(), catalogueOf());
const point = (by: DuePoint['by'], part: Partial<DuePoint> = {}): DuePoint => ({
  by,
  date: '2026-04-01',
  meter: 'tach',
  at: 414_000,
  ...part,
});
// The day ends at midnight in Chicago, five hours behind in summer.
const day = { lastGoodDay: '2026-04-01', lapses: '2026-04-02T05:00Z' };
const hours = { meter: 'tach', at: 414_000 };

it.each<[string, DuePoint, object]>([
  ['the day alone', point('date'), { ...day, combine: 'first' }],
  ['the hours alone', point('meter'), { ...hours, combine: 'first' }],
  ['whichever is first', point('first'), { ...day, ...hours, combine: 'first' }],
  ['whichever is last', point('last'), { ...day, ...hours, combine: 'last' }],
  ['the day not recorded', point('first', { date: null }), { ...hours, combine: 'first' }],
  ['the meter not recorded', point('first', { meter: null }), { ...day, combine: 'first' }],
  ['the hours not recorded', point('first', { at: null }), { ...day, combine: 'first' }],
])('falls due by %s', (_, asked, expected) => {
  expect(dueAt(facts, 'Item', asked)).toStrictEqual({ what: 'Item', ...expected });
});

it.each<[DuePoint, string]>([
  [point('date'), '2026-04-01'],
  [point('meter'), '4140 h'],
  [point('first'), '2026-04-01 or 4140 h'],
  [point('last', { date: null, at: null }), 'day not recorded or hours not recorded'],
])('of %j in words: %s', (asked, words) => {
  expect(dueWords(asked)).toBe(words);
});
