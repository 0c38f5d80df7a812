import type { Centihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import type { Capability } from './capability.js';
import type { FlightConditions } from './conditions.js';
import { matches } from './conditions.js';
import type { Clause, Leaf, MeterId, Outcome, Ref } from './clause.js';

/** What a meter is expected to show, and until when that expectation may be trusted. */
export interface MeterAt {
  readonly value: Centihours;
  /** Exclusive; null: never read at all, or not read with the others. */
  readonly goodBefore: Instant | null;
}

/** One point of time and hours, for one flight. */
export interface Point {
  readonly instant: Instant;
  readonly meters: Readonly<Record<MeterId, MeterAt>>;
  readonly conditions: FlightConditions;
  readonly capability: (capability: Capability) => Outcome;
}

export function evaluate(clause: Clause, point: Point): Outcome {
  switch (clause.is) {
    case 'leaf':
      return leafOutcome(clause, point);
    case 'ref':
      return point.capability(clause.capability);
    case 'implies':
      return impliesOutcome(evaluate(clause.if, point), () => evaluate(clause.then, point));
    default:
      return groupOutcome(
        clause.is,
        clause.n ?? 0,
        clause.of.map((each) => evaluate(each, point)),
        clause.ifEmpty,
      );
  }
}

/** A clause with the outcome of every part, for showing. */
export interface Explained {
  readonly outcome: Outcome;
  readonly clause:
    Leaf | Ref | { readonly is: 'all' | 'any' | 'at-least' | 'implies'; readonly label: string; readonly n?: number };
  readonly parts: readonly Explained[];
}

export function explain(clause: Clause, point: Point): Explained {
  const outcome = evaluate(clause, point);
  switch (clause.is) {
    case 'leaf':
    case 'ref':
      return { outcome, clause, parts: [] };
    case 'implies':
      return {
        outcome,
        clause: { is: 'implies', label: '' },
        parts: [explain(clause.if, point), explain(clause.then, point)],
      };
    default:
      return {
        outcome,
        clause: { is: clause.is, label: clause.label, ...(clause.n === undefined ? {} : { n: clause.n }) },
        parts: clause.of.map((each) => explain(each, point)),
      };
  }
}

const rank: Readonly<Record<Exclude<Outcome, 'not-applicable'>, number>> = { 'not-met': 0, 'cannot-tell': 1, met: 2 };

/** Worst of the outcomes, not-applicable ones left aside; `ifEmpty` when none is left. */
export function worst(outcomes: Iterable<Outcome>, ifEmpty: Outcome): Outcome {
  return extreme(outcomes, ifEmpty, (a, b) => a < b);
}

/** Best of the outcomes, not-applicable ones left aside; `ifEmpty` when none is left. */
export function best(outcomes: Iterable<Outcome>, ifEmpty: Outcome): Outcome {
  return extreme(outcomes, ifEmpty, (a, b) => a > b);
}

function extreme(outcomes: Iterable<Outcome>, ifEmpty: Outcome, wins: (a: number, b: number) => boolean): Outcome {
  let found: keyof typeof rank | null = null;
  for (const each of outcomes) {
    if (each !== 'not-applicable' && (found === null || wins(rank[each], rank[found]))) found = each;
  }
  return found ?? ifEmpty;
}

function groupOutcome(
  is: 'all' | 'any' | 'at-least',
  n: number,
  outcomes: readonly Outcome[],
  ifEmpty: Outcome,
): Outcome {
  if (is === 'all') return worst(outcomes, ifEmpty);
  if (is === 'any') return best(outcomes, ifEmpty);
  const judged = outcomes.filter((each) => each !== 'not-applicable');
  if (judged.length === 0) return ifEmpty;
  const sure = judged.filter((each) => each === 'met').length;
  if (sure >= n) return 'met';
  return sure + judged.filter((each) => each === 'cannot-tell').length >= n ? 'cannot-tell' : 'not-met';
}

function impliesOutcome(condition: Outcome, then: () => Outcome): Outcome {
  if (condition === 'not-met' || condition === 'not-applicable') return 'not-applicable';
  const body = then();
  if (condition === 'met') return body;
  return body === 'met' || body === 'not-applicable' ? 'met' : 'cannot-tell';
}

function leafOutcome(leaf: Leaf, point: Point): Outcome {
  if (leaf.inside === leaf.outside) return leaf.inside;
  if (leaf.when !== undefined && !matches(leaf.when, point.conditions)) return leaf.outside;
  if (leaf.from !== undefined && point.instant < leaf.from) return leaf.outside;
  if (leaf.before !== undefined && point.instant >= leaf.before) return leaf.outside;
  if (leaf.atMost === undefined) return leaf.inside;
  let sure = true;
  for (const [meter, limit] of Object.entries(leaf.atMost)) {
    const at = point.meters[meter];
    if (at === undefined) sure = false;
    // A meter only runs forward: past the limit is past it, however old the reading.
    else if (at.value > limit) return leaf.outside;
    else if (at.goodBefore === null || point.instant >= at.goodBefore) sure = false;
  }
  return sure ? leaf.inside : 'cannot-tell';
}
