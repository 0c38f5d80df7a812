import type { Sourced, SourceRef } from './source.js';

const paragraph102c: SourceRef = {
  document: 'AC 43.13-1B',
  paragraph: '10-2c',
  edition: 'change 1',
  status: 'verified',
};

/** Weight change that may be neglected, by empty weight: below the first bound, up to the second, above it. Pounds. */
export const negligibleWeight: Sourced<
  readonly { readonly emptyBelowLb: number; readonly includesBound: boolean; readonly mostLb: number }[]
> = {
  source: paragraph102c,
  value: [
    { emptyBelowLb: 5000, includesBound: false, mostLb: 1 },
    { emptyBelowLb: 50000, includesBound: true, mostLb: 2 },
    { emptyBelowLb: Number.MAX_SAFE_INTEGER, includesBound: true, mostLb: 5 },
  ],
};

/** Shift of the centre of gravity that may be neglected: less than this share of the mean chord, fixed wing. */
export const negligibleShiftOfChord: Sourced<number> = { value: 0.0005, source: paragraph102c };
/** Rotary wing: less than this share of the allowable range. */
export const negligibleShiftOfRange: Sourced<number> = { value: 0.002, source: paragraph102c };

/** Fuel for balance checks in pounds: METO horsepower over two. */
export const minimumFuelLbPerHorsepower: Sourced<number> = {
  value: 0.5,
  source: { ...paragraph102c, paragraph: '10-2p' },
};
export const oilLbPerGallon: Sourced<number> = { value: 7.5, source: { ...paragraph102c, paragraph: '10-2q' } };

/** Where the adverse loadings are worked out. */
export const adverseLoading: Readonly<Record<'forward' | 'aft', SourceRef>> = {
  forward: { ...paragraph102c, paragraph: 'figure 10-10' },
  aft: { ...paragraph102c, paragraph: 'figure 10-11' },
};

/** Whether the oil belongs to the empty weight, by certification basis. */
export const oilInEmptyWeight: Sourced<Readonly<Record<'car-3' | 'part-23', boolean>>> = {
  value: { 'car-3': false, 'part-23': true },
  source: { ...paragraph102c, paragraph: '10-15' },
};
