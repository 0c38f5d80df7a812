import type { Sourced, SourceRef } from './source.js';

function practice(paragraph: string, status: SourceRef['status']): SourceRef {
  return { document: 'AC 43.13-1B', paragraph, edition: 'change 1', status };
}

export interface BondLimit {
  readonly milliohm: number;
  /** False: the value itself is already too much. */
  readonly inclusive: boolean;
}

/** Resistance by kind of bond. */
export const bondLimits: Readonly<Record<'equipment-frame' | 'jumper-connection' | 'static-bond', Sourced<BondLimit>>> =
  {
    'equipment-frame': { value: { milliohm: 2.5, inclusive: false }, source: practice('11-188f', 'verified') },
    'jumper-connection': { value: { milliohm: 3, inclusive: true }, source: practice('11-189', 'verified') },
    'static-bond': {
      value: { milliohm: 1000, inclusive: false },
      source: practice('11-187c, as a training page gives it', 'secondary'),
    },
  };

/** Isolated conducting parts are bonded against static if they have more than this area and are longer than this. */
export const staticBondAbove: Sourced<{ readonly areaSqIn: number; readonly lengthIn: number }> = {
  value: { areaSqIn: 3, lengthIn: 3 },
  source: practice('11-187c', 'verified'),
};

/** Hours within which a place that was bared for a bond gets its finish back. */
export const refinishWithinHours: Sourced<number> = { value: 24, source: practice('11-189a', 'verified') };
