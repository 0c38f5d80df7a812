import type { Awg, WireRow } from '../facts/wire.js';
import {
  aluminiumInPlace,
  aluminiumTemperature,
  copperTemperature,
  groundReturnOhm,
  mainWiresShare,
  protectorTable,
  wireTable,
} from '../facts/wire.js';
import { CalculationError, numberWithin, positive } from './errors.js';
import { floorTo, roundTo } from './rounding.js';

const longestFt = 1_000_000;
const mostA = 1000;

export interface WireRun {
  /** Feet, with the ground wire if one is run. */
  readonly lengthFt: number;
  readonly currentA: number;
  /** Temperature of the conductor, 20 C if left out. */
  readonly conductorC?: number;
}

/**
 * Voltage lost along a copper wire, to 0.0001 V: resistance of table 11-9, corrected for temperature by 11-66c(4).
 * Throws `CalculationError` for a gauge outside the table (24 to 0, then -1, -2, -3 for 00, 000, 0000) or impossible numbers.
 */
export function wireVoltageDrop({ awg, ...run }: WireRun & { readonly awg: Awg }): number {
  return dropOf(rowOf(awg), checked(run));
}

/**
 * The thinnest gauge of table 11-9 that keeps the drop, or null if none does. By drop alone: 20 A over 1.5 ft may come
 * out as a gauge that cannot carry 20 A, so show `smallestWire`, which asks current and protector too.
 */
export function smallestWireForDrop({ dropV, ...run }: WireRun & { readonly dropV: number }): Awg | null {
  const most = positive('dropV', dropV, 1000);
  const conditions = checked(run);
  return wireTable.value.find((row) => dropOf(row, conditions) <= most)?.awg ?? null;
}

/** The longest run in feet, to 0.01 ft downwards, that keeps the drop. Errors as for `wireVoltageDrop`. */
export function longestRun(input: {
  readonly awg: Awg;
  readonly currentA: number;
  readonly dropV: number;
  readonly conductorC?: number;
}): number {
  const { conductorC } = input;
  const temperature = conductorC === undefined ? {} : { conductorC };
  const run = checked({ lengthFt: 1, currentA: positive('currentA', input.currentA, mostA), ...temperature });
  return floorTo(positive('dropV', input.dropV, 1000) / voltsPerFoot(rowOf(input.awg), run), 2);
}

/**
 * Current that a wire may carry in its bundle, to 0.01 A: free-air current by the bundle and the altitude factor, which
 * are read off the curves of AC 43.13-1B (11-69) and given here. Factors lie above 0 and at most 1.
 */
export function bundleCurrent(input: {
  readonly freeAirA: number;
  readonly bundleFactor: number;
  readonly altitudeFactor: number;
}): number {
  const freeAirA = positive('freeAirA', input.freeAirA, mostA);
  return roundTo(
    freeAirA * positive('bundleFactor', input.bundleFactor, 1) * positive('altitudeFactor', input.altitudeFactor, 1),
    2,
  );
}

/**
 * What a harness may carry in all, to 0.1 A: the currents of its wires, times the share of its capacity that is in use (11-69).
 * Throws `CalculationError` for impossible numbers.
 */
export function harnessCurrent(wiresA: readonly number[], share: number): number {
  const sum = wiresA.reduce((total, each, i) => total + positive(`wiresA[${i}]`, each, mostA), 0);
  return roundTo(sum * positive('share', share, 1), 1);
}

/**
 * Temperature of a conductor under load, C to 0.1: ambient plus the rise to its rating, times the root of the share of its greatest current.
 * The estimate of 11-66 lies on the safe side. Throws `CalculationError` for impossible numbers.
 */
export function conductorTemperature(input: {
  readonly ambientC: number;
  readonly ratingC: number;
  readonly currentA: number;
  readonly mostA: number;
}): number {
  const ambient = numberWithin('ambientC', input.ambientC, -70, 300);
  const rating = numberWithin('ratingC', input.ratingC, ambient, 300);
  const share = numberWithin('currentA', input.currentA, 0, mostA) / positive('mostA', input.mostA, mostA);
  return roundTo(ambient + (rating - ambient) * Math.sqrt(share), 1);
}

/**
 * Gauge of an aluminium wire in the place of a copper one: two numbers larger, and no thinner than No. 8. Null where the table has
 * none that thick. Errors as for `wireVoltageDrop`.
 */
export function aluminiumInPlaceOf(copperAwg: Awg): Awg | null {
  const { largerBy, thinnest } = aluminiumInPlace.value;
  const awg = Math.min(rowOf(copperAwg).awg - largerBy, thinnest);
  return wireTable.value.some((row) => row.awg === awg) ? awg : null;
}

/**
 * Voltage lost along an aluminium wire, to 0.0001 V, on the safe side: the resistance of the copper wire that it may stand in for, grown
 * with temperature as aluminium's does (11-66c(4)). Throws `CalculationError` for a gauge thinner than No. 8 or outside the table.
 */
