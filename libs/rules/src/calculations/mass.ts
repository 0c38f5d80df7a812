import { negligibleWeight } from '../facts/mass.js';
import { CalculationError, numberWithin } from './errors.js';
import { roundTo } from './rounding.js';

/** Pounds and inches aft of the datum (negative: ahead of it). A removed item has negative weight. */
export interface MassItem {
  readonly weightLb: number;
  readonly armIn: number;
}

export interface MassResult {
  readonly weightLb: number;
  readonly momentLbIn: number;
  readonly armIn: number;
}

const mostLb = 1_000_000;
const mostIn = 10_000;

/**
 * Empty weight and centre after changes. Weight and moment to 0.01, arm and shift to 0.001 in (shift aft is positive).
 * Throws `CalculationError` for numbers that are not finite or a result without weight.
 * Source: AC 43.13-1B chapter 10; sign rules as there.
 */
export function emptyWeightAfter(
  before: MassItem,
  items: readonly MassItem[],
): MassResult & { readonly shiftIn: number } {
  const start = checked(before, 'before');
  const after = centreOf([start, ...items.map((item, i) => checked(item, `items[${i}]`))]);
  return { ...after, shiftIn: roundTo(after.armIn - before.armIn, 3) };
}

/** Weight, moment and centre of gravity of a list of items. Precision and errors as for `emptyWeightAfter`. */
export function loadedCentre(items: readonly MassItem[]): MassResult {
  return centreOf(items.map((item, i) => checked(item, `items[${i}]`)));
}

/** The greatest change of empty weight that AC 43.13-1B 10-2c lets go without a revision, pounds. */
export function negligibleWeightLb(emptyWeightLb: number): number {
  const weight = numberWithin('emptyWeightLb', emptyWeightLb, 1, mostLb);
  const step = negligibleWeight.value.find((row) =>
    row.includesBound ? weight <= row.emptyBelowLb : weight < row.emptyBelowLb,
  );
  return step?.mostLb ?? 0;
}

function checked({ weightLb, armIn }: MassItem, field: string): MassItem {
  return {
    weightLb: numberWithin(`${field}.weightLb`, weightLb, -mostLb, mostLb),
    armIn: numberWithin(`${field}.armIn`, armIn, -mostIn, mostIn),
  };
}

function centreOf(items: readonly MassItem[]): MassResult {
  const weight = items.reduce((sum, item) => sum + item.weightLb, 0);
  const moment = items.reduce((sum, item) => sum + item.weightLb * item.armIn, 0);
  const weightLb = roundTo(weight, 2);
  if (weightLb <= 0) {
    throw new CalculationError(
      'items',
      `The items add up to ${weightLb} lb. Start from a weight that is left after removals.`,
    );
  }
  return { weightLb, momentLbIn: roundTo(moment, 2), armIn: roundTo(moment / weight, 3) };
}
