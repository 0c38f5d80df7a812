import type { Sourced } from './source.js';

/** Maximum certificated take-off weight up to which an aircraft is small; above it, it is large. */
export const smallUpToLb: Sourced<number> = {
  value: 12_500,
  source: {
    document: '14 CFR',
    paragraph: '1.1, small aircraft, large aircraft',
    edition: 'eCFR title 14, issue of 2026-08-24',
    status: 'verified',
  },
};
