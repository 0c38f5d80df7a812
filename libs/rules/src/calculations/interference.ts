import type { InterferenceReadings } from '../dossier/readings.js';
import { interferenceTestMHz } from '../facts/vhf.js';
import type { JudgedPoint, JudgedReadings } from './judged.js';
import { cannotTell, judged, stated } from './judged.js';

/**
 * VHF interference with satellite navigation: each transmitter on each of the six frequencies whose harmonics reach L1, and
 * navigation is not lost. A frequency that was not tried is cannot-tell; so is a check without any point.
 */
export function judgeInterference({ points }: InterferenceReadings): JudgedReadings {
  const { value: frequencies, source } = interferenceTestMHz;
  const transmitters = [...new Set(points.map(({ transmitter }) => transmitter))];
  const tried: JudgedPoint[] = points.map(({ transmitter, frequencyMHz, navigationLost }) =>
    stated({ what: 'navigation-lost', at: `${transmitter} ${frequencyMHz}`, value: navigationLost, is: false, source }),
  );
  const left = transmitters.flatMap((transmitter) =>
    frequencies
      .filter((each) => !points.some((point) => point.transmitter === transmitter && point.frequencyMHz === each))
      .map((each) => cannotTell({ what: 'navigation-lost', at: `${transmitter} ${each}`, source })),
  );
  const nothing = points.length === 0 ? [cannotTell({ what: 'navigation-lost', source })] : [];
  return judged([...tried, ...left, ...nothing]);
}
