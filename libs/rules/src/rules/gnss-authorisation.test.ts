import { expect, it } from 'vitest';
import { typeOf } from '../../testing/builders.js';
import { timelessOutcome } from './entry-outcome.js';
import { allowedByClass, asksForOtherMeans, isNavigationUnit, isSbas } from './gnss-authorisation.js';

const under = (...marks: readonly (readonly [string, string | null])[]) =>
  typeOf({ id: 'nx', functions: ['gnss'], authorisations: marks.map(([tso, marked]) => ({ tso, class: marked })) });

// AIM 1-1-17: TSO-C145 and C146 use augmentation, C129 and C196 do not.
it.each([
  ['C145c', under(['C145c', 'Beta-3']), true],
  ['C146d', under(['C146d', 'Gamma-3']), true],
  ['C129 and C146', under(['C129a', 'A1'], ['C146d', 'Gamma-1']), true],
  ['C129', under(['C129a', 'A1']), false],
  ['C196', under(['C196a', null]), false],
  ['a transponder standard alone', under(['C112e', null]), false],
  ['no catalogue entry', null, null],
] as const)('augmentation under %s: %s', (_, type, expected) => {
  expect(isSbas(type)).toBe(expected);
});

it('a unit under both standards asks for other means by neither more than by the better', () => {
  expect(asksForOtherMeans(under(['C129a', 'A1'], ['C146d', 'Gamma-3']))).toBe(false);
  expect(asksForOtherMeans(under(['C129a', 'A1']))).toBe(true);
  expect(asksForOtherMeans(null)).toBeNull();
});

it('is known by any standard for satellite navigation under IFR', () => {
  expect(isNavigationUnit(under(['C112e', null], ['C129a', 'A1']))).toBe(true);
  expect(isNavigationUnit(under(['C112e', null]))).toBe(false);
});

// The letter that LP hangs on is asked of LP alone.
it.each([
  ['approach-lp', 'C146a', 'not-met'],
  ['approach-lp', 'C146', 'not-met'],
  ['approach-lp', 'C146b', 'met'],
  ['approach-lpv', 'C146a', 'met'],
  ['approach-lnav', 'C146a', 'met'],
] as const)('%s by class 3 under %s: %s', (capability, tso, outcome) => {
  expect(timelessOutcome(allowedByClass('nx', under([tso, 'Gamma-3']), capability))).toBe(outcome);
});

it('LP and LPV name different sources', () => {
  const [lp, lpv] = (['approach-lp', 'approach-lpv'] as const).map((each) =>
    JSON.stringify(allowedByClass('nx', under(['C146d', 'Gamma-3']), each)),
  );
  expect(lp).not.toBe(lpv);
});
