import { oldPart23 } from './old-part-23.js';
import { rotorcraftMassItemsSince } from './part-27.js';
import type { Sourced, SourceRef } from './source.js';

/** Limit manoeuvring factor; the normal category's is 2.1 + 24,000 / (W + 10,000), W in pounds, and need not exceed the figure here. */
export const limitManoeuvre: Sourced<{
  readonly normal: number;
  readonly utility: number;
  readonly acrobatic: number;
}> = {
  value: { normal: 3.8, utility: 4.4, acrobatic: 6 },
  source: oldPart23('23.337', '(a)'),
};

export const ultimateOverLimit: Sourced<number> = {
  value: 1.5,
  source: oldPart23('23.303', 'whole section'),
};

/** Ultimate factors of an emergency landing: occupants; and items of mass in the cabin, only where the basis has that amendment. */
export const emergencyLanding: Sourced<{
  readonly up: number;
  readonly upAcrobatic: number;
  readonly forward: number;
  readonly side: number;
}> = {
  value: { up: 3, upAcrobatic: 4.5, forward: 9, side: 1.5 },
  source: oldPart23('23.561', '(b)(2)'),
};
export const cabinMassItems: Sourced<{ readonly up: number; readonly forward: number; readonly side: number }> = {
  value: { up: 3, forward: 18, side: 4.5 },
  source: oldPart23('23.561', '(b)(3)'),
};

/** Ultimate factors for an item of mass in the cabin of a rotorcraft that could injure somebody, before amendment 27-25 and since. */
export const rotorcraftMassItems: Sourced<
  Readonly<
    Record<
      'before' | 'since',
      { readonly up: number; readonly forward: number; readonly side: number; readonly down: number }
    >
  >
> = {
  value: { before: { up: 1.5, forward: 4, side: 2, down: 4 }, since: { up: 4, forward: 16, side: 8, down: 20 } },
  source: rotorcraftMassItemsSince.source,
};

/** Factors an added box may be tested with. */
export const equipmentTestFactors: Sourced<
  Readonly<
    Record<
      'normal-utility' | 'acrobatic',
      { readonly side: number; readonly up: number; readonly forward: number; readonly down: number }
    >
  >
> = {
  value: {
    'normal-utility': { side: 1.5, up: 3, forward: 9, down: 6.6 },
    acrobatic: { side: 1.5, up: 4.5, forward: 9, down: 9 },
  },
  source: {
    document: 'AC 43.13-2B',
    paragraph: 'chapter 1, static test factors',
    edition: '2008',
    status: 'from-memory',
  },
};

/** The same for the transport category. Upward it is the least, and there as downward the maker of the aircraft is to be asked. */
export const transportTestFactors: Sourced<{
  readonly side: number;
  readonly up: number;
  readonly forward: number;
  readonly askMaker: readonly ('up' | 'down')[];
}> = {
  value: { side: 1.5, up: 2, forward: 9, askMaker: ['up', 'down'] },
  source: equipmentTestFactors.source,
};

/** Enough forward where the unit, torn loose, could strike no occupant: mounted outside, ahead of them or to one side. */
export const forwardWhereNobodyIsStruck: Sourced<number> = {
  value: 2,
  source: {
    document: 'AC 43.13-2A',
    paragraph: 'chapter 1, note on forward loads',
    edition: '1977',
    status: 'secondary',
  },
};

/** What is added to a support is checked together with what the support bears already. */
export const sumOnOneSupport: SourceRef = {
  document: 'AC 43.13-2A',
  paragraph: 'chapter 1, static loads',
  edition: '1977',
  status: 'secondary',
};
