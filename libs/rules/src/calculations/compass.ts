import type { CompassReadings } from '../dossier/readings.js';
import {
  compassDeviationDeg,
  compassLoadsException,
  compassStepDeg,
  compassStepRotorcraftDeg,
} from '../facts/compass.js';
import { angleBetween } from './angles.js';
import type { JudgedPoint, JudgedReadings } from './judged.js';
import { cannotTell, held, judged, stated } from './judged.js';

/**
 * Compass card against old 23.1327 and 23.1547 (27.1547 for rotorcraft): deviation at most 10 degrees, or more from
 * electric loads that a placard names where a stabilized direction indicator is fitted (`stabilized`; null: not recorded); steps between headings at most 30 degrees (rotorcraft 45), all the way round;
 * engines running; radios on or off stated.
 */
export function judgeCompass(
  readings: CompassReadings,
  kind: 'airplane' | 'rotorcraft' = 'airplane',
  stabilized: boolean | null = null,
): JudgedReadings {
  const step = kind === 'rotorcraft' ? compassStepRotorcraftDeg : compassStepDeg;
  return judged([
    ...deviations(readings),
    ...withLoads(readings, stabilized),
    held({ what: 'step', value: largestStep(readings), limit: { most: step.value }, unit: 'deg', source: step.source }),
    stated({ what: 'engines-running', value: readings.enginesRunning, source: { ...step.source, paragraph: '(b)' } }),
    stated({ what: 'radios-stated', value: readings.radiosStated, source: { ...step.source, paragraph: '(c)' } }),
  ]);
}

function deviations(readings: CompassReadings): JudgedPoint[] {
  const asked = {
    what: 'deviation',
    unit: 'deg',
    limit: { most: compassDeviationDeg.value },
    source: compassDeviationDeg.source,
  };
  if (readings.points.length === 0) return [cannotTell(asked)];
  return readings.points.map(({ headingDeg, compassDeg }) => {
    const point = held({ ...asked, at: headingDeg, value: angleBetween(headingDeg, compassDeg) });
    return point.outcome === 'not-met' && readings.electricLoadsPlacarded === true
      ? { ...point, limit: {}, outcome: 'met', source: compassLoadsException.source }
      : point;
  });
}

/** What the exception asks besides the placard, where a deviation rests on it. */
function withLoads(readings: CompassReadings, stabilized: boolean | null): JudgedPoint[] {
  const over = readings.points.some(
    ({ headingDeg, compassDeg }) => angleBetween(headingDeg, compassDeg) > compassDeviationDeg.value,
  );
  return over && readings.electricLoadsPlacarded === true
    ? [stated({ what: 'stabilized-direction-indicator', value: stabilized, source: compassLoadsException.source })]
    : [];
}

/** Widest gap between neighbouring headings, the one across north included; null with no heading at all. */
function largestStep({ points }: CompassReadings): number | null {
  const headings = points.map(({ headingDeg }) => headingDeg % 360).sort((a, b) => a - b);
  const first = headings[0];
  if (first === undefined) return null;
  return headings.reduce((widest, heading, i) => Math.max(widest, (headings[i + 1] ?? first + 360) - heading), 0);
}
