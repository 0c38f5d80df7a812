import type { AltimeterReadings, TransponderReadings, VorReadings } from '../src/dossier/readings.js';

/** Altitude, pressure, tolerance: 14 CFR part 43 appendix E table I, as amended 30 Dec 2016. */
export const tableOne: readonly (readonly [number, number, number])[] = [
  [-1000, 31.018, 20],
  [0, 29.921, 20],
  [500, 29.385, 20],
  [1000, 28.856, 20],
  [1500, 28.335, 25],
  [2000, 27.821, 30],
  [3000, 26.817, 30],
  [4000, 25.842, 35],
  [6000, 23.978, 40],
  [8000, 22.225, 60],
  [10000, 20.577, 80],
  [12000, 19.029, 90],
  [14000, 17.577, 100],
  [16000, 16.216, 110],
  [18000, 14.942, 120],
  [20000, 13.75, 130],
  [22000, 12.636, 140],
  [25000, 11.104, 155],
  [30000, 8.885, 180],
  [35000, 7.041, 205],
  [40000, 5.538, 230],
  [45000, 4.355, 255],
  [50000, 3.425, 280],
];

/** Table III, friction. */
export const tableThree: readonly (readonly [number, number])[] = [
  [1000, 70],
  [2000, 70],
  [3000, 70],
  [5000, 70],
  [10000, 80],
  [15000, 90],
  [20000, 100],
  [25000, 120],
  [30000, 140],
  [35000, 160],
  [40000, 180],
  [50000, 250],
];

/** Table IV, barometric scale. */
export const tableFour: readonly (readonly [number, number])[] = [
  [28.1, -1727],
  [28.5, -1340],
  [29, -863],
  [29.5, -392],
  [29.92, 0],
  [30.5, 531],
  [30.9, 893],
  [30.99, 974],
];

/** An altimeter without any error, tested to `topFt`, every point read. */
export function perfectAltimeter(topFt = 20_000): AltimeterReadings {
  return {
    method: 'appendix-e-tables',
    makerProcedurePassed: null,
    testedToFt: topFt,
    scaleError: tableOne.filter(([atFt]) => atFt <= topFt).map(([atFt]) => ({ atFt, indicatedFt: atFt })),
    hysteresisHalf: { atFt: topFt / 2, ascendingFt: topFt / 2, descendingFt: topFt / 2 },
    hysteresisTwoFifths: { atFt: topFt * 0.4, ascendingFt: topFt * 0.4, descendingFt: topFt * 0.4 },
    afterEffect: { beforeFt: 0, afterFt: 0 },
    friction: tableThree.filter(([atFt]) => atFt <= topFt).map(([atFt]) => ({ atFt, changeFt: 0 })),
    caseLeakFt: 0,
    baroFromInHg: 28.1,
    baroToInHg: 30.99,
    baroScale: tableFour.map(([settingInHg, differenceFt]) => ({ settingInHg, differenceFt })),
  };
}

/** A class B Mode S unit in the middle of every limit, bench set, no options. */
export function goodModeS(): TransponderReadings {
  return {
    equipmentClass: 'mode-s-2b',
    testSet: 'bench',
    tighterFrequency: false,
    highPower: false,
    diversity: false,
    replyMHz: 1090,
    suppressionRatePerS: 235,
    repliesEqualPercent: 0,
    repliesNineDbPercent: 100,
    mtlModeADbm: -73,
    mtlModeCDbm: -73,
    mtlModeSDbm: -74,
    peakPowerW: 200,
    peakPowerDbw: null,
    diversityIsolationDb: null,
    ownAddressAnswered: true,
    wrongAddressesTried: 2,
    wrongAddressesAnswered: 0,
    altitudeReplyAgrees: true,
    identityReplyAgrees: true,
    longFormatsFitted: false,
    longFormatsCorrect: null,
    allCallCorrect: true,
    atcrbsOnlyAllCallSilent: true,
    combinedAllCallCorrect: null,
    squitterCorrect: true,
  };
}

/** The same for ATCRBS: what concerns Mode S alone is not recorded. */
export function goodAtcrbs(): TransponderReadings {
  return {
    ...goodModeS(),
    equipmentClass: 'atcrbs-1a',
    mtlModeSDbm: null,
    ownAddressAnswered: null,
    wrongAddressesTried: null,
    wrongAddressesAnswered: null,
    altitudeReplyAgrees: null,
    identityReplyAgrees: null,
    longFormatsFitted: null,
    allCallCorrect: null,
    atcrbsOnlyAllCallSilent: null,
    squitterCorrect: null,
    tighterFrequency: null,
    highPower: null,
    diversity: null,
  };
}

export function vorCheck(method: VorReadings['method'], expectedDeg: number, indicatedDeg: number): VorReadings {
  return {
    method,
    expectedDeg,
    indicatedDeg,
    otherIndicatedDeg: null,
    stationEntryMade: true,
    earlierMethodsUnavailable: true,
    independentUnits: null,
    sameStation: null,
  };
}

export function dualVorCheck(oneDeg: number, otherDeg: number): VorReadings {
  return {
    ...vorCheck('dual', 0, oneDeg),
    expectedDeg: null,
    otherIndicatedDeg: otherDeg,
    independentUnits: true,
    sameStation: true,
  };
}
