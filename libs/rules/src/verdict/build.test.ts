import { describe, expect, it } from 'vitest';
import { allOf, anyOf, fact, flight, implies, met, not, notApplicable, notMet, ref, unknown, within } from './build.js';

const source = { document: 'D', paragraph: '1', edition: 'A', status: 'verified' } as const;

describe('a fact', () => {
  it.each([
    [true, met('seen', { source })],
    [false, notMet('seen', { source })],
    [null, unknown('seen', ['a.path'], { source })],
    [undefined, unknown('seen', ['a.path'], { source })],
  ])('that is %s', (value, leaf) => {
    expect(fact(value, 'seen', 'a.path', { source })).toEqual(leaf);
  });
});

it('what is so always is so inside and outside', () => {
  expect(met('a')).toEqual({ is: 'leaf', label: 'a', inside: 'met', outside: 'met' });
  expect(notMet('a')).toEqual({ is: 'leaf', label: 'a', inside: 'not-met', outside: 'not-met' });
  expect(notApplicable('a', { source })).toEqual({
    is: 'leaf',
    label: 'a',
    inside: 'not-applicable',
    outside: 'not-applicable',
    source,
  });
  expect(unknown('a', ['x'], { source })).toEqual({
    is: 'leaf',
    label: 'a',
    inside: 'cannot-tell',
    outside: 'cannot-tell',
    missing: ['x'],
    source,
  });
});

it('a region is met inside and not outside, unless said otherwise', () => {
  const region = { from: '2026-03-02T00:00Z' };
  expect(within('a', region, { source })).toEqual({
    is: 'leaf',
    label: 'a',
    inside: 'met',
    outside: 'not-met',
    ...region,
    source,
  });
  expect(within('a', region, {}, 'cannot-tell', 'met')).toMatchObject({ inside: 'cannot-tell', outside: 'met' });
  expect(flight('ifr', { rules: 'ifr' }, { source })).toEqual({
    is: 'leaf',
    label: 'ifr',
    inside: 'met',
    outside: 'not-met',
    when: { rules: 'ifr' },
    source,
  });
});

it('turned round, met and not met change places and the others stay', () => {
  expect(not(within('a', {}))).toMatchObject({ inside: 'not-met', outside: 'met', label: 'a' });
  expect(not(notApplicable('a'))).toMatchObject({ inside: 'not-applicable', outside: 'not-applicable' });
  expect(not(unknown('a', ['x']))).toMatchObject({ inside: 'cannot-tell', outside: 'cannot-tell', missing: ['x'] });
});

it('groups keep their members, their name and what they are when empty', () => {
  const of = [met('a'), ref('fly')];
  expect(allOf('g', of, 'met')).toEqual({ is: 'all', label: 'g', of, ifEmpty: 'met' });
  expect(anyOf('g', of, 'cannot-tell')).toEqual({ is: 'any', label: 'g', of, ifEmpty: 'cannot-tell' });
  expect(implies(met('a'), ref('fly'))).toEqual({
    is: 'implies',
    if: met('a'),
    then: { is: 'ref', capability: 'fly' },
  });
});
