/**
 * Rounds to `decimals` places, halves away from zero. Engineering values pass through here before they are compared, so
 * that browser and server agree where trigonometry or the noise of a sum differ in the last bits.
 */
export function roundTo(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const magnitude = Math.abs(value) * scale;
  // The nudge lifts halves that binary fractions hold just below the half.
  const rounded = Math.floor(magnitude + 0.5 + magnitude * Number.EPSILON) / scale;
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}

/** The largest number of `decimals` places that is not above the value. */
export function floorTo(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return Math.floor(roundTo(value * scale, 6)) / scale;
}
