import type { Sourced, SourceRef } from './source.js';

function displays(paragraph: string): SourceRef {
  return { document: 'AC 23.1311-1C', paragraph, edition: '17 Nov 2011', status: 'secondary' };
}

export interface ViewZone {
  readonly horizontalDeg: number;
  readonly upDeg: number;
  readonly downDeg: number;
}

/** Normal line of sight below the horizontal, degrees. */
export const lineOfSightBelowDeg: Sourced<number> = { value: 15, source: displays('15.2') };

/** Angles from the normal line of sight: eye rotation only; for warnings and primary indication. */
export const optimumView: Sourced<ViewZone> = {
  value: { horizontalDeg: 15, upDeg: 15, downDeg: 15 },
  source: displays('15.2'),
};

/** With the least head rotation; for important and often used information. */
export const maximumView: Sourced<ViewZone> = {
  value: { horizontalDeg: 35, upDeg: 40, downDeg: 20 },
  source: displays('15.3'),
};

/** Nominal holes of round instruments, inches. Working cut-outs are a little wider: the maker's drawing says how much. */
export const instrumentHolesIn: Sourced<{ readonly large: number; readonly small: number }> = {
  value: { large: 3.125, small: 2.25 },
  source: {
    document: 'MS33638',
    paragraph: 'case sizes, as the trade names them',
    edition: 'all',
    status: 'from-memory',
  },
};
