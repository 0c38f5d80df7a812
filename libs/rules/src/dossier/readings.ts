import { z } from 'zod';
import type { Read } from '../catalogue/read.js';

/**
 * What a person reads off instruments and test sets, with the unit in each name. `null` means "not recorded", never
 * "does not apply": the calculation that judges the readings decides what it needs. The day stands on the record.
 */

const altitudeFt = z.int().min(-2000).max(60_000);
const bearingDeg = z.number().min(0).max(360);
const sensitivityDbm = z.number().min(-120).max(0);
const percent = z.number().min(0).max(100);

/** One point of a test: the altitude that the pressure stands for, and what the altimeter showed there. */
export const scaleReading = z.object({ atFt: altitudeFt, indicatedFt: altitudeFt }).meta({ id: 'ScaleReading' });

/** The same pressure read on the way up and on the way down. */
export const hysteresisReading = z
  .object({ atFt: altitudeFt, ascendingFt: altitudeFt, descendingFt: altitudeFt })
  .meta({ id: 'HysteresisReading' });

/** Indication at ambient pressure before and after the run, corrected for any change of ambient pressure. */
export const afterEffectReading = z
  .object({ beforeFt: altitudeFt, afterFt: altitudeFt })
  .meta({ id: 'AfterEffectReading' });

/** Change of indication when vibration is applied. */
export const frictionReading = z
  .object({ atFt: altitudeFt, changeFt: z.int().min(-2000).max(2000) })
  .meta({ id: 'FrictionReading' });

/** Change of indication when the barometric scale is set away from 29.92. */
export const baroReading = z
  .object({ settingInHg: z.number().min(27).max(32), differenceFt: z.int().min(-4000).max(4000) })
  .meta({ id: 'BaroReading' });

export const altimeterMethod = z.enum(['appendix-e-tables', 'maker-procedure']).meta({ id: 'AltimeterMethod' });

/** Part 43 appendix E(b). An empty list is "nothing recorded". */
export const altimeterReadings = z
  .object({
    /** Appendix E(b)(2) lets air-data computers and internally corrected altimeters follow their maker's procedure. */
    method: altimeterMethod.nullable(),
    makerProcedurePassed: z.boolean().nullable(),
    testedToFt: altitudeFt.nullable(),
    scaleError: z.array(scaleReading).max(60),
    hysteresisHalf: hysteresisReading.nullable(),
    hysteresisTwoFifths: hysteresisReading.nullable(),
    afterEffect: afterEffectReading.nullable(),
    friction: z.array(frictionReading).max(60),
    /** Change in one minute with the case at 18,000 ft. */
    caseLeakFt: z.int().min(-5000).max(5000).nullable(),
    /** Ends of the altimeter's setting range: points outside it are not asked for. */
    baroFromInHg: z.number().min(20).max(32).nullable(),
    baroToInHg: z.number().min(20).max(34).nullable(),
    baroScale: z.array(baroReading).max(40),
  })
  .meta({ id: 'AltimeterReadings' });
export type AltimeterReadings = Read<typeof altimeterReadings>;

/** Classes named by part 43 appendix F. */
export const transponderClass = z
  .enum([
    'atcrbs-1a',
    'atcrbs-1b',
    'atcrbs-2a',
    'atcrbs-2b',
    'mode-s-1a',
    'mode-s-1b',
    'mode-s-2a',
    'mode-s-2b',
    'mode-s-3a',
    'mode-s-3b',
    'mode-s-4',
  ])
  .meta({ id: 'TransponderClass' });
export type TransponderClass = Read<typeof transponderClass>;

/** A portable set couples through the air: appendix F allows 3 dB more for the sensitivity measurement. */
export const testSetKind = z.enum(['bench', 'portable']).meta({ id: 'TestSetKind' });

/** Part 43 appendix F. The fields from `diversityIsolationDb` on concern Mode S only. */
export const transponderReadings = z
  .object({
    equipmentClass: transponderClass.nullable(),
    testSet: testSetKind.nullable(),
    /** A class B Mode S unit with the optional tighter reply frequency. */
    tighterFrequency: z.boolean().nullable(),
    /** A class B Mode S unit with the optional high power. */
    highPower: z.boolean().nullable(),
    diversity: z.boolean().nullable(),
    replyMHz: z.number().min(1000).max(1200).nullable(),
    suppressionRatePerS: z.number().min(0).max(5000).nullable(),
    /** Replies with P2 as strong as P1. */
    repliesEqualPercent: percent.nullable(),
    /** Replies with P2 9 dB below P1. */
    repliesNineDbPercent: percent.nullable(),
    mtlModeADbm: sensitivityDbm.nullable(),
    mtlModeCDbm: sensitivityDbm.nullable(),
    /** Mode S format, P6 interrogations. */
    mtlModeSDbm: sensitivityDbm.nullable(),
    /** Power may be read in watts, in dBW, or both. */
    peakPowerW: z.number().min(0).max(5000).nullable(),
    peakPowerDbw: z.number().min(-30).max(40).nullable(),
    diversityIsolationDb: z.number().min(0).max(100).nullable(),
    ownAddressAnswered: z.boolean().nullable(),
    wrongAddressesTried: z.int().min(0).max(1000).nullable(),
    wrongAddressesAnswered: z.int().min(0).max(1000).nullable(),
    /** UF 4: the altitude in the reply is that of Mode C. */
    altitudeReplyAgrees: z.boolean().nullable(),
    /** UF 5: the identity in the reply is that of Mode 3/A. */
    identityReplyAgrees: z.boolean().nullable(),
    /** The unit can answer UF 20, 21 and 24. */
    longFormatsFitted: z.boolean().nullable(),
    longFormatsCorrect: z.boolean().nullable(),
    /** UF 11: address and capability are right in DF 11. */
    allCallCorrect: z.boolean().nullable(),
    /** 0.8 microsecond P4: no reply. */
    atcrbsOnlyAllCallSilent: z.boolean().nullable(),
    /** 1.6 microsecond P4, asked for by the text before 17 October 2023. */
    combinedAllCallCorrect: z.boolean().nullable(),
    squitterCorrect: z.boolean().nullable(),
  })
  .meta({ id: 'TransponderReadings' });
