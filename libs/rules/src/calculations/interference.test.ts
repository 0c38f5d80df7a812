import { describe, expect, it } from 'vitest';
import type { InterferenceReadings } from '../dossier/readings.js';
import { judgeInterference } from './interference.js';

const six = [121.15, 121.175, 121.2, 131.25, 131.275, 131.3];
const points = (
  transmitter: string,
  lost: (mhz: number) => boolean | null = () => false,
): InterferenceReadings['points'] =>
  six.map((frequencyMHz) => ({ transmitter, frequencyMHz, navigationLost: lost(frequencyMHz) }));

// AC 20-138D, ground test (from memory): six frequencies on each VHF transmitter.
describe('VHF interference', () => {
  it.each([
    ['six frequencies, nothing lost', points('COM 1'), 'met'],
    ['lost on one', points('COM 1', (mhz) => mhz === 131.3), 'not-met'],
    ['not recorded on one', points('COM 1', (mhz) => (mhz === 131.3 ? null : false)), 'cannot-tell'],
    ['one not tried', points('COM 1').slice(1), 'cannot-tell'],
    [
      'two transmitters, the second on one frequency only',
      [...points('COM 1'), ...points('COM 2').slice(0, 1)],
      'cannot-tell',
    ],
    ['two transmitters, all tried', [...points('COM 1'), ...points('COM 2')], 'met'],
    [
      'further frequencies harm nothing',
      [...points('COM 1'), { transmitter: 'COM 1', frequencyMHz: 121.25, navigationLost: false }],
      'met',
    ],
    [
      'lost on a further frequency',
      [...points('COM 1'), { transmitter: 'COM 1', frequencyMHz: 121.25, navigationLost: true }],
      'not-met',
    ],
    ['nothing tried', [], 'cannot-tell'],
  ] as const)('%s', (_name, tried, outcome) => {
    expect(judgeInterference({ points: tried }).outcome).toBe(outcome);
  });

  it('names transmitter and frequency', () => {
    const { points: found } = judgeInterference({ points: points('COM 1', (mhz) => mhz === 121.15) });
    expect(found[0]).toMatchObject({ what: 'navigation-lost', at: 'COM 1 121.15', value: true, outcome: 'not-met' });
  });

  it('names what was not tried, the whole check where nothing was', () => {
    const { points: left } = judgeInterference({ points: points('COM 1').slice(1) });
    expect(left.at(-1)).toMatchObject({ what: 'navigation-lost', at: 'COM 1 121.15', outcome: 'cannot-tell' });
    expect(left).toHaveLength(6);
    const { points: nothing } = judgeInterference({ points: [] });
    expect(nothing.map(({ what, outcome }) => [what, outcome])).toEqual([['navigation-lost', 'cannot-tell']]);
  });
});
