import type { Sourced } from './source.js';

export interface StrandRow {
  /** Gauges from the thinnest to the thickest; 00, 000 and 0000 are -1, -2 and -3. */
  readonly fromAwg: number;
  readonly toAwg: number;
  /** Least and greatest number of strands; null: and up. */
  readonly strands: readonly [least: number, most: number | null];
  readonly nicked: number;
  readonly broken: number;
}

/** Strands of a copper conductor that may be damaged. Of aluminium, gauges 8 to 000, none may be. */
export const damagedStrands: Sourced<readonly StrandRow[]> = {
  source: { document: 'AC 43.13-1B', paragraph: 'table 11-13', edition: 'change 1', status: 'verified' },
  value: [
    { fromAwg: 24, toAwg: 14, strands: [19, 19], nicked: 2, broken: 0 },
    { fromAwg: 12, toAwg: 10, strands: [37, 37], nicked: 4, broken: 0 },
    { fromAwg: 8, toAwg: 4, strands: [133, 133], nicked: 6, broken: 6 },
    { fromAwg: 2, toAwg: 1, strands: [665, 817], nicked: 6, broken: 6 },
    { fromAwg: 0, toAwg: -1, strands: [1045, 1330], nicked: 6, broken: 6 },
    { fromAwg: -2, toAwg: -3, strands: [1665, null], nicked: 6, broken: 6 },
  ],
};

/** Nominal rating of a switch over the continuous current that it switches, by the voltage of the system and the load. */
export const switchDerating: Sourced<
  Readonly<
    Record<
      12 | 28,
      { readonly lamp: number; readonly inductive: number; readonly resistive: number; readonly motor: number }
    >
  >
> = {
  source: { document: 'AC 43.13-1B', paragraph: 'table 11-4', edition: '8 Sep 1998', status: 'verified' },
  value: {
    12: { lamp: 5, inductive: 2, resistive: 1, motor: 2 },
    28: { lamp: 8, inductive: 4, resistive: 2, motor: 3 },
  },
};

/** Inches between supports of a wire at most, where no duct or conduit carries it; and beyond which the bundle between them is tied. */
export const supportsIn: Sourced<{ readonly apartMost: number; readonly tiedAbove: number }> = {
  value: { apartMost: 24, tiedAbove: 12 },
  source: { document: 'AC 43.13-1B', paragraph: '11-96a, 11-158', edition: 'change 1', status: 'verified' },
};