export type TransponderReadings = Read<typeof transponderReadings>;

/** Methods of 14 CFR 91.171 in the order of the rule. */
export const vorMethod = z
  .enum(['test-signal', 'repair-station-signal', 'ground-checkpoint', 'airborne-checkpoint', 'airway', 'dual'])
  .meta({ id: 'VorMethod' });
export type VorMethod = Read<typeof vorMethod>;

export const vorReadings = z
  .object({
    method: vorMethod.nullable(),
    /** Bearing that the signal, checkpoint or airway stands for; not used by the dual check. */
    expectedDeg: bearingDeg.nullable(),
    indicatedDeg: bearingDeg.nullable(),
    /** Second receiver, dual check only. */
    otherIndicatedDeg: bearingDeg.nullable(),
    /** Repair-station signal: the station entered the certified bearing and the date of transmission. */
    stationEntryMade: z.boolean().nullable(),
    /** Airborne methods: none of the methods that the rule puts first was available. */
    earlierMethodsUnavailable: z.boolean().nullable(),
    /** Dual check: two units independent of each other but for the antenna. */
    independentUnits: z.boolean().nullable(),
    /** Dual check: both tuned to one station. */
    sameStation: z.boolean().nullable(),
  })
  .meta({ id: 'VorReadings' });
export type VorReadings = Read<typeof vorReadings>;

export const portHeater = z.enum(['works', 'does-not-work', 'not-fitted']).meta({ id: 'PortHeater' });

export const staticLeakReadings = z
  .object({
    pressurized: z.boolean().nullable(),
    /** How the suction was set, one of the two: height above the field on the altimeter, or difference of pressure. */
    aboveFieldFt: z.int().min(0).max(60_000).nullable(),
    differentialInHg: z.number().min(0).max(30).nullable(),
    /** Pressurized cabins: altitude equivalent to the greatest certificated difference of pressure. */
    cabinEquivalentFt: z.int().min(0).max(60_000).nullable(),
    /** Indicated altitude lost in one minute without pumping. */
    lossFt: z.int().min(-5000).max(60_000).nullable(),
    /** Appendix E(a)(1): free of entrapped moisture and of restrictions. */
    linesClear: z.boolean().nullable(),
    /** Appendix E(a)(3): asked where a heater is installed. */
    portHeater: portHeater.nullable(),
    /** Appendix E(a)(4): nothing about the ports was altered or deformed that would change what they feel. */
    surroundsUnchanged: z.boolean().nullable(),
  })
  .meta({ id: 'StaticLeakReadings' });
export type StaticLeakReadings = Read<typeof staticLeakReadings>;

/** What the pilot's altimeter showed on 29.92, and what the transponder sent. */
export const correspondencePoint = z
  .object({ altimeterFt: altitudeFt, reportedFt: altitudeFt })
  .meta({ id: 'CorrespondencePoint' });

export const correspondenceReadings = z
  .object({ points: z.array(correspondencePoint).max(100) })
  .meta({ id: 'CorrespondenceReadings' });
export type CorrespondenceReadings = Read<typeof correspondenceReadings>;

/** Magnetic heading flown or set, and what the compass showed. */
export const compassPoint = z.object({ headingDeg: bearingDeg, compassDeg: bearingDeg }).meta({ id: 'CompassPoint' });

export const compassReadings = z
  .object({
    points: z.array(compassPoint).max(72),
    enginesRunning: z.boolean().nullable(),
    /** Whether the card says if the radios were on or off. */
    radiosStated: z.boolean().nullable(),
    /** Excess caused by electric loads: a stabilized direction indicator is fitted and a placard names the loads. */
    electricLoadsPlacarded: z.boolean().nullable(),
  })
  .meta({ id: 'CompassReadings' });
export type CompassReadings = Read<typeof compassReadings>;

export const bondKind = z.enum(['equipment-frame', 'jumper-connection', 'static-bond']).meta({ id: 'BondKind' });
export type BondKind = Read<typeof bondKind>;

export const bondPoint = z
  .object({
    kind: bondKind,
    place: z.string().trim().min(1).max(200),
    milliohm: z.number().min(0).max(10_000_000).nullable(),
  })
  .meta({ id: 'BondPoint' });

export const bondingReadings = z.object({ points: z.array(bondPoint).max(200) }).meta({ id: 'BondingReadings' });
export type BondingReadings = Read<typeof bondingReadings>;

/** One frequency that a transmitter sent on while the satellites were watched. */
export const interferencePoint = z
  .object({
    transmitter: z.string().trim().min(1).max(80),
    frequencyMHz: z.number().min(118).max(137),
    navigationLost: z.boolean().nullable(),
  })
  .meta({ id: 'InterferencePoint' });

export const interferenceReadings = z
  .object({ points: z.array(interferencePoint).max(100) })
  .meta({ id: 'InterferenceReadings' });
export type InterferenceReadings = Read<typeof interferenceReadings>;
