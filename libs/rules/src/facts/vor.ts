import type { Sourced, SourceRef } from './source.js';

function vorRule(paragraph: string): SourceRef {
  return { document: '14 CFR 91.171', paragraph, edition: 'Sept 2026', status: 'verified' };
}

export interface VorMethodFacts {
  /** Largest bearing error, or difference between the two indications. */
  readonly withinDeg: number;
  readonly airborne: boolean;
  /** Allowed only where none of the methods named before it is available. */
  readonly lastResort: boolean;
}

/** Methods in the order of the rule. The dual check has one limit, on the ground and in the air. */
export const vorMethods = {
  'test-signal': { value: { withinDeg: 4, airborne: false, lastResort: false }, source: vorRule('(b)(1)') },
  'repair-station-signal': {
    value: { withinDeg: 4, airborne: false, lastResort: false },
    source: vorRule('(b)(1), (d)'),
  },
  'ground-checkpoint': { value: { withinDeg: 4, airborne: false, lastResort: false }, source: vorRule('(b)(2)') },
  'airborne-checkpoint': { value: { withinDeg: 6, airborne: true, lastResort: true }, source: vorRule('(b)(3)') },
  airway: { value: { withinDeg: 6, airborne: true, lastResort: true }, source: vorRule('(b)(4)') },
  dual: { value: { withinDeg: 4, airborne: false, lastResort: false }, source: vorRule('(c)') },
} as const satisfies Readonly<Record<string, Sourced<VorMethodFacts>>>;

/** What a test signal reads with the needle centred: 0 degrees FROM, or 180 degrees TO. */
export const votBearingsDeg: Sourced<readonly number[]> = {
  value: [0, 180, 360],
  source: { document: 'AIM', paragraph: '1-1-4', edition: 'effective 2026-07-09', status: 'verified' },
};

/** Good on the day of the check and this many days after it; that day D+30 is inside is our reading. */
export const vorCheckDays: Sourced<number> = { value: 30, source: { ...vorRule('(a)(2)'), status: 'reading' } };
