import type { BondingReadings } from '../dossier/readings.js';
import { bondLimits } from '../facts/bonding.js';
import type { JudgedReadings } from './judged.js';
import { cannotTell, held, judged } from './judged.js';

/**
 * Bonding resistances against AC 43.13-1B 11-187 to 11-189, milliohm: equipment frame below 2.5, each connection of a
 * jumper at most 3, static bond below 1,000. No reading at all is cannot-tell.
 */
export function judgeBonding(readings: BondingReadings): JudgedReadings {
  if (readings.points.length === 0) {
    return judged([cannotTell({ what: 'bond', unit: 'mohm', source: bondLimits['equipment-frame'].source })]);
  }
  return judged(
    readings.points.map(({ kind, place, milliohm }) => {
      const { value, source } = bondLimits[kind];
      const limit = value.inclusive ? { most: value.milliohm } : { below: value.milliohm };
      return held({ what: kind, at: place, value: milliohm, limit, unit: 'mohm', source });
    }),
  );
}
