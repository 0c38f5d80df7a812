import type { Edition } from './editions.js';
import type { Sourced, SourceRef } from './source.js';

const edition2023 = '17 Oct 2023';

export function appendixF(paragraph: string, status: SourceRef['status'] = 'verified'): SourceRef {
  return { document: '14 CFR part 43 appendix F', paragraph, edition: edition2023, status };
}

/** How appendix F groups the classes. */
export type ReplyGroup = 'atcrbs' | 'mode-s-low' | 'mode-s-high';

export interface TransponderClassFacts {
  readonly modeS: boolean;
  readonly replyGroup: ReplyGroup;
  /** The group of classes with 125 W; the other has 70 W. */
  readonly highPower: boolean;
  /** Null: the text prints the class twice, see `suppressionRates`. */
  readonly suppressionTopPerS: number | null;
}

/** What each class is held to. "Low" Mode S classes may have the tighter frequency or the high power as an option. */
export const transponderClasses = {
  'atcrbs-1a': { modeS: false, replyGroup: 'atcrbs', highPower: true, suppressionTopPerS: 1200 },
  'atcrbs-1b': { modeS: false, replyGroup: 'atcrbs', highPower: false, suppressionTopPerS: 1000 },
  'atcrbs-2a': { modeS: false, replyGroup: 'atcrbs', highPower: true, suppressionTopPerS: 1200 },
  'atcrbs-2b': { modeS: false, replyGroup: 'atcrbs', highPower: false, suppressionTopPerS: 1000 },
  // Paragraph (b) prints class 1B in both groups and class 1A in none; 1A is probably meant in the second.
  'mode-s-1a': { modeS: true, replyGroup: 'mode-s-high', highPower: true, suppressionTopPerS: null },
  'mode-s-1b': { modeS: true, replyGroup: 'mode-s-low', highPower: false, suppressionTopPerS: null },
  'mode-s-2a': { modeS: true, replyGroup: 'mode-s-high', highPower: true, suppressionTopPerS: 1200 },
  'mode-s-2b': { modeS: true, replyGroup: 'mode-s-low', highPower: false, suppressionTopPerS: 1000 },
  'mode-s-3a': { modeS: true, replyGroup: 'mode-s-high', highPower: true, suppressionTopPerS: 1200 },
  'mode-s-3b': { modeS: true, replyGroup: 'mode-s-low', highPower: false, suppressionTopPerS: 1000 },
  'mode-s-4': { modeS: true, replyGroup: 'mode-s-high', highPower: true, suppressionTopPerS: 1200 },
} as const satisfies Readonly<Record<string, TransponderClassFacts>>;

/** Reply frequency in MHz, plus or minus. */
export const replyFrequency: Readonly<Record<ReplyGroup | 'mode-s-low-tighter', Sourced<number>>> = {
  atcrbs: { value: 3, source: appendixF('(a)(1)') },
  'mode-s-low': { value: 3, source: appendixF('(a)(2)') },
  'mode-s-low-tighter': { value: 1, source: appendixF('(a)(3)') },
  'mode-s-high': { value: 1, source: appendixF('(a)(4)') },
};
export const replyCentreMHz = 1090;

/** Interrogations a second at which suppression is tested. Between the two tops the doubled class stays in doubt. */
export const suppressionRates: Sourced<{ readonly from: number; readonly lowTop: number; readonly highTop: number }> = {
  value: { from: 230, lowTop: 1000, highTop: 1200 },
  source: appendixF('(b)'),
};
/** With a radiated signal, unless a higher rate has been approved for the set at that place. Whether it has is not recorded. */
export const radiatedSuppressionRates: Sourced<{ readonly from: number; readonly to: number }> = {
  value: { from: 230, to: 240 },
  source: appendixF('(b)(2)'),
};
export const suppressionEqualMostPercent: Sourced<number> = { value: 1, source: appendixF('(b)(1)') };
export const suppressionNineDbLeastPercent: Sourced<number> = { value: 90, source: appendixF('(b)(2)') };

/** Minimum triggering level. */
export const sensitivityDbm: Readonly<
  Record<'atcrbs' | 'mode-s', Sourced<{ readonly centre: number; readonly within: number }>>
> = {
  atcrbs: { value: { centre: -73, within: 4 }, source: appendixF('(c)(1)') },
  'mode-s': { value: { centre: -74, within: 3 }, source: appendixF('(c)(1)') },
};

/** More allowed for coupling with a portable set. The text does not say which end moves: the band is in doubt. */
export const portableSetDb: Sourced<number> = { value: 3, source: appendixF('opening paragraph, (c)(1)', 'reading') };
export const modeDifferenceDb: Sourced<number> = { value: 1, source: appendixF('(c)(2)') };

/** Peak power. Watts and dBW of the text do not convert exactly (21.0 dBW is 125.9 W): the stricter decides. */
export interface PowerLimit {
  readonly watts: number;
  readonly dbw: number;
}
export const leastPower: Readonly<
  Record<'atcrbs-high' | 'atcrbs-low' | 'mode-s-high' | 'mode-s-low', Sourced<PowerLimit>>
> = {
  'atcrbs-high': { value: { watts: 125, dbw: 21 }, source: appendixF('(d)(1)(i)') },
  'atcrbs-low': { value: { watts: 70, dbw: 18.5 }, source: appendixF('(d)(1)(ii)') },
  'mode-s-high': { value: { watts: 125, dbw: 21 }, source: appendixF('(d)(1)(iii)') },
  'mode-s-low': { value: { watts: 70, dbw: 18.5 }, source: appendixF('(d)(1)(iv)') },
};
export const mostPower: Sourced<PowerLimit> = { value: { watts: 500, dbw: 27 }, source: appendixF('(d)(1)(v)') };

export const diversityLeastDb: Sourced<number> = { value: 20, source: appendixF('(e)') };
export const wrongAddressesLeast: Sourced<number> = { value: 2, source: appendixF('(f)') };

/** Whether the all-call with the 1.6 microsecond P4 pulse is asked for: dropped by 88 FR 71476. */
export const combinedAllCall: readonly [Edition<Sourced<boolean>>, ...Edition<Sourced<boolean>>[]] = [
  {
    from: '1900-01-01',
    value: {
      value: true,
      source: {
        document: '14 CFR part 43 appendix F',
        paragraph: '(h)',
        edition: 'before 17 Oct 2023',
        status: 'secondary',
      },
    },
  },
  { from: '2023-10-17', value: { value: false, source: appendixF('(h)') } },
];
