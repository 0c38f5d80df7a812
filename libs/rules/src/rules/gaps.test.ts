import { describe, expect, it } from 'vitest';
import { allOf, anyOf, flight, implies, met, notMet, ref, unknown, within } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { asked, findOut, joined, missingNames, missingPaths } from './gaps.js';

const a = unknown('a', ['configuration.mass.macIn', 'configuration.mass.envelope']);
const b = unknown('b', ['configuration.mass.macIn']);
const night = flight('night', { light: 'night' });
const never = notMet('never');
const later = within('later', { from: '2030-01-01T00:00Z' });

describe('what a clause misses', () => {
  it.each<[string, Clause, readonly string[]]>([
    [
      'each path once',
      allOf('all', [a, b, met('c')], 'met'),
      ['configuration.mass.macIn', 'configuration.mass.envelope'],
    ],
    ['nothing of another capability', ref('fly'), []],
    ['what a condition on the flight asks', implies(night, b), ['configuration.mass.macIn']],
    ['what a condition itself misses', implies(b, met('c')), ['configuration.mass.macIn']],
    ['nothing behind a condition that never holds', implies(never, b), []],
    ['nothing behind one of which a part never holds', implies(allOf('all', [night, never], 'met'), b), []],
    ['something where a part may hold', implies(allOf('all', [night, later], 'met'), b), ['configuration.mass.macIn']],
    ['nothing where no way holds', implies(anyOf('any', [never, never], 'met'), b), []],
    ['something where one way may hold', implies(anyOf('any', [never, later], 'met'), b), ['configuration.mass.macIn']],
    [
      'something behind no way at all, which says nothing',
      implies(anyOf('any', [], 'met'), b),
      ['configuration.mass.macIn'],
    ],
    [
      'something behind a region that ends',
      implies(within('until', { before: '2030-01-01T00:00Z' }, {}, 'not-met', 'met'), b),
      ['configuration.mass.macIn'],
    ],
    ['something behind another capability', implies(ref('fly'), b), ['configuration.mass.macIn']],
  ])('%s', (_, clause, expected) => {
    expect(missingPaths(clause)).toEqual(expected);
  });
});

it('a reference asks nothing of its own, nor does what never binds', () => {
  expect(asked(ref('fly'))).toEqual([]);
  expect(asked(implies(never, b))).toEqual([]);
});

it('in words: what each path asks, each once, and null for nothing', () => {
  expect(missingNames(unknown('a', ['configuration.aircraft.maxWeightLb', 'status.loads']))).toBe(
    'greatest weight (lb), loads',
  );
  const two = ['status.records.a.agency', 'status.records.b.agency', 'status.records'];
  expect(missingNames(unknown('a', two))).toBe('who did it, entries');
  expect(missingNames(met('c'))).toBeNull();
  expect(joined(['gear-position', 'gearPosition'])).toBe('gear position, gear position');
  expect(joined(['dme-or-rnav', 'rate-of-turn'])).toBe('DME or RNAV, rate-of-turn indicator');
  expect(joined([])).toBeNull();
});

it('is asked for where something is missing', () => {
  expect(findOut(b, 'mass.revise', 'aircraft')).toEqual([
    { kind: 'find-out', change: 'mass.revise', subject: 'aircraft', facts: ['configuration.mass.macIn'] },
  ]);
  expect(findOut(met('c'), 'mass.revise', 'aircraft')).toEqual([]);
});
