import { numberWithin, positive } from './errors.js';
import { roundTo } from './rounding.js';

/**
 * Angle off the line of sight, degrees to 0.01, of a point `offsetIn` inches from where that line meets a panel square
 * to it at `distanceIn` inches. The sign of the offset is kept. Throws `CalculationError` for impossible numbers.
 */
export function viewAngle({
  offsetIn,
  distanceIn,
}: {
  readonly offsetIn: number;
  readonly distanceIn: number;
}): number {
  const offset = numberWithin('offsetIn', offsetIn, -240, 240);
  return roundTo((Math.atan2(offset, positive('distanceIn', distanceIn, 240)) * 180) / Math.PI, 2);
}
