import { describe, expect, it } from 'vitest';
import { allOf, anyOf, implies, met, notApplicable, notMet, ref, unknown, within } from './build.js';
import type { Clause, Group, Outcome } from './clause.js';
import { strictest } from './conditions.js';
import type { Point } from './evaluate.js';
import { best, evaluate, explain, worst } from './evaluate.js';

const leaves: Readonly<Record<Outcome, Clause>> = {
  met: met('yes'),
  'not-met': notMet('no'),
  'cannot-tell': unknown('who-knows', ['a.fact']),
  'not-applicable': notApplicable('not-asked'),
};
const outcomes = ['met', 'not-met', 'cannot-tell', 'not-applicable'] as const;
const noon = '2026-03-02T12:00Z';
const point = (part: Partial<Point> = {}): Point => ({
  instant: noon,
  meters: { tach: { value: 500, goodBefore: '2026-03-10T00:00Z' } },
  conditions: strictest,
  capability: () => 'cannot-tell',
  ...part,
});
const of = (clause: Clause, part: Partial<Point> = {}) => evaluate(clause, point(part));
const group = (is: Group['is'], members: readonly Outcome[], part: Partial<Group> = {}): Group => ({
  is,
  label: 'group',
  of: members.map((each) => leaves[each]),
  ifEmpty: 'cannot-tell',
  ...part,
});

describe('a leaf', () => {
  const day = { from: '2026-03-02T00:00Z', before: '2026-03-03T00:00Z' };
  it.each([
    ['2026-03-01T23:59Z', 'not-met'],
    ['2026-03-02T00:00Z', 'met'],
    ['2026-03-02T23:59Z', 'met'],
    ['2026-03-03T00:00Z', 'not-met'],
  ])('with a first and a last minute, at %s', (instant, outcome) => {
    expect(of(within('day', day), { instant })).toBe(outcome);
  });

  it.each([
    [499, 'met'],
    [500, 'met'],
    [501, 'not-met'],
  ])('with hours at most 500, at %i', (value, outcome) => {
    const meters = { tach: { value, goodBefore: '2026-03-10T00:00Z' } };
    expect(of(within('hours', { atMost: { tach: 500 } }), { meters })).toBe(outcome);
  });

  it.each([
    ['a reading that is good one minute more', { tach: { value: 400, goodBefore: '2026-03-02T12:01Z' } }, 'met'],
    ['a reading that is good no more', { tach: { value: 400, goodBefore: noon } }, 'cannot-tell'],
    ['no reading at all', { tach: { value: 400, goodBefore: null } }, 'cannot-tell'],
    ['an old reading beyond the limit', { tach: { value: 501, goodBefore: noon } }, 'not-met'],
    ['no such meter', {}, 'cannot-tell'],
  ])('with hours and %s', (_, meters, outcome) => {
    expect(of(within('hours', { atMost: { tach: 500 } }), { meters })).toBe(outcome);
  });

  it('with two meters is past where either is, whichever is named first', () => {
    const meters = { known: { value: 501, goodBefore: '2026-03-10T00:00Z' } };
    expect(of(within('hours', { atMost: { unread: 10, known: 500 } }), { meters })).toBe('not-met');
    expect(of(within('hours', { atMost: { known: 501, unread: 10 } }), { meters })).toBe('cannot-tell');
  });

  it('that comes to the same inside and outside does not ask for a reading', () => {
    expect(of(within('either way', { atMost: { unread: 10 } }, {}, 'met', 'met'))).toBe('met');
  });

  it('of a flight holds for that flight only', () => {
    const ifr = within('ifr', { when: { rules: 'ifr' } }, {}, 'not-met', 'met');
    expect(of(ifr)).toBe('not-met');
    expect(of(ifr, { conditions: { ...strictest, rules: 'vfr' } })).toBe('met');
  });
});

