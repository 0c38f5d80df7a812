import type { SourceRef, Sourced } from './source.js';

/** 14 CFR part 43 appendix E as last amended by 81 FR 96700. */
export function appendixE(paragraph: string): SourceRef {
  return { document: '14 CFR part 43 appendix E', paragraph, edition: '30 Dec 2016', status: 'verified' };
}

export interface ScalePoint {
  readonly altitudeFt: number;
  readonly pressureInHg: number;
  readonly toleranceFt: number;
}

/** Table I: scale error. One stored copy prints the first row without its minus sign; the pressure fixes it as -1,000 ft. */
export const scaleErrorTable: Sourced<readonly ScalePoint[]> = {
  source: appendixE('(b)(1)(i), table I'),
  value: [
    { altitudeFt: -1000, pressureInHg: 31.018, toleranceFt: 20 },
    { altitudeFt: 0, pressureInHg: 29.921, toleranceFt: 20 },
    { altitudeFt: 500, pressureInHg: 29.385, toleranceFt: 20 },
    { altitudeFt: 1000, pressureInHg: 28.856, toleranceFt: 20 },
    { altitudeFt: 1500, pressureInHg: 28.335, toleranceFt: 25 },
    { altitudeFt: 2000, pressureInHg: 27.821, toleranceFt: 30 },
    { altitudeFt: 3000, pressureInHg: 26.817, toleranceFt: 30 },
    { altitudeFt: 4000, pressureInHg: 25.842, toleranceFt: 35 },
    { altitudeFt: 6000, pressureInHg: 23.978, toleranceFt: 40 },
    { altitudeFt: 8000, pressureInHg: 22.225, toleranceFt: 60 },
    { altitudeFt: 10000, pressureInHg: 20.577, toleranceFt: 80 },
    { altitudeFt: 12000, pressureInHg: 19.029, toleranceFt: 90 },
    { altitudeFt: 14000, pressureInHg: 17.577, toleranceFt: 100 },
    { altitudeFt: 16000, pressureInHg: 16.216, toleranceFt: 110 },
    { altitudeFt: 18000, pressureInHg: 14.942, toleranceFt: 120 },
    { altitudeFt: 20000, pressureInHg: 13.75, toleranceFt: 130 },
    { altitudeFt: 22000, pressureInHg: 12.636, toleranceFt: 140 },
    { altitudeFt: 25000, pressureInHg: 11.104, toleranceFt: 155 },
    { altitudeFt: 30000, pressureInHg: 8.885, toleranceFt: 180 },
    { altitudeFt: 35000, pressureInHg: 7.041, toleranceFt: 205 },
    { altitudeFt: 40000, pressureInHg: 5.538, toleranceFt: 230 },
    { altitudeFt: 45000, pressureInHg: 4.355, toleranceFt: 255 },
    { altitudeFt: 50000, pressureInHg: 3.425, toleranceFt: 280 },
  ],
};

/** Table II: tolerances in feet. */
export const altimeterTestTable: Sourced<{
  readonly caseLeakFt: number;
  readonly hysteresisHalfFt: number;
  readonly hysteresisTwoFifthsFt: number;
  readonly afterEffectFt: number;
}> = {
  source: appendixE('(b)(1)(ii), (iii), (v), table II'),
  value: { caseLeakFt: 100, hysteresisHalfFt: 75, hysteresisTwoFifthsFt: 75, afterEffectFt: 30 },
};

/** Table III: friction. */
export const frictionTable: Sourced<readonly { readonly altitudeFt: number; readonly toleranceFt: number }[]> = {
  source: appendixE('(b)(1)(iv), table III'),
  value: [
    { altitudeFt: 1000, toleranceFt: 70 },
    { altitudeFt: 2000, toleranceFt: 70 },
    { altitudeFt: 3000, toleranceFt: 70 },
    { altitudeFt: 5000, toleranceFt: 70 },
    { altitudeFt: 10000, toleranceFt: 80 },
    { altitudeFt: 15000, toleranceFt: 90 },
    { altitudeFt: 20000, toleranceFt: 100 },
    { altitudeFt: 25000, toleranceFt: 120 },
    { altitudeFt: 30000, toleranceFt: 140 },
    { altitudeFt: 35000, toleranceFt: 160 },
    { altitudeFt: 40000, toleranceFt: 180 },
    { altitudeFt: 50000, toleranceFt: 250 },
  ],
};

/** Table IV: barometric scale. The 29.92 row computes to -1 ft and is printed 0. */
export const baroScaleTable: Sourced<readonly { readonly settingInHg: number; readonly differenceFt: number }[]> = {
  source: appendixE('(b)(1)(vi), table IV'),
  value: [
    { settingInHg: 28.1, differenceFt: -1727 },
    { settingInHg: 28.5, differenceFt: -1340 },
    { settingInHg: 29.0, differenceFt: -863 },
    { settingInHg: 29.5, differenceFt: -392 },
    { settingInHg: 29.92, differenceFt: 0 },
    { settingInHg: 30.5, differenceFt: 531 },
    { settingInHg: 30.9, differenceFt: 893 },
    { settingInHg: 30.99, differenceFt: 974 },
  ],
};

export const baroScaleToleranceFt: Sourced<number> = { value: 25, source: appendixE('(b)(1)(vi)') };

/** Altitude reported by the transponder against the displayed altimeter. Flat: no probability term in the test. */
export const correspondenceToleranceFt: Sourced<number> = { value: 125, source: appendixE('(c)') };

/** The hysteresis points are 50 % and 40 % of the maximum altitude; how close a test may come to them is our reading. */
export const hysteresisPointWithinFt: Sourced<number> = {
  value: 1000,
  source: { ...appendixE('(b)(1)(ii)'), status: 'reading' },
};

/** Feet off the known elevation of the field, on the local setting, from which on the accuracy of an altimeter is in doubt. */
export const fieldElevationFt: Sourced<number> = {
  value: 75,
  source: { document: 'AIM', paragraph: '7-2-3', edition: 'effective 2026-07-09', status: 'verified' },
};
