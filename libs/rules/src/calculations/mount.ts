import {
  cabinMassItems,
  emergencyLanding,
  equipmentTestFactors,
  forwardWhereNobodyIsStruck,
  limitManoeuvre,
  rotorcraftMassItems,
  transportTestFactors,
} from '../facts/load-factors.js';
import { numberWithin, positive } from './errors.js';
import { roundTo } from './rounding.js';

export interface MountFactors {
  readonly forward: number;
  readonly up: number;
  readonly side: number;
  readonly down: number;
}

/**
 * Ultimate factors that the mount of an added unit must bear. `massItems`: the basis has 23.561(b)(3). `couldStrike`: torn loose it could
 * strike an occupant.
 */
export function mountFactors({
  acrobatic,
  massItems,
  couldStrike,
}: {
  readonly acrobatic: boolean;
  readonly massItems: boolean;
  readonly couldStrike: boolean;
}): MountFactors {
  const table = equipmentTestFactors.value[acrobatic ? 'acrobatic' : 'normal-utility'];
  const up = acrobatic ? emergencyLanding.value.upAcrobatic : emergencyLanding.value.up;
  if (!couldStrike) return { ...table, up, forward: forwardWhereNobodyIsStruck.value };
  if (!massItems) return { ...table, up, forward: emergencyLanding.value.forward };
  const { forward, side } = cabinMassItems.value;
  return { forward, side, up: Math.max(up, cabinMassItems.value.up), down: table.down };
}

/** The same for a rotorcraft, where the unit could injure somebody. `since27_25`: the basis has the greater factors of that amendment. */
export function rotorcraftMountFactors(since27_25: boolean): MountFactors {
  return rotorcraftMassItems.value[since27_25 ? 'since' : 'before'];
}

/** The same for the transport category; null where only the maker of the aircraft can say. */
export function transportMountFactors(couldStrike: boolean): Readonly<Record<keyof MountFactors, number | null>> {
  const { forward, up, side } = transportTestFactors.value;
  return { forward: couldStrike ? forward : forwardWhereNobodyIsStruck.value, up, side, down: null };
}

/** Pounds in each direction for a unit of this mass, to 0.1 lb. Throws `CalculationError` for an impossible mass. */
export function mountLoadsLb(massLb: number, factors: MountFactors): MountFactors {
  const loadOf = (factor: number) => mountLoadLb(massLb, factor);
  return {
    forward: loadOf(factors.forward),
    up: loadOf(factors.up),
    side: loadOf(factors.side),
    down: loadOf(factors.down),
  };
}

/** Pounds for a unit of this mass at one factor, to 0.1 lb. Throws `CalculationError` for an impossible mass. */
export function mountLoadLb(massLb: number, factor: number): number {
  return roundTo(positive('massLb', massLb, 10_000) * factor, 1);
}

/** Limit manoeuvring factor of 23.337(a) by category and maximum weight, to 0.01. Throws `CalculationError` for an impossible weight. */
export function limitManoeuvreFactor(category: 'normal' | 'utility' | 'acrobatic', maxWeightLb: number): number {
  const weight = numberWithin('maxWeightLb', maxWeightLb, 1, 1_000_000);
  if (category !== 'normal') return limitManoeuvre.value[category];
  return roundTo(Math.min(limitManoeuvre.value.normal, 2.1 + 24_000 / (weight + 10_000)), 2);
}
