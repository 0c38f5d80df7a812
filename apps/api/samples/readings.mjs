// Readings in tolerance, in the form of the record; what is not named was not read.
const scale = [-1000, 0, 500, 1000, 1500, 2000, 3000, 4000, 6000, 8000, 10000, 12000, 14000, 16000, 18000, 20000];
const friction = [1000, 2000, 3000, 5000, 10000, 15000, 20000];
const baro = [
  [28.1, -1727],
  [28.5, -1340],
  [29, -863],
  [29.5, -392],
  [29.92, 0],
  [30.5, 531],
  [30.9, 893],
  [30.99, 974],
];

export const altimeter = () => ({
  altimeter: {
    method: 'appendix-e-tables',
    makerProcedurePassed: null,
    testedToFt: 20000,
    scaleError: scale.map((atFt, n) => ({ atFt, indicatedFt: atFt + ((n * 5) % 20) - 5 })),
    hysteresisHalf: { atFt: 10000, ascendingFt: 10010, descendingFt: 10040 },
    hysteresisTwoFifths: { atFt: 8000, ascendingFt: 8005, descendingFt: 8030 },
    afterEffect: { beforeFt: 610, afterFt: 622 },
    friction: friction.map((atFt) => ({ atFt, changeFt: 30 })),
    caseLeakFt: 30,
    baroFromInHg: 28,
    baroToInHg: 31,
    baroScale: baro.map(([settingInHg, differenceFt]) => ({ settingInHg, differenceFt })),
  },
});

export const transponder = () => ({
  transponder: {
    equipmentClass: 'mode-s-2a',
    testSet: 'bench',
    tighterFrequency: false,
    highPower: true,
    diversity: false,
    replyMHz: 1090.2,
    suppressionRatePerS: 700,
    repliesEqualPercent: 0.3,
    repliesNineDbPercent: 98,
    mtlModeADbm: -73.2,
    mtlModeCDbm: -73,
    mtlModeSDbm: -74.1,
    peakPowerW: 230,
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
  },
});

export const vor = () => ({
  vor: {
    method: 'test-signal',
    expectedDeg: 0,
    indicatedDeg: 1,
    otherIndicatedDeg: null,
    stationEntryMade: null,
    earlierMethodsUnavailable: null,
    independentUnits: null,
    sameStation: null,
  },
});

export const staticLeak = () => ({
  staticLeak: {
    pressurized: false,
    aboveFieldFt: 1000,
    differentialInHg: null,
    cabinEquivalentFt: null,
    lossFt: 30,
    linesClear: true,
    portHeater: 'not-fitted',
    surroundsUnchanged: true,
  },
});

export const correspondence = () => ({
  correspondence: { points: [1000, 5000, 10000, 15000, 20000].map((ft) => ({ altimeterFt: ft, reportedFt: ft })) },
});