describe('a group', () => {
  it.each<[Group['is'], readonly Outcome[], Outcome]>([
    ['all', ['met', 'not-met', 'cannot-tell'], 'not-met'],
    ['all', ['met', 'cannot-tell'], 'cannot-tell'],
    ['all', ['not-applicable', 'met'], 'met'],
    ['all', [], 'cannot-tell'],
    ['all', ['not-applicable'], 'cannot-tell'],
    ['any', ['not-met', 'met', 'cannot-tell'], 'met'],
    ['any', ['not-met', 'cannot-tell'], 'cannot-tell'],
    ['any', ['not-applicable', 'not-met'], 'not-met'],
    ['any', [], 'cannot-tell'],
  ])('%s of %j: %s', (is, members, outcome) => {
    expect(of(group(is, members))).toBe(outcome);
  });

  it.each<[number, readonly Outcome[], Outcome]>([
    [2, ['met', 'met', 'not-met'], 'met'],
    [2, ['met', 'not-met', 'not-met'], 'not-met'],
    [2, ['met', 'cannot-tell', 'not-met'], 'cannot-tell'],
    [2, ['cannot-tell', 'cannot-tell'], 'cannot-tell'],
    [2, ['met', 'not-applicable'], 'not-met'],
    [1, ['not-applicable'], 'not-applicable'],
  ])('at least %i of %j: %s', (n, members, outcome) => {
    expect(of(group('at-least', members, { n, ifEmpty: 'not-applicable' }))).toBe(outcome);
  });

  it('of at least an unstated number asks for none', () => {
    expect(of(group('at-least', ['not-met']))).toBe('met');
  });

  it('with nothing left is what it says it is', () => {
    for (const outcome of outcomes) {
      expect(worst(['not-applicable'], outcome)).toBe(outcome);
      expect(best([], outcome)).toBe(outcome);
    }
  });
});

describe('if and then', () => {
  const expected: Readonly<Record<Outcome, readonly Outcome[]>> = {
    met: ['met', 'not-met', 'cannot-tell', 'not-applicable'],
    'not-met': ['not-applicable', 'not-applicable', 'not-applicable', 'not-applicable'],
    'cannot-tell': ['met', 'cannot-tell', 'cannot-tell', 'met'],
    'not-applicable': ['not-applicable', 'not-applicable', 'not-applicable', 'not-applicable'],
  };
  it.each(outcomes)('where the first is %s', (condition) => {
    expect(outcomes.map((then) => of(implies(leaves[condition], leaves[then])))).toEqual(expected[condition]);
  });
});

it('a capability is what the point says of it', () => {
  expect(of(ref('nav-vor'), { capability: (name) => (name === 'nav-vor' ? 'met' : 'not-met') })).toBe('met');
});

describe('explained', () => {
  it('every part has its outcome, in the order in which it was stated', () => {
    const clause = allOf(
      'whole',
      [implies(leaves.met, ref('fly')), anyOf('either', [leaves['not-met']], 'met')],
      'met',
    );
    expect(explain(clause, point())).toEqual({
      outcome: 'not-met',
      clause: { is: 'all', label: 'whole' },
      parts: [
        {
          outcome: 'cannot-tell',
          clause: { is: 'implies', label: '' },
          parts: [
            { outcome: 'met', clause: leaves.met, parts: [] },
            { outcome: 'cannot-tell', clause: ref('fly'), parts: [] },
          ],
        },
        {
          outcome: 'not-met',
          clause: { is: 'any', label: 'either' },
          parts: [{ outcome: 'not-met', clause: leaves['not-met'], parts: [] }],
        },
      ],
    });
  });

  it('a group that counts no members says nothing of a number', () => {
    expect(explain(group('all', ['met']), point()).clause).toStrictEqual({ is: 'all', label: 'group' });
  });

  it('a group of at least so many says how many', () => {
    expect(explain(group('at-least', ['met'], { n: 1 }), point()).clause).toEqual({
      is: 'at-least',
      label: 'group',
      n: 1,
    });
  });
});
