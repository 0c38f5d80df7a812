import { describe, expect, it } from 'vitest';
import type { SourceStatus } from '../facts/source.js';
import { allOf, implies, met, notMet, ref, within } from './build.js';
import { collectEdges, leaves, noEdges, weakestOf } from './regions.js';

const day = within('day', { from: '2026-03-02T00:00Z', before: '2026-03-03T00:00Z' });
const hours = within('hours', { atMost: { tach: 500, hobbs: 700 } });

it('the leaves of a clause are all of its ends, in order', () => {
  const clause = allOf('all', [implies(met('if'), allOf('then', [day], 'met')), ref('fly'), notMet('no')], 'met');
  expect([...leaves(clause)].map(({ label }) => label)).toEqual(['if', 'day', 'no']);
});

describe('edges', () => {
  const edgesOf = (...clauses: Parameters<typeof collectEdges>[0][]) => {
    const edges = noEdges();
    for (const each of clauses) collectEdges(each, edges);
    return { instants: [...edges.instants], meters: [...edges.meters].map(([id, limits]) => [id, [...limits]]) };
  };

  it('are the first minute, the minute after the last, and the hours', () => {
    expect(edgesOf(allOf('both', [day, hours], 'met'))).toEqual({
      instants: ['2026-03-02T00:00Z', '2026-03-03T00:00Z'],
      meters: [
        ['tach', [500]],
        ['hobbs', [700]],
      ],
    });
  });

  it('of one meter come together', () => {
    expect(edgesOf(hours, within('more', { atMost: { tach: 900 } })).meters).toEqual([
      ['tach', [500, 900]],
      ['hobbs', [700]],
    ]);
  });

  it('are none where both sides come to the same', () => {
    const same = within('either way', { from: '2026-03-02T00:00Z', atMost: { tach: 1 } }, {}, 'met', 'met');
    expect(edgesOf(same)).toEqual({ instants: [], meters: [] });
  });

  it('are none where none is stated', () => {
    expect(edgesOf(within('flight', { when: { rules: 'ifr' } }))).toEqual({ instants: [], meters: [] });
  });
});

describe('the weakest source', () => {
  const source = (status: SourceStatus) => ({ document: 'D', paragraph: '1', edition: 'A', status });
  it('is the least certain of those that are cited', () => {
    expect(weakestOf([source('verified'), undefined, source('from-memory'), source('reading')])).toBe('from-memory');
    expect(weakestOf([source('reading')])).toBe('reading');
  });

  it('is none where none is cited', () => {
    expect(weakestOf([undefined])).toBeNull();
    expect(weakestOf([])).toBeNull();
  });
});
