import type { Sourced, SourceRef } from './source.js';

function rule(section: string, paragraph: string): SourceRef {
  return { document: `14 CFR ${section}`, paragraph, edition: 'Sept 2026', status: 'verified' };
}

/** Whole calendar months: good through the last day of the month that many months on. */
export const calendarMonths = {
  annual: { value: 12, source: rule('91.409', '(a)') },
  progressive: { value: 12, source: rule('91.409', '(d)') },
  lightSportCondition: { value: 12, source: rule('91.327', '(b)(2)') },
  staticAndAltimeter: { value: 24, source: rule('91.411', '(a)(1)') },
  transponder: { value: 24, source: rule('91.413', '(a)') },
} as const satisfies Record<string, Sourced<number>>;

/** Hours of time in service between inspections, and the most flown beyond on the way to the inspection. */
export const hundredHour = {
  everyHours: { value: 100, source: rule('91.409', '(b)') },
  enRouteHours: { value: 10, source: rule('91.409', '(b)') },
} as const;

/** Hours within which the copy of the alteration form is sent, from approval for return to service. */
export const alterationFormHours: Sourced<number> = {
  value: 48,
  source: { document: '14 CFR part 43 appendix B', paragraph: '(a)', edition: 'Sept 2026', status: 'verified' },
};
