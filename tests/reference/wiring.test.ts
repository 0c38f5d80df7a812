import { describe, expect, test } from 'vitest';
import { judgeBonding } from '../../libs/rules/src/calculations/bonding.js';
import { damagedStrands, switchDerating } from '../../libs/rules/src/facts/wiring.js';
import { wireTable } from '../../libs/rules/src/facts/wire.js';

describe('AC 43.13-1B table 11-13, copper', () => {
  test.each([
    [24, 2, 0],
    [14, 2, 0],
    [12, 4, 0],
    [10, 4, 0],
    [8, 6, 6],
    [4, 6, 6],
    [2, 6, 6],
    [1, 6, 6],
    [0, 6, 6],
    [-1, 6, 6],
    [-2, 6, 6],
    [-3, 6, 6],
  ])('gauge %i: %i nicked, %i broken', (awg, nicked, broken) => {
    const row = damagedStrands.value.find(({ fromAwg, toAwg }) => awg <= fromAwg && awg >= toAwg);
    expect(row).toMatchObject({ nicked, broken });
  });

  test('every gauge of table 11-9 is in one row, and thicker wire has more strands', () => {
    const rows = damagedStrands.value;
    for (const { awg } of wireTable.value)
      expect(rows.filter(({ fromAwg, toAwg }) => awg <= fromAwg && awg >= toAwg)).toHaveLength(1);
    const least = rows.map(({ strands: [fewest] }) => fewest);
    expect(least).toEqual([19, 37, 133, 665, 1045, 1665]);
  });
});

describe('AC 43.13-1B table 11-4: nominal rating of a switch over its continuous current', () => {
  test('a lamp of 5 A on 28 V needs a switch of 40 A', () => {
    expect(5 * switchDerating.value[28].lamp).toBe(40);
  });

  test('28 V asks more of every load than 12 V, and cold lamps ask the most', () => {
    expect(switchDerating.value).toEqual({
      12: { lamp: 5, inductive: 2, resistive: 1, motor: 2 },
      28: { lamp: 8, inductive: 4, resistive: 2, motor: 3 },
    });
  });
});

describe('AC 43.13-1B 11-187 to 11-189, bonding', () => {
  test.each([
    [
      '11-188f: an exposed frame of equipment, less than 2.5 milliohm',
      'equipment-frame',
      [2.49, 2.5],
      ['met', 'not-met'],
    ],
    ['11-189: each connection of a jumper, 3 milliohm at most', 'jumper-connection', [3, 3.01], ['met', 'not-met']],
    [
      '11-187c, as a training page quotes it: a static bond, less than 1 ohm',
      'static-bond',
      [999, 1000],
      ['met', 'not-met'],
    ],
  ] as const)('%s', (_name, kind, readings, outcomes) => {
    const at = (milliohm: number) => judgeBonding({ points: [{ kind, place: 'antenna base', milliohm }] }).outcome;
    expect(readings.map(at)).toEqual(outcomes);
  });
});
