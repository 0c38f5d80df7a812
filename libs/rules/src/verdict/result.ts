import type { SourceStatus } from '../facts/source.js';
import type { Centihours } from '../time/hours.js';
import type { CivilDate, Instant } from '../time/instant.js';
import type { Policy } from '../catalogue/policy.js';
import type { Capability } from './capability.js';
import type { Clause, MeterId, Outcome } from './clause.js';
import type { FlightConditions } from './conditions.js';

/**
 * Effects belong to a result, not to a rule. `through` names a unit, link, antenna or chain: the result bears on every means of the
 * capability that passes it. Without `through` it bears on the aircraft as a whole.
 */
export type Effect =
  | { readonly stops: 'plan' | 'release' }
  | { readonly stops: 'capability'; readonly capability: Capability; readonly through?: string }
  | { readonly stops: 'nothing'; readonly kind: 'record' | 'advice' };

export interface Due {
  readonly what: string;
  readonly lastGoodDay?: CivilDate;
  /** First instant at which it is no longer good; goes with `lastGoodDay`, or stands alone for data cycles. */
  readonly lapses?: Instant;
  readonly meter?: MeterId;
  readonly at?: Centihours;
  /** Where both a day and hours are given: whichever comes first, or last. */
  readonly combine: 'first' | 'last';
}

/** What can be done: a change of the closed list, or a fact to find out. */
export interface Remedy {
  readonly kind: 'do' | 'find-out';
  readonly change: string;
  readonly subject: string;
  /** Paths of the facts to find out. */
  readonly facts: readonly string[];
}

export type Values = Readonly<Record<string, string | number | null>>;

/** What a rule states: no moment, no flight. The outcome at any point follows from the clause. */
export interface Draft {
  readonly subject: string;
  readonly clause: Clause;
  readonly messages: Readonly<Record<Outcome, string>>;
  readonly data: Values;
  readonly effects: readonly Effect[];
  readonly due?: readonly Due[];
  /** What can be done or found out; none where it is always met, or nothing can be done. */
  readonly remedies: readonly Remedy[];
  /** Highest altitude for IFR that this result allows. */
  readonly topFt?: number;
}

export interface Statement extends Draft {
  readonly ruleId: string;
  /** `ruleId|subject`. */
  readonly key: string;
}

export interface Result {
  readonly ruleId: string;
  readonly key: string;
  readonly subject: string;
  readonly outcome: Outcome;
  readonly messageId: string;
  readonly data: Values;
  readonly clause: Clause;
  readonly effects: readonly Effect[];
  readonly changesAt?: Instant;
  readonly hoursLeft?: Centihours;
  readonly due: readonly Due[];
  readonly remedies: readonly Remedy[];
}

/** Not fitted is 'no', not judged is 'cannot-tell'; `standing` tells them apart. */
export type Ready = 'yes' | 'no' | 'cannot-tell';
export type Standing = 'judged' | 'not-fitted' | 'not-wanted' | 'not-judged' | 'held' | 'in-work' | 'say-so';

export interface Verdict {
  readonly ready: Ready;
  readonly standing: Standing;
  /** Means by which it holds. */
  readonly by: readonly string[];
  /** For no and cannot-tell: keys of the results that stop it. For yes: keys of the results that will end it. */
  readonly because: readonly string[];
  readonly topFt?: number;
  readonly changesAt?: Instant;
  readonly hoursLeft?: Centihours;
  /** Of the sources behind a yes; null where nothing was cited. */
  readonly weakestSource: SourceStatus | null;
}

/** From `instant` through `to`, with the hours flown since the latest reading when it ends. A point in time has to = instant. */
export interface Moment {
  readonly instant: Instant;
  readonly to: Instant;
  readonly hoursAhead: Centihours;
}

export interface Assessment {
  readonly of: {
    readonly aircraftId: string;
    readonly revision: number;
    readonly rules: string;
    readonly catalogue: string;
    readonly zones: string;
    readonly moment: Moment;
    readonly conditions: FlightConditions;
    /** What the house had set, in every version; left out where it had set nothing. */
    readonly policies?: readonly Policy[];
  };
  readonly results: readonly Result[];
  /** `flight` is the flight asked about; the others are fixed operations under the same conditions. */
  readonly operations: Readonly<Record<string, Verdict>>;
  /** Capabilities that no rule judges on this aircraft. */
  readonly notJudged: readonly Capability[];
}

/** Rectangles of time x hours that do not overlap; outside them: cannot-tell. */
export interface Window extends Verdict {
  readonly operation: string;
  readonly from: Instant;
  /** Exclusive. */
  readonly to: Instant;
  /** Flight hours since the latest reading: exclusive, inclusive, null = no limit. The first window begins at -1. */
  readonly above: Centihours;
  readonly upTo: Centihours | null;
  /** Keys of the results that change at `to`. */
  readonly endsBecause: readonly string[];
}

export interface Horizon {
  readonly from: Instant;
  readonly to: Instant;
  readonly conditions: FlightConditions;
  readonly windows: readonly Window[];
}
