import { expect, it } from 'vitest';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import { defaultConditions } from '../verdict/conditions.js';
import { assess } from './assess.js';
import { differenceOf, inShort } from './in-short.js';

const flights = [
  defaultConditions,
  { ...defaultConditions, rules: 'vfr' as const, light: 'day' as const, approaches: [] },
];
const short = (catalogue = trainerCatalogue) => inShort(trainer(), catalogue, goodDay, flights);
/** The trainer as if nothing were catalogued. */
const bare = { version: 'bare', types: {} };

it.each([
  ['as it stands', trainerCatalogue],
  ['without its catalogue', bare],
])('says what an assessment says, %s', (_, catalogue) => {
  const { flights: ready, open } = short(catalogue);
  expect(ready).toEqual(
    flights.map((each) => assess(trainer(), catalogue, { instant: goodDay }, each).operations['flight']?.ready),
  );
  const results = flights.flatMap((each) => assess(trainer(), catalogue, { instant: goodDay }, each).results);
  const worst = new Map<string, string>();
  for (const { key, outcome } of results) {
    if (outcome === 'not-met' || (outcome === 'cannot-tell' && !worst.has(key))) worst.set(key, outcome);
  }
  expect(Object.fromEntries(open.map(({ key, outcome }) => [key, outcome]))).toEqual(Object.fromEntries(worst));
});

it('without flights asked is open what is open under the plain conditions', () => {
  const { flights: none, open } = inShort(trainer(), bare, goodDay, []);
  expect(none).toEqual([]);
  expect(open).toEqual(inShort(trainer(), bare, goodDay, [defaultConditions]).open);
  expect(open.length).toBeGreaterThan(0);
});

it('is open under the flights asked, each with what it is, and under no other', () => {
  const late = '2026-04-20T12:00Z';
  const keys = (asked: Parameters<typeof inShort>[3]) =>
    inShort(trainer(), trainerCatalogue, late, asked).open.map(({ key }) => key);
  const private_ = { ...defaultConditions, rules: 'vfr' as const, purpose: 'private' as const, airspace: [] };
  expect(keys([private_])).not.toContain('vor-check|nav1');
  expect(keys([private_, defaultConditions])).toContain('vor-check|nav1');
  expect(keys([defaultConditions])).toContain('vor-check|nav1');
  expect(keys([private_]).every((each) => each.includes('|'))).toBe(true);
});

it('a flight that the later answer was not asked about does not differ', () => {
  const lapsed = inShort(trainer(), bare, goodDay, flights.slice(0, 1));
  expect(differenceOf(short(), lapsed).flights).toEqual([{ flight: 0, was: 'yes', is: lapsed.flights[0] }]);
  expect(lapsed.flights[0]).not.toBe('yes');
});

it('names flights by their place in the question', () => {
  const both = differenceOf(short(), short(bare)).flights;
  expect(both.map(({ flight }) => flight)).toEqual([0, 1]);
  expect(both.every(({ was, is }) => was === 'yes' && is !== 'yes')).toBe(true);
});

it('answers for capabilities under the plain conditions, as an assessment of its own would', () => {
  const { capabilities } = short();
  expect(capabilities['approach-lpv']).toBe('met');
  expect(short(bare).capabilities['approach-lpv']).not.toBe('met');
  expect(inShort(trainer(), trainerCatalogue, '2026-04-20T12:00Z', []).capabilities['approach-lpv']).toBe('not-met');
});

it('between an answer and itself nothing differs', () => {
  expect(differenceOf(short(), short())).toEqual({ flights: [], capabilities: [], opened: [], closed: [] });
});

it('the difference is the same both ways round', () => {
  const [with_, without] = [short(), short(bare)];
  const lost = differenceOf(with_, without);
  const gained = differenceOf(without, with_);
  expect(lost.capabilities.length).toBeGreaterThan(0);
  expect(lost.opened.length).toBeGreaterThan(0);
  expect(lost.capabilities).toContainEqual({
    capability: 'approach-lpv',
    was: 'met',
    is: without.capabilities['approach-lpv'],
  });
  expect(gained.capabilities).toEqual(
    lost.capabilities.map(({ capability, was, is }) => ({ capability, was: is, is: was })),
  );
  expect(gained.flights).toEqual(lost.flights.map(({ flight, was, is }) => ({ flight, was: is, is: was })));
  expect(gained.opened).toEqual(lost.closed);
  expect(gained.closed).toEqual(lost.opened);
});