export function aluminiumVoltageDrop({ awg, ...run }: WireRun & { readonly awg: Awg }): number {
  const { largerBy, thinnest } = aluminiumInPlace.value;
  if (rowOf(awg).awg > thinnest) {
    throw new CalculationError(
      'awg',
      `Aluminium wire thinner than No. ${thinnest} is not recommended. Use a thicker one.`,
    );
  }
  // The table has no No. 3: aluminium No. 1 takes the next thinner copper wire that it has, which loses more.
  const thinner = wireTable.value.map((row) => row.awg).filter((each) => each >= awg + largerBy);
  return dropOf(rowOf(Math.min(...thinner)), checked(run), aluminiumTemperature.value);
}

/**
 * Volts that the main power wires may lose between the source and the bus, to 0.01 V: 2 % of the regulated voltage (11-66).
 * Throws `CalculationError` for a voltage that is not above 0.
 */
export function mainWiresDropV(regulatedV: number): number {
  return roundTo(positive('regulatedV', regulatedV, 1000) * mainWiresShare.value, 2);
}

/**
 * Volts lost on the way back through the structure, to 0.001 V, where its resistance is the satisfactory 0.005 ohm (11-66). Well bonded it
 * counts as nothing. Throws `CalculationError` for an impossible current.
 */
export function groundReturnDropV(currentA: number): number {
  return roundTo(numberWithin('currentA', currentA, 0, mostA) * groundReturnOhm.value, 3);
}

/** Largest breaker and fuse of table 11-3 for a copper wire; null where the chart lists none. */
export function protectorFor(awg: Awg): { breakerA: number | null; fuseA: number | null } {
  rowOf(awg);
  const found = protectorTable.value.find((row) => row.awg === awg);
  return { breakerA: found?.breakerA ?? null, fuseA: found?.fuseA ?? null };
}

export interface SmallestWire {
  /** The thinnest gauge that keeps drop, current and protector; null if none in the tables does. */
  readonly awg: Awg | null;
  readonly byDrop: Awg | null;
  readonly byCurrent: Awg | null;
  readonly byProtector: Awg | null;
}

/**
 * The thinnest copper wire that keeps the voltage drop, carries the current and is guarded by the protector.
 * Current: table 11-9 under its note 1, by the wire's temperature rating. Protector: its rating must be at most that of
 * table 11-3 for the gauge and must not be below the load. Errors as for `wireVoltageDrop`.
 */
export function smallestWire({
  dropV,
  wireRatingC,
  protector,
  ...run
}: WireRun & {
  readonly dropV: number;
  readonly wireRatingC: 105 | 150 | 200;
  readonly protector: { readonly kind: 'breaker' | 'fuse'; readonly ratingA: number };
}): SmallestWire {
  const byDrop = smallestWireForDrop({ dropV, ...run });
  const ratingA = positive('protector.ratingA', protector.ratingA, mostA);
  if (ratingA < run.currentA) {
    throw new CalculationError(
      'protector.ratingA',
      `A protector of ${ratingA} A opens at a load of ${run.currentA} A. Choose a larger protector or a smaller load.`,
    );
  }
  const byCurrent = wireTable.value.find((row) => bundleA(row, wireRatingC) >= run.currentA)?.awg ?? null;
  const key = protector.kind === 'breaker' ? 'breakerA' : 'fuseA';
  const byProtector = protectorTable.value.find((row) => (row[key] ?? 0) >= ratingA)?.awg ?? null;
  const gauges = [byDrop, byCurrent, byProtector].filter((awg) => awg !== null);
  // A smaller number is a thicker wire, which keeps what a thinner one keeps; the chart of protectors ends at 0.
  return { awg: gauges.length === 3 ? Math.min(...gauges) : null, byDrop, byCurrent, byProtector };
}

function bundleA(row: WireRow, wireRatingC: 105 | 150 | 200): number {
  const current = { 105: row.bundleA.c105, 150: row.bundleA.c150, 200: row.bundleA.c200 }[wireRatingC];
  if (current === undefined) {
    throw new CalculationError(
      'wireRatingC',
      `${String(wireRatingC)} C is no column of table 11-9. Use 105, 150 or 200.`,
    );
  }
  return current;
}

function checked({ lengthFt, currentA, conductorC = 20 }: WireRun): Required<WireRun> {
  return {
    lengthFt: numberWithin('lengthFt', lengthFt, 0, longestFt),
    currentA: numberWithin('currentA', currentA, 0, mostA),
    conductorC: numberWithin('conductorC', conductorC, -70, 300),
  };
}

function voltsPerFoot(
  row: WireRow,
  { currentA, conductorC }: Required<WireRun>,
  { zeroC, at20C } = copperTemperature.value,
): number {
  return ((row.ohmPer1000Ft / 1000) * currentA * (zeroC + conductorC)) / at20C;
}

function dropOf(row: WireRow, run: Required<WireRun>, temperature = copperTemperature.value): number {
  return roundTo(voltsPerFoot(row, run, temperature) * run.lengthFt, 4);
}

function rowOf(awg: Awg): WireRow {
  const row = wireTable.value.find((candidate) => candidate.awg === awg);
  if (!row) {
    const gauges = wireTable.value.map((candidate) => candidate.awg).join(', ');
    throw new CalculationError(
      'awg',
      `${String(awg)} is no gauge of table 11-9. Use one of ${gauges} (00, 000, 0000 are -1, -2, -3).`,
    );
  }
  return row;
}
