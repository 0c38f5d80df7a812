import type { CorrespondenceReadings } from '../dossier/readings.js';
import { correspondenceToleranceFt } from '../facts/altimeter.js';
import type { JudgedReadings } from './judged.js';
import { cannotTell, held, judged } from './judged.js';

/**
 * Reported altitude against the displayed altimeter, part 43 appendix E(c): at most 125 ft at every point, feet.
 * How many points are enough the appendix leaves to the tester; none is cannot-tell.
 */
export function judgeCorrespondence(readings: CorrespondenceReadings): JudgedReadings {
  const asked = {
    what: 'correspondence',
    unit: 'ft',
    limit: { most: correspondenceToleranceFt.value },
    source: correspondenceToleranceFt.source,
  };
  if (readings.points.length === 0) return judged([cannotTell(asked)]);
  return judged(
    readings.points.map(({ altimeterFt, reportedFt }) =>
      held({ ...asked, at: altimeterFt, value: Math.abs(reportedFt - altimeterFt) }),
    ),
  );
}
