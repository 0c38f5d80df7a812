import type { VorReadings } from '../dossier/readings.js';
import type { SourceRef } from '../facts/source.js';
import { votBearingsDeg, vorMethods } from '../facts/vor.js';
import { angleBetween } from './angles.js';
import type { JudgedPoint, JudgedReadings } from './judged.js';
import { cannotTell, held, judged, stated } from './judged.js';

/**
 * VOR check against 14 CFR 91.171, by method. Degrees; errors are taken the short way round, so 359 against 1 is 2.
 * Also asks what makes the method count: airborne methods only where the earlier ones are not available, the station's
 * own entry for a repair-station signal, 0 or 180 degrees for a test signal, independent units on one station for the dual check.
 */
export function judgeVorCheck(readings: VorReadings): JudgedReadings {
  if (readings.method === null) {
    const source: SourceRef = { ...vorMethods['test-signal'].source, paragraph: '(b), (c)' };
    return judged([cannotTell({ what: 'method', source })]);
  }
  const { value, source } = vorMethods[readings.method];
  const against = readings.method === 'dual' ? readings.otherIndicatedDeg : readings.expectedDeg;
  const error =
    readings.indicatedDeg === null || against === null ? null : angleBetween(readings.indicatedDeg, against);
  const what = readings.method === 'dual' ? 'difference' : 'bearing-error';
  const bearing = held({ what, value: error, limit: { most: value.withinDeg }, unit: 'deg', source });
  return judged([bearing, ...conditions(readings, value.lastResort, source)]);
}

function conditions(readings: VorReadings, lastResort: boolean, source: SourceRef): JudgedPoint[] {
  if (lastResort) {
    return [stated({ what: 'earlier-methods-unavailable', value: readings.earlierMethodsUnavailable, source })];
  }
  if (readings.method === 'repair-station-signal') {
    return [
      stated({ what: 'station-entry', value: readings.stationEntryMade, source: { ...source, paragraph: '(d)' } }),
    ];
  }
  if (readings.method === 'test-signal') {
    const { expectedDeg } = readings;
    const value = expectedDeg === null ? null : votBearingsDeg.value.includes(expectedDeg);
    return [stated({ what: 'test-signal-bearing', value, source: votBearingsDeg.source })];
  }
  if (readings.method === 'dual') {
    return [
      stated({ what: 'independent-units', value: readings.independentUnits, source }),
      stated({ what: 'same-station', value: readings.sameStation, source }),
    ];
  }
  return [];
}
