import type { Sourced, SourceRef } from './source.js';

function eltRule(paragraph: string): SourceRef {
  return { document: '14 CFR 91.207', paragraph, edition: 'Sept 2026', status: 'verified' };
}

export const eltInspectionMonths: Sourced<number> = { value: 12, source: eltRule('(d)') };
/** More than this much transmitting asks for a new or recharged battery. */
export const eltBatteryUseHours: Sourced<number> = { value: 1, source: eltRule('(c)(1)') };
/** Days after the first removal on which the airplane may still fly without it. */
export const eltRemovedDays: Sourced<number> = { value: 90, source: eltRule('(f)(10)') };
/** Radius of the training exception around the airport where the local flight began. */
export const eltTrainingNm: Sourced<number> = { value: 50, source: eltRule('(f)(3)') };
/** Last day on which a TSO-C91 unit could be newly installed. */
export const eltC91LastInstallation: Sourced<string> = { value: '1995-06-21', source: eltRule('(a)') };
/** Testing an analogue transmitter (121.5 and 243 MHz) on the air: within so many minutes after a full hour, and so many sweeps at most. */
export const eltAirTest: Sourced<{ readonly firstMinutes: number; readonly sweepsMost: number }> = {
  value: { firstMinutes: 5, sweepsMost: 3 },
  source: { document: 'AIM', paragraph: '6-2-4', edition: 'effective 2026-07-09', status: 'verified' },
};
