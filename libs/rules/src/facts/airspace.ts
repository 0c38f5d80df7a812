import type { Sourced } from './source.js';

/** Feet above mean sea level from which a flight over the 48 states meets equipment rules of its own, whatever airspace was named. */
export const airspaceByAltitude: Sourced<
  readonly { readonly fromFt: number; readonly airspace: 'at-or-above-10000' | 'class-a' }[]
> = {
  value: [
    { fromFt: 10_000, airspace: 'at-or-above-10000' },
    { fromFt: 18_000, airspace: 'class-a' },
  ],
  source: {
    document: '14 CFR',
    paragraph: '91.215(b)(5)(i), 91.225(d)(4); class A from 18,000 ft: 71.33, from memory',
    edition: 'eCFR title 14, issue of 2026-08-24',
    status: 'verified',
  },
};
