import { describe, expect, it } from 'vitest';
import { circuitOf } from '../../testing/builders.js';
import type { Circuit } from '../dossier/installation.js';
import { batteryLoad, batteryMinutesAt, continuousLoadIn } from './electrical-load.js';

const circuit = (id: string, part: Partial<Circuit>): Circuit =>
  circuitOf({ id, loadA: 2, intermittent: false, essential: false, usedIn: ['cruise'], ...part });
const brief = ({ loadA, open }: ReturnType<typeof batteryLoad>) => ({ loadA, open: open.map(({ id }) => id) });

describe('the load in cruise', () => {
  it.each<[string, Partial<Circuit>, number, readonly string[]]>([
    ['on', {}, 2, []],
    ['off', { usedIn: ['landing'] }, 0, []],
    ['on or off, not recorded', { usedIn: null }, 0, ['a']],
    ['short and intermittent', { intermittent: true }, 0, []],
    ['intermittent or not, not recorded', { intermittent: null }, 0, ['a']],
    ['of an unknown load', { loadA: null }, 0, ['a']],
  ])('of a circuit that is %s', (_, part, loadA, open) => {
    expect(brief(continuousLoadIn('cruise', [circuit('a', part)]))).toEqual({ loadA, open });
  });

  it('is the sum, to a hundredth of an ampere', () => {
    const circuits = [circuit('a', { loadA: 0.101 }), circuit('b', { loadA: 0.102 }), circuit('c', { loadA: 5 })];
    expect(continuousLoadIn('cruise', circuits).loadA).toBe(5.2);
  });
});

describe('the load on the battery alone', () => {
  it.each<[string, Partial<Circuit>, number, readonly string[]]>([
    ['essential', { essential: true }, 2, []],
    ['not essential', {}, 0, []],
    ['not essential, but stays on', { usedIn: ['battery-only'] }, 2, []],
    ['not essential, and where it is used is not recorded', { usedIn: null }, 0, ['a']],
    ['essential or not, not recorded', { essential: null }, 0, ['a']],
    ['essential, where it is used not recorded', { essential: true, usedIn: null }, 2, []],
    ['essential and intermittent', { essential: true, intermittent: true }, 0, []],
    ['essential, intermittent or not, not recorded', { essential: true, intermittent: null }, 0, ['a']],
  ])('of a circuit that is %s', (_, part, loadA, open) => {
    expect(brief(batteryLoad([circuit('a', part)]))).toEqual({ loadA, open });
  });
});

it('a battery carries a load for the share of its capacity', () => {
  expect(batteryMinutesAt(10, 30, 0.75)).toBe(135);
  expect(batteryMinutesAt(7, 20, 0.5)).toBe(85.7);
});
