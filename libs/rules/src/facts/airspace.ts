import type { Sourced } from './source.js';

/** Feet above mean sea level from which a flight over the 48 states needs transponder and ADS-B by its altitude alone. */
export const equippedFromFt: Sourced<number> = {
  value: 10_000,
  source: {
    document: '14 CFR',
    paragraph: '91.215(b)(5)(i), 91.225(d)',
    edition: 'eCFR title 14, issue of 2026-08-24',
    status: 'verified',
  },
};

/** Where class A begins. */
export const classAFromFt: Sourced<number> = {
  value: 18_000,
  source: {
    document: '14 CFR',
    paragraph: '71.33(a)',
    edition: 'eCFR title 14, issue of 2026-09-03',
    status: 'verified',
  },
};
