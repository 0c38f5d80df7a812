import type { TransponderReadings } from '../dossier/readings.js';
import type { PowerLimit, TransponderClassFacts } from '../facts/transponder.js';
import { leastPower, mostPower } from '../facts/transponder.js';
import type { Sourced } from '../facts/source.js';
import type { JudgedPoint } from './judged.js';
import { cannotTell, held, heldInDoubt } from './judged.js';
import { roundTo } from './rounding.js';

interface Power {
  readonly watts: number;
  readonly dbw: number;
}

/**
 * Peak power against appendix F(d). What was read in watts is also shown in dBW (0.01 dBW) and the other way round
 * (0.1 W), and both figures of the text must hold: they do not convert exactly, so the stricter decides.
 * `facts` null: the class is unknown and only the greatest power can be judged.
 */
export function peakPower(readings: TransponderReadings, facts: TransponderClassFacts | null): JudgedPoint[] {
  const read = powersRead(readings);
  if (read.length === 0) {
    return [cannotTell({ what: 'peak-power-least', unit: 'W', source: mostPower.source })];
  }
  return read.flatMap((power) => [
    ...(facts ? least(power, readings, facts) : []),
    ...pair(power, (value, unit) =>
      held({
        what: 'peak-power-most',
        value,
        unit,
        limit: { most: figure(mostPower, unit) },
        source: mostPower.source,
      }),
    ),
  ]);
}

function least(power: Power, readings: TransponderReadings, facts: TransponderClassFacts): JudgedPoint[] {
  const what = 'peak-power-least';
  const family = facts.modeS ? 'mode-s' : 'atcrbs';
  const high = leastPower[`${family}-high`];
  const low = leastPower[`${family}-low`];
  // High power is an option of the low Mode S classes only; whether the unit has it may not be recorded.
  const option = facts.modeS && !facts.highPower ? readings.highPower : facts.highPower;
  return pair(power, (value, unit) => {
    const narrow = { least: figure(high, unit) };
    const wide = { least: figure(low, unit) };
    if (option === null) return heldInDoubt({ what, value, unit, narrow, wide, source: low.source });
    return held({ what, value, unit, limit: option ? narrow : wide, source: option ? high.source : low.source });
  });
}

function powersRead({ peakPowerW, peakPowerDbw }: TransponderReadings): Power[] {
  const powers: Power[] = [];
  if (peakPowerW !== null) {
    powers.push({ watts: peakPowerW, dbw: peakPowerW > 0 ? roundTo(10 * Math.log10(peakPowerW), 2) : -30 });
  }
  if (peakPowerDbw !== null) powers.push({ watts: roundTo(10 ** (peakPowerDbw / 10), 1), dbw: peakPowerDbw });
  return powers;
}

function pair(power: Power, judge: (value: number, unit: 'W' | 'dBW') => JudgedPoint): JudgedPoint[] {
  return [judge(power.watts, 'W'), judge(power.dbw, 'dBW')];
}

function figure(limit: Sourced<PowerLimit>, unit: 'W' | 'dBW'): number {
  return unit === 'W' ? limit.value.watts : limit.value.dbw;
}
