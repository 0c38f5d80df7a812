import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Move, Problem } from './cheapest.js';
import { cheapest } from './cheapest.js';

/** Needs to be covered, and deeds that each cover some of them at a price. */
interface Cover {
  readonly needs: number;
  readonly deeds: readonly { readonly covers: readonly number[]; readonly cost: number }[];
}

function problemOf({ needs, deeds }: Cover): Problem<readonly number[], number> {
  const open = (state: readonly number[]) =>
    Array.from({ length: needs }, (_, need) => need).find(
      (need) => !state.some((deed) => deeds[deed]?.covers.includes(need)),
    );
  return {
    start: [],
    solved: (state) => open(state) === undefined,
    // One open need: every solution holds one of the deeds that cover it.
    moves: (state) =>
      deeds.flatMap((deed, index): Move<number>[] => {
        const need = open(state);
        return need !== undefined && deed.covers.includes(need)
          ? [{ id: String(index), action: index, cost: deed.cost }]
          : [];
      }),
    after: (state, deed) => [...state, deed].sort((a, b) => a - b),
    key: (state) => state.join(),
  };
}

/** The price of the cheapest choice, by trying every one; null where none will do. */
function byTryingAll({ needs, deeds }: Cover): number | null {
  let best: number | null = null;
  for (let choice = 0; choice < 2 ** deeds.length; choice += 1) {
    const chosen = deeds.filter((_, index) => choice & (1 << index));
    const covered = new Set(chosen.flatMap((each) => each.covers));
    const cost = chosen.reduce((sum, each) => sum + each.cost, 0);
    if (covered.size === needs && (best === null || cost < best)) best = cost;
  }
  return best;
}

const cover = fc.integer({ min: 1, max: 5 }).chain((needs) =>
  fc.record({
    needs: fc.constant(needs),
    deeds: fc.array(
      fc.record({
        covers: fc.uniqueArray(fc.integer({ min: 0, max: needs - 1 }), { minLength: 1, maxLength: needs }),
        cost: fc.integer({ min: 0, max: 9 }),
      }),
      { maxLength: 8 },
    ),
  }),
);

it('finds the price that trying everything finds, and none where there is none', () => {
  fc.assert(
    fc.property(cover, (each) => {
      const found = cheapest(problemOf(each), { states: 10_000, paths: 1 });
      expect(found.complete).toBe(true);
      expect(found.paths[0]?.cost ?? null).toBe(byTryingAll(each));
    }),
    { numRuns: 300 },
  );
});

it('gives several solutions cheapest first, none of which holds all of a cheaper one', () => {
  fc.assert(
    fc.property(cover, (each) => {
      const { paths } = cheapest(problemOf(each), { states: 10_000, paths: 4 });
      const costs = paths.map((path) => path.cost);
      expect(costs).toEqual([...costs].sort((a, b) => a - b));
      const sets = paths.map((path) => new Set(path.moves.map((move) => move.id)));
      for (const [at, set] of sets.entries())
        for (const cheaper of sets.slice(0, at)) expect([...cheaper].every((id) => set.has(id))).toBe(false);
    }),
    { numRuns: 200 },
  );
});

it('says that it stopped at its limit', () => {
  const chain: Problem<number, number> = {
    start: 0,
    solved: (state) => state === 10,
    moves: () => [{ id: 'step', action: 1, cost: 1 }],
    after: (state, step) => state + step,
    key: String,
  };
  expect(cheapest(chain, { states: 5, paths: 1 })).toMatchObject({ paths: [], complete: false, looked: 5 });
  expect(cheapest(chain, { states: 11, paths: 1 }).paths[0]?.cost).toBe(10);
});

/** Ways as rows of deeds with their prices, each done in this order. */
type Ways = readonly (readonly (readonly [id: string, cost: number])[])[];
const walking = (ways: Ways): Problem<readonly string[], string> => ({
  start: [],
  solved: (done) => ways.some((way) => way.map(([id]) => id).join() === done.join()),
  moves: (done) => {
    const next = ways.flatMap((way) => {
      const [at] = way.slice(done.length);
      return at && done.every((id, step) => way[step]?.[0] === id) ? [at] : [];
    });
    return [...new Map(next)].map(([id, cost]) => ({ id, action: id, cost }));
  },
  after: (done, id) => [...done, id],
  key: (done) => done.join(),
});
const namesOf = (ways: Ways, paths = 9) =>
  cheapest(walking(ways), { states: 100, paths }).paths.map(({ moves }) => moves.map(({ id }) => id).join('+'));

it('of ways at one price the one with fewer moves comes first, then the one whose name does', () => {
  const ways: Ways = [
    [
      ['h', 1],
      ['i', 1],
    ],
    [['x', 2]],
    [['y', 2]],
    [['z', 2]],
  ];
  expect(namesOf(ways)).toEqual(['x', 'y', 'z', 'h+i']);
  expect(namesOf(ways.toReversed())).toEqual(['x', 'y', 'z', 'h+i']);
  expect(namesOf([...ways, [['d', 1.5]]])[0]).toBe('d');
});

it('one with fewer moves comes first also where it was thought of later', () => {
  const ways: Ways = [
    [
      ['x', 1],
      ['y', 1],
      ['z', 1],
    ],
    [
      ['w', 2.5],
      ['v', 0.5],
    ],
  ];
  expect(namesOf(ways)).toEqual(['w+v', 'x+y+z']);
});

it('names are told apart move by move: all that begin with one deed before those that begin with another', () => {
  const ways: Ways = [
    [
      ['ab', 1],
      ['0', 1],
    ],
    [
      ['a', 1],
      ['c', 1],
    ],
  ];
  expect(namesOf(ways)).toEqual(['a+c', 'ab+0']);
});

it('gives a dearer way that shares a deed with a cheaper one, and none that holds all of it', () => {
  const ways: Ways = [
    [
      ['a', 1],
      ['b', 1],
    ],
    [
      ['a', 1],
      ['c', 2],
    ],
    [
      ['d', 1],
      ['a', 1],
      ['b', 2],
    ],
  ];
  expect(namesOf(ways)).toEqual(['a+b', 'a+c']);
});

it('gives as many ways as it is asked for and no more', () => {
  const four = ['a', 'b', 'c', 'd'].map((id) => [[id, 1]] as const);
  expect(namesOf(four, 1)).toEqual(['a']);
  expect(namesOf(four, 3)).toEqual(['a', 'b', 'c']);
  expect(namesOf(four, 4)).toEqual(['a', 'b', 'c', 'd']);
});
