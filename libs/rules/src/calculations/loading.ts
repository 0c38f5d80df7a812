import type { Envelope, Station } from '../dossier/installation.js';
import { numberWithin, positive } from './errors.js';
import type { MassItem, MassResult } from './mass.js';
import { loadedCentre } from './mass.js';
import { roundTo } from './rounding.js';

/** A loading with the limits at its weight; null beyond the heaviest weight of the envelope. */
export interface Loading extends MassResult {
  readonly limits: { readonly forwardIn: number; readonly aftIn: number } | null;
}

/**
 * Limits at a weight, to 0.001 in: straight between two points, below the lightest those of the lightest; null above the heaviest.
 * Points may come in any order, but the two of a step (one weight) from the lighter side to the heavier.
 */
export function limitsAt(weightLb: number, points: Envelope['points']): Loading['limits'] {
  const sorted = byWeight(points);
  const above = sorted.find((point) => point.weightLb >= weightLb);
  const below = sorted.findLast((point) => point.weightLb <= weightLb) ?? above;
  if (!above || !below) return null;
  // Two points at one weight: a step, of which the tighter side counts.
  if (above.weightLb === below.weightLb)
    return {
      forwardIn: Math.max(above.forwardIn, below.forwardIn),
      aftIn: Math.min(above.aftIn, below.aftIn),
    };
  const share = (weightLb - below.weightLb) / (above.weightLb - below.weightLb);
  const between = (from: number, to: number) => roundTo(from + share * (to - from), 3);
  return { forwardIn: between(below.forwardIn, above.forwardIn), aftIn: between(below.aftIn, above.aftIn) };
}

/**
 * The adverse loadings of AC 43.13-1B figures 10-10 and 10-11: what is always aboard, then the stations filled one after the other from the
 * front (for the forward check) and from the rear (for the aft check), up to the greatest weight. At each weight no loading that the
 * stations allow lies farther forward or aft. The worst of each way, by its margin to the limit in inches, with every station filled little by
 * little: a limit that moves with weight may be passed on the way from one full station to the next. Arms and limits to 0.001 in.
 * Throws `CalculationError` for numbers that no aircraft has.
 */
export function adverseLoadings(
  empty: MassItem,
  stations: readonly Station[],
  points: Envelope['points'],
): { readonly forward: Loading; readonly aft: Loading } {
  const mostLb = Math.max(...points.map((point) => point.weightLb));
  const byArm = [...stations].sort((a, b) => a.armIn - b.armIn);
  const always = [empty, ...stations.map(({ leastLb, armIn }) => ({ weightLb: leastLb, armIn }))];
  const worst = (order: readonly Station[], side: Side, margin: (loading: Loading) => number) =>
    [always, ...fillings(always, order, mostLb).flatMap((each) => partly(each, points, side))]
      .map((items): Loading => {
        const centre = loadedCentre(items);
        return { ...centre, limits: limitsAt(centre.weightLb, points) };
      })
      .reduce((least, each) => (margin(each) < margin(least) ? each : least));
  return {
    forward: worst(byArm, 'forwardIn', ({ armIn, limits }) => (limits ? armIn - limits.forwardIn : -Infinity)),
    aft: worst(byArm.toReversed(), 'aftIn', ({ armIn, limits }) => (limits ? limits.aftIn - armIn : -Infinity)),
  };
}

type Side = 'forwardIn' | 'aftIn';

/** One station as it fills: what is aboard before, and the most that it adds. */
interface Filling {
  readonly before: readonly MassItem[];
  readonly added: MassItem;
}

/** The stations in their order; the last one only as far as the weight allows. */
function fillings(always: readonly MassItem[], order: readonly Station[], mostLb: number): readonly Filling[] {
  const found: Filling[] = [];
  let before = always;
  for (const { armIn, leastLb, mostLb: full } of order) {
    const added = { weightLb: Math.min(full - leastLb, mostLb - sumOf(before, weightOf)), armIn };
    if (added.weightLb <= 0) continue;
    found.push({ before, added });
    before = [...before, added];
  }
  return found;
}

/**
 * The loads of a station at which the margin may be least: full, where the limit bends, and where the margin turns between two bends. While the
 * station at arm a fills, the centre is a + c/w at weight w, with c the moment about a of all that was aboard before. Over a limit
 * p + q w the margin (a + c/w) - (p + q w) has the derivative -c/w^2 - q, and that is nought at w^2 = -c/q.
 */
function partly({ before, added }: Filling, points: Envelope['points'], side: Side): readonly (readonly MassItem[])[] {
  const from = sumOf(before, weightOf);
  const moment = sumOf(before, ({ weightLb, armIn }) => weightLb * (armIn - added.armIn));
  const sorted = byWeight(points);
  const turns = sorted.flatMap((point, index) => {
    const next = sorted[index + 1];
    if (!next || next.weightLb === point.weightLb) return [];
    const slope = (next[side] - point[side]) / (next.weightLb - point.weightLb);
    const weight = Math.sqrt(-moment / slope);
    return weight > point.weightLb && weight < next.weightLb ? [weight] : [];
  });
  const onTheWay = [...sorted.map(weightOf), ...turns].filter(
    (weight) => weight > from && weight < from + added.weightLb,
  );
  return [...onTheWay.map((weight) => weight - from), added.weightLb].map((weightLb) => [
    ...before,
    { weightLb, armIn: added.armIn },
  ]);
}

function byWeight(points: Envelope['points']): Envelope['points'] {
  return [...points].sort((a, b) => a.weightLb - b.weightLb);
}

function weightOf({ weightLb }: { readonly weightLb: number }): number {
  return weightLb;
}

function sumOf<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((sum, each) => sum + of(each), 0);
}

/**
 * A centre as percent of the mean chord behind its leading edge, to 0.01. Throws `CalculationError` for impossible numbers.
 */
export function percentOfChord(input: {
  readonly armIn: number;
  readonly leadingEdgeIn: number;
  readonly chordIn: number;
}): number {
  const behind =
    numberWithin('armIn', input.armIn, -10_000, 10_000) -
    numberWithin('leadingEdgeIn', input.leadingEdgeIn, -10_000, 10_000);
  return roundTo((behind / positive('chordIn', input.chordIn, 10_000)) * 100, 2);
}

/**
 * Ballast in pounds, to 0.01, that moves the centre of an aircraft from where it is to where it should be.
 * Throws `CalculationError` for impossible numbers or ballast that would move the centre the other way. Source: FAA-H-8083-1, from memory.
 */
export function ballastLb(input: {
  readonly aircraftLb: number;
  readonly centreIn: number;
  readonly wantedIn: number;
  readonly ballastArmIn: number;
}): number {
  const aircraft = positive('aircraftLb', input.aircraftLb, 1_000_000);
  const wanted = numberWithin('wantedIn', input.wantedIn, -10_000, 10_000);
  const moved = wanted - numberWithin('centreIn', input.centreIn, -10_000, 10_000);
  const lever = numberWithin('ballastArmIn', input.ballastArmIn, -10_000, 10_000) - wanted;
  return roundTo(positive('ballastArmIn', (aircraft * moved) / lever, 1_000_000), 2);
}
