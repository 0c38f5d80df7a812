import type { Sourced, SourceRef } from './source.js';

const part23: SourceRef = {
  document: '14 CFR 23.1325',
  paragraph: '(b)(2)(i)',
  edition: 'before amendment 23-64',
  status: 'verified',
};

/** Appendix E(a) itself prints no figure except for part 25 airplanes; this is the one the trade uses. */
export const staticLeakUnpressurized: Sourced<{
  readonly lossFtPerMinute: number;
  readonly aboveFieldFt: number;
  readonly differentialInHg: number;
}> = { value: { lossFtPerMinute: 100, aboveFieldFt: 1000, differentialInHg: 1 }, source: part23 };

/** What the test asks besides the leak: lines clear (1), the heater of the ports where there is one (3), the skin about the ports as it was (4). */
export const staticSystemCondition: SourceRef = {
  document: '14 CFR part 43 appendix E',
  paragraph: '(a)(1), (3), (4)',
  edition: '30 Dec 2016',
  status: 'verified',
};

/** Pressurized cabins: the greater of the share of the equivalent altitude and the feet. */
export const staticLeakPressurized: Sourced<{ readonly shareOfEquivalent: number; readonly lossFtPerMinute: number }> =
  {
    value: { shareOfEquivalent: 0.02, lossFtPerMinute: 100 },
    source: { ...part23, paragraph: '(b)(2)(ii)' },
  };
