import type { Sourced, SourceRef } from './source.js';

const performance: SourceRef = {
  document: '14 CFR 91.227',
  paragraph: '(c), (e)',
  edition: 'Sept 2026',
  status: 'verified',
};

/** What the rule prints. NM, metres a second, seconds, probability. */
export const adsBPerformance: Sourced<{
  readonly nacpBelowNm: number;
  readonly nacvBelowMps: number;
  readonly nicBelowNm: number;
  readonly changeWithinS: number;
  readonly nicChangeWithinS: number;
  readonly latencyMostS: number;
  readonly uncompensatedMostS: number;
}> = {
  value: {
    nacpBelowNm: 0.05,
    nacvBelowMps: 10,
    nicBelowNm: 0.2,
    changeWithinS: 10,
    nicChangeWithinS: 12,
    latencyMostS: 2,
    uncompensatedMostS: 0.6,
  },
  source: performance,
};

/** The same limits as codes in the messages. */
export const adsBLeastCodes: Sourced<{
  readonly nic: number;
  readonly nacp: number;
  readonly nacv: number;
  readonly sil: number;
  readonly sda: number;
}> = {
  value: { nic: 7, nacp: 8, nacv: 1, sil: 3, sda: 2 },
  source: { ...performance, status: 'reading' },
};

/** Emitter category by weight in pounds: light is less than the first figure, small up to the second with it, large above. */
export const emitterWeightsLb: Sourced<{ readonly lightBelow: number; readonly smallTo: number }> = {
  value: { lightBelow: 15_500, smallTo: 75_000 },
  source: { ...performance, paragraph: '(d)(12); weights as the FAA sorted its reports, 2016', status: 'secondary' },
};

/** TSO letters that meet 91.225; the 978 MHz ones only below 18,000 ft and outside class A. */
export const adsBTso: Sourced<{
  readonly es1090: readonly string[];
  readonly uat978: readonly string[];
  readonly uatBelowFt: number;
}> = {
  value: { es1090: ['C166b', 'C166c'], uat978: ['C154c', 'C154d'], uatBelowFt: 18000 },
  source: { document: '14 CFR 91.225', paragraph: '(a), (b)', edition: 'Sept 2026', status: 'verified' },
};

/** Letters named for the transponder itself. */
export const transponderTso: Sourced<readonly string[]> = {
  value: ['C74b', 'C74c', 'C112'],
  source: { document: '14 CFR 91.215', paragraph: '(a)', edition: 'Sept 2026', status: 'verified' },
};
