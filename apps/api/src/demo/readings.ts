import type { ChangeOf } from '@tallywing/rules';

type Readings = NonNullable<ChangeOf<'record.add'>['record']['readings']>;

export const noReadings: Readings = {
  altimeter: null,
  transponder: null,
  vor: null,
  staticLeak: null,
  correspondence: null,
  compass: null,
  bonding: null,
  interference: null,
};

const scaleFt = [
  -1000, 0, 500, 1000, 1500, 2000, 3000, 4000, 6000, 8000, 10000, 12000, 14000, 16000, 18000, 20000,
] as const;
const frictionFt = [1000, 2000, 3000, 5000, 10000, 15000, 20000] as const;
const baro = [
  [28.1, -1727],
  [28.5, -1340],
  [29, -863],
  [29.5, -392],
  [29.92, 0],
  [30.5, 531],
  [30.9, 893],
  [30.99, 974],
] as const;

/** A full test to 20,000 ft with small errors; `off` adds to the error at one point. */
export function altimeterRun(off?: { readonly atFt: number; readonly byFt: number }): Readings {
  return {
    ...noReadings,
    altimeter: {
      method: 'appendix-e-tables',
      makerProcedurePassed: null,
      testedToFt: 20_000,
      scaleError: scaleFt.map((atFt, n) => ({
        atFt,
        indicatedFt: atFt + ((n * 5) % 20) - 5 + (off?.atFt === atFt ? off.byFt : 0),
      })),
      hysteresisHalf: { atFt: 10_000, ascendingFt: 10_010, descendingFt: 10_045 },
      hysteresisTwoFifths: { atFt: 8000, ascendingFt: 8005, descendingFt: 8035 },
      afterEffect: { beforeFt: 620, afterFt: 635 },
      friction: frictionFt.map((atFt, n) => ({ atFt, changeFt: 20 + n * 5 })),
      caseLeakFt: 35,
      baroFromInHg: 28,
      baroToInHg: 31,
      baroScale: baro.map(([settingInHg, differenceFt], n) => ({
        settingInHg,
        differenceFt: differenceFt + (n % 3) * 5,
      })),
    },
  };
}

/** Mode C by the bench; `watts` lets one set come out weak. */
export function transponderC(watts = 190): Readings {
  return { ...noReadings, transponder: { ...atcrbs, equipmentClass: 'atcrbs-1a', peakPowerW: watts } };
}

const atcrbs = {
  testSet: 'bench',
  tighterFrequency: false,
  highPower: true,
  diversity: false,
  replyMHz: 1089.6,
  suppressionRatePerS: 800,
  repliesEqualPercent: 0.4,
  repliesNineDbPercent: 97,
  mtlModeADbm: -73.4,
  mtlModeCDbm: -73.1,
  mtlModeSDbm: null,
  peakPowerW: 190,
  peakPowerDbw: null,
  diversityIsolationDb: null,
  ownAddressAnswered: null,
  wrongAddressesTried: null,
  wrongAddressesAnswered: null,
  altitudeReplyAgrees: null,
  identityReplyAgrees: null,
  longFormatsFitted: null,
  longFormatsCorrect: null,
  allCallCorrect: null,
  atcrbsOnlyAllCallSilent: null,
  combinedAllCallCorrect: null,
  squitterCorrect: null,
} as const;

/** Mode S, class 2A. */
export function transponderS(watts = 220): Readings {
  return {
    ...noReadings,
    transponder: {
      ...atcrbs,
      equipmentClass: 'mode-s-2a',
      replyMHz: 1090.3,
      mtlModeSDbm: -74.2,
      peakPowerW: watts,
      ownAddressAnswered: true,
      wrongAddressesTried: 2,
      wrongAddressesAnswered: 0,
      altitudeReplyAgrees: true,
      identityReplyAgrees: true,
      longFormatsFitted: false,
      allCallCorrect: true,
      atcrbsOnlyAllCallSilent: true,
      squitterCorrect: true,
    },
  };
}

/** Checked against a test signal; `error` in degrees. */
export function vorBySignal(error: number): Readings {
  return {
    ...noReadings,
    vor: {
      method: 'test-signal',
      expectedDeg: 0,
      indicatedDeg: (error + 360) % 360,
      otherIndicatedDeg: null,
      stationEntryMade: null,
      earlierMethodsUnavailable: null,
      independentUnits: null,
      sameStation: null,
    },
  };
}

export function staticLeak(lossFt = 40): Readings {
  return {
    ...noReadings,
    staticLeak: {
      pressurized: false,
      aboveFieldFt: 1000,
      differentialInHg: null,
      cabinEquivalentFt: null,
      lossFt,
      linesClear: true,
      portHeater: 'not-fitted',
      surroundsUnchanged: true,
    },
  };
}

export function correspondence(offFt = 40): Readings {
  const points = [1000, 5000, 10_000, 15_000, 20_000].map((altimeterFt) => ({
    altimeterFt,
    reportedFt: altimeterFt + Math.round(offFt / 100) * 100,
  }));
  return { ...noReadings, correspondence: { points } };
}

export function compassRun(worst = 4): Readings {
  const points = Array.from({ length: 12 }, (_, n) => ({
    headingDeg: n * 30,
    compassDeg: (n * 30 + (n % 2 === 0 ? 2 : n === 3 ? worst : -1) + 360) % 360,
  }));
  return {
    ...noReadings,
    compass: { points, enginesRunning: true, radiosStated: true, electricLoadsPlacarded: false },
  };
}
