import { roundTo } from './rounding.js';

/** Angle between two bearings the short way round, 0 to 180 degrees, to 0.001 degree. */
export function angleBetween(aDeg: number, bDeg: number): number {
  const turned = Math.abs(aDeg - bDeg) % 360;
  return roundTo(Math.min(turned, 360 - turned), 3);
}
