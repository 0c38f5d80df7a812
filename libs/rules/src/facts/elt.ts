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
