import type { SourceRef } from './source.js';

/** The 28-day cycle on which navigation data change. */
export const airac = {
  /** First day of the cycle named `anchorId`. */
  anchorDate: '2020-01-02',
  anchorId: '2001',
  lengthDays: 28,
  source: {
    document: 'ICAO Annex 15',
    paragraph: '6.2, effective dates 2020 (cycles 2001 to 2014)',
    edition: 'table 2020-2029',
    status: 'verified',
  } satisfies SourceRef,
} as const;

/** Minute of the UTC day at which a new cycle takes over in the United States: 0901Z. */
export const airacEffectiveMinute = {
  value: 9 * 60 + 1,
  source: {
    document: 'FAA airspace rules (81 FR 65535, 82 FR 12505, 82 FR 25959, 82 FR 45713)',
    paragraph: 'effective dates, 0901 UTC',
    edition: '2016-2017',
    status: 'verified',
  } satisfies SourceRef,
  /** That databases change over at the same instant as airspace rules is practice; the provider's printed expiry wins. */
  appliesToDatabases: 'from-memory',
} as const;
