import type { StaticLeakReadings } from '../dossier/readings.js';
import { staticLeakPressurized, staticLeakUnpressurized, staticSystemCondition } from '../facts/static-system.js';
import type { JudgedPoint, JudgedReadings } from './judged.js';
import { cannotTell, held, judged, stated } from './judged.js';
import { roundTo } from './rounding.js';

/**
 * The test of a static system by appendix E(a): its leak, and the three things looked at beside it. Leak in one minute, feet of indicated altitude. Appendix E(a) prints no figure; the limit is that of old
 * 23.1325. Unpressurized: about 1 inHg (rounded to a tenth) or 1,000 ft above the field, at most 100 ft. Pressurized:
 * the greatest cabin difference, at most 2 % of its equivalent altitude or 100 ft, the greater.
 */
export function judgeStaticLeak(readings: StaticLeakReadings): JudgedReadings {
  if (readings.pressurized === null) {
    return judged([
      cannotTell({ what: 'pressurized', source: staticLeakUnpressurized.source }),
      lossUnpressurized(readings),
      ...condition(readings),
    ]);
  }
  const leak = readings.pressurized ? pressurized(readings) : [suction(readings), lossUnpressurized(readings)];
  return judged([...leak, ...condition(readings)]);
}

/** A heater that is not fitted is asked nothing. */
function condition({ linesClear, portHeater, surroundsUnchanged }: StaticLeakReadings): JudgedPoint[] {
  const source = staticSystemCondition;
  const heater = portHeater === null ? null : portHeater === 'works';
  return [
    stated({ what: 'lines-clear', value: linesClear, source }),
    ...(portHeater === 'not-fitted' ? [] : [stated({ what: 'port-heater-works', value: heater, source })]),
    stated({ what: 'surrounds-unchanged', value: surroundsUnchanged, source }),
  ];
}

function suction({ aboveFieldFt, differentialInHg }: StaticLeakReadings): JudgedPoint {
  const { value, source } = staticLeakUnpressurized;
  const byHeight = held({
    what: 'suction',
    value: aboveFieldFt,
    limit: { least: value.aboveFieldFt },
    unit: 'ft',
    source,
  });
  if (byHeight.outcome === 'met' || differentialInHg === null) return byHeight;
  const rounded = roundTo(differentialInHg, 1);
  return held({ what: 'suction', value: rounded, limit: { least: value.differentialInHg }, unit: 'inHg', source });
}

function lossUnpressurized({ lossFt }: StaticLeakReadings): JudgedPoint {
  const { value, source } = staticLeakUnpressurized;
  const lost = lossFt === null ? null : Math.abs(lossFt);
  return held({ what: 'loss', value: lost, limit: { most: value.lossFtPerMinute }, unit: 'ft', source });
}

function pressurized({ cabinEquivalentFt, lossFt }: StaticLeakReadings): JudgedPoint[] {
  const { value, source } = staticLeakPressurized;
  if (cabinEquivalentFt === null) return [cannotTell({ what: 'cabin-equivalent', unit: 'ft', source })];
  const most = Math.max(roundTo(cabinEquivalentFt * value.shareOfEquivalent, 1), value.lossFtPerMinute);
  const lost = lossFt === null ? null : Math.abs(lossFt);
  return [held({ what: 'loss', value: lost, limit: { most }, unit: 'ft', source })];
}
