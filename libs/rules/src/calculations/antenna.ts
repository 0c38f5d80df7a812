import { antennaDragFactor } from '../facts/antenna.js';
import { numberWithin } from './errors.js';
import { roundTo } from './rounding.js';

interface Placed {
  readonly xIn: number | null;
  readonly yIn: number | null;
}

const mostIn = 10_000;

/** Inches between two antennas along and across the aircraft, to 0.1 in; null where a place is not recorded or no aircraft has it. */
export function distanceBetween(one: Placed, other: Placed): number | null {
  const places = [one.xIn, one.yIn, other.xIn, other.yIn];
  const [x, y, otherX, otherY] = places.flatMap((each) => (each !== null && Math.abs(each) <= mostIn ? [each] : []));
  if (x === undefined || y === undefined || otherX === undefined || otherY === undefined) return null;
  return roundTo(Math.hypot(x - otherX, y - otherY), 1);
}

/**
 * Drag of a streamlined antenna at the never-exceed speed, pounds to 0.001. Throws `CalculationError` for impossible numbers.
 * Source: AC 43.13-2B chapter 3, from memory.
 */
export function antennaDragLb({
  frontalAreaSqFt,
  neverExceedMph,
}: {
  readonly frontalAreaSqFt: number;
  readonly neverExceedMph: number;
}): number {
  const area = numberWithin('frontalAreaSqFt', frontalAreaSqFt, 0, 100);
  return roundTo(antennaDragFactor.value * area * numberWithin('neverExceedMph', neverExceedMph, 0, 1000) ** 2, 3);
}
