import type { Sourced, SourceRef } from './source.js';

const performance: SourceRef = {
  document: '14 CFR 91.227',
  paragraph: '(c), (e)',
  edition: 'Sept 2026',
  status: 'verified',
};

/** What the rule prints. NM, metres a second, probability an hour or a sample, seconds. */
export const adsBLimits: Sourced<{
  readonly nacpBelowNm: number;
  readonly nacvBelowMps: number;
  readonly nicBelowNm: number;
  readonly silMost: number;
  readonly sdaMost: number;
  readonly changeWithinS: number;
  readonly nicChangeWithinS: number;
  readonly latencyMostS: number;
  readonly uncompensatedMostS: number;
  /** Position at least so often: in flight or moving on the surface, and standing still. */
  readonly movingEveryS: number;
  readonly standingEveryS: number;
}> = {
  value: {
    nacpBelowNm: 0.05,
    nacvBelowMps: 10,
    nicBelowNm: 0.2,
    silMost: 1e-7,
    sdaMost: 1e-5,
    changeWithinS: 10,
    nicChangeWithinS: 12,
    latencyMostS: 2,
    uncompensatedMostS: 0.6,
    movingEveryS: 1,
    standingEveryS: 5,
  },
  source: performance,
};

export const adsBCodeNames = ['nic', 'nacp', 'nacv', 'sil', 'sda'] as const;
export type AdsBCode = (typeof adsBCodeNames)[number];

const metresPerNm = 1852;

/**
 * Code in the messages, best first, with the bound that it stands for: metres, for NACv metres a second, for SIL and SDA a probability.
 * NIC 6 has two bounds by its supplements; the wider stands here.
 */
export const adsBCodes: Readonly<Record<AdsBCode, Sourced<readonly (readonly [code: number, bound: number])[]>>> = {
  nic: coded([
    [11, 7.5],
    [10, 25],
    [9, 75],
    [8, 0.1 * metresPerNm],
    [7, 0.2 * metresPerNm],
    [6, 0.6 * metresPerNm],
    [5, metresPerNm],
    [4, 2 * metresPerNm],
    [3, 4 * metresPerNm],
    [2, 8 * metresPerNm],
    [1, 20 * metresPerNm],
  ]),
  nacp: coded([
    [11, 3],
    [10, 10],
    [9, 30],
    [8, 0.05 * metresPerNm],
    [7, 0.1 * metresPerNm],
    [6, 0.3 * metresPerNm],
    [5, 0.5 * metresPerNm],
    [4, metresPerNm],
    [3, 2 * metresPerNm],
    [2, 4 * metresPerNm],
    [1, 10 * metresPerNm],
  ]),
  nacv: coded([
    [4, 0.3],
    [3, 1],
    [2, 3],
    [1, 10],
  ]),
  sil: coded([
    [3, 1e-7],
    [2, 1e-5],
    [1, 1e-3],
  ]),
  sda: {
    ...coded([
      [3, 1e-7],
      [2, 1e-5],
      [1, 1e-3],
    ]),
    source: { document: 'DO-260B', paragraph: 'system design assurance', edition: '2009', status: 'from-memory' },
  },
};

function coded(value: readonly (readonly [number, number])[]): Sourced<readonly (readonly [number, number])[]> {
  return {
    value,
    source: {
      document: 'The 1090 MHz Riddle',
      paragraph: 'chapter on uncertainties, tables of version 2',
      edition: 'second',
      status: 'secondary',
    },
  };
}

/** What the message must hold, in the order of the paragraph; the pilot enters those from the code to IDENT. */
export const adsBElements: Sourced<readonly string[]> = {
  value: [
    'length and width',
    'latitude and longitude',
    'barometric pressure altitude',
    'velocity',
    'collision avoidance installed and operating',
    'resolution advisory in effect',
    'Mode 3/A code',
    'call sign or registration',
    'emergency status',
    'IDENT',
    '24-bit address',
    'emitter category',
    'ADS-B In capability',
    'geometric altitude',
    'NACp',
    'NACv',
    'NIC',
    'SDA',
    'SIL',
  ],
  source: { ...performance, paragraph: '(d)(1) to (19)' },
};

/** Classes of power and antenna that 91.227(b) takes, by the standard that defines them. */
export const adsBClasses: Sourced<Readonly<Record<'es1090' | 'uat978', readonly string[]>>> = {
  value: {
    es1090: ['A1', 'A1S', 'A2', 'A3', 'B1', 'B1S'],
    uat978: ['A1H', 'A1S', 'A2', 'A3', 'B1', 'B1S'],
  },
  source: { ...performance, paragraph: '(b)' },
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
