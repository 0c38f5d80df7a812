import type { Purpose } from '../verdict/conditions.js';

/** Purposes for which somebody pays for more than the aircraft. Renting without an instructor is not one of them. */
export const forHire = [
  'training-provided',
  'carriage-for-hire',
  'tow-for-hire',
  'aerial-work',
] as const satisfies readonly Purpose[];
