import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hourEdges } from '../../libs/rules/src/assess/assess.js';
import type { Bearing } from '../../libs/rules/src/assess/system.js';
import { snapshotOf } from '../../libs/rules/src/assess/snapshot.js';
import { evaluate } from '../../libs/rules/src/verdict/evaluate.js';
import { horizonOf } from '../../libs/rules/src/horizon/horizon.js';
import { instantOf, minutesOf } from '../../libs/rules/src/time/instant.js';
import { clause, flight, start, system } from './clause-trees.js';

const from = instantOf(start);
const to = instantOf(start + 20 * 1440);

describe('the horizon is the verdict at every point', () => {
  it('equals asking at every edge, one minute around it, and one hundredth of an hour around each limit', () => {
    fc.assert(
      fc.property(system, flight, (whole, conditions) => {
        const { windows } = horizonOf(whole, from, to, conditions);
        // Edges read off the raw text of the clauses, not off the collector under test.
        const stated = [...JSON.stringify(whole.statements).matchAll(/"(\d{4}-\d\d-\d\dT\d\d:\d\dZ)"/g)].map(
          (each) => each[1] ?? from,
        );
        const instants = [...stated, ...whole.edges.instants].flatMap((each) =>
          [-1, 0, 1].map((shift) => instantOf(minutesOf(each) + shift)),
        );
        const inside = [from, instantOf(minutesOf(to) - 1), ...instants].filter((each) => each >= from && each < to);
        const hours = [
          0,
          137,
          512,
          999,
          1600,
          ...hourEdges(whole).flatMap((each) => [each - 1, each, each + 1]),
        ].filter((each) => each >= 0);
        for (const instant of new Set(inside)) {
          for (const ahead of new Set(hours)) {
            const covering = windows.filter(
              (each) =>
                each.from <= instant &&
                instant < each.to &&
                each.above < ahead &&
                (each.upTo === null || ahead <= each.upTo),
            );
            expect(covering, `exactly one window at ${instant} with ${ahead}`).toHaveLength(1);
            const asked = snapshotOf(whole, instant, ahead, conditions).answer(conditions);
            const { ready, standing, by, topFt, weakestSource } = covering[0] ?? {};
            expect({ ready, standing, by, topFt: topFt ?? null, weakestSource }).toEqual({
              ready: asked.ready,
              standing: asked.standing,
              by: asked.by,
              topFt: asked.topFt,
              weakestSource: asked.weakest,
            });
            if (ready !== 'yes') expect(covering[0]?.because).toEqual(asked.stoppedBy);
          }
        }
      }),
      { numRuns: 100, seed: 20261125 },
    );
  }, 120_000);

  it('improves only at the start of some region, at a dated edge, or never', () => {
    fc.assert(
      fc.property(system, flight, (whole, conditions) => {
        const { windows } = horizonOf(whole, from, to, conditions);
        for (const each of windows) if (each.to < to) expect(whole.edges.instants.has(each.to)).toBe(true);
      }),
      { numRuns: 150, seed: 7 },
    );
  }, 60_000);

  it('no yes rests on a capability that nothing establishes', () => {
    fc.assert(
      fc.property(system, flight, (whole, conditions) => {
        const mute = {
          ...whole,
          byCapability: Object.fromEntries(
            Object.entries(whole.byCapability).map(([name, each]): [string, Bearing] => [
              name,
              { ...each, judged: false, means: each.means.map((means) => ({ ...means, judged: false })) },
            ]),
          ) as typeof whole.byCapability,
        };
        expect(snapshotOf(mute, from, 0, conditions).answer(conditions).ready).not.toBe('yes');
      }),
      { numRuns: 400, seed: 11 },
    );
  }, 60_000);
});

describe('clauses', () => {
  it('survive JSON', () => {
    fc.assert(
      fc.property(clause, (tree) => {
        expect(JSON.parse(JSON.stringify(tree))).toEqual(tree);
      }),
      { numRuns: 500 },
    );
  });

  it('a limit in hours is cannot-tell without its meter, whatever the hours', () => {
    fc.assert(
      fc.property(
        system,
        flight,
        fc.integer({ min: 9_900, max: 10_300 }),
        fc.integer({ min: 0, max: 400 }),
        (whole, conditions, limit, ahead) => {
          const leaf = {
            is: 'leaf',
            label: 'hours',
            inside: 'met',
            outside: 'not-met',
            atMost: { tach: limit },
          } as const;
          const { point } = snapshotOf(whole, from, ahead, conditions);
          expect(evaluate(leaf, { ...point, meters: {} })).toBe('cannot-tell');
        },
      ),
      { numRuns: 200, seed: 3 },
    );
  });
});
