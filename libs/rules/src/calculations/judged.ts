import type { SourceRef } from '../facts/source.js';
import { roundTo } from './rounding.js';

export type JudgedOutcome = 'met' | 'not-met' | 'cannot-tell';

/** What a value is held to. Bounds are inclusive except `below`. */
export interface Limit {
  readonly least?: number;
  readonly most?: number;
  readonly below?: number;
  readonly is?: boolean;
}

/** One thing read and judged. Ids and data only; `what` is the key of a text. */
export interface JudgedPoint {
  readonly what: string;
  /** Where on the scale: altitude, setting, heading, place; null where the test has one point. */
  readonly at: number | string | null;
  /** Null: not recorded. */
  readonly value: number | boolean | null;
  readonly unit: string | null;
  readonly limit: Limit;
  readonly outcome: JudgedOutcome;
  readonly source: SourceRef;
}

export interface JudgedReadings {
  readonly outcome: JudgedOutcome;
  readonly points: readonly JudgedPoint[];
}

/** The worst outcome of the points; nothing read is cannot-tell. */
export function judged(points: readonly JudgedPoint[]): JudgedReadings {
  return { outcome: worst(points.map((point) => point.outcome)), points };
}

export function worst(outcomes: readonly JudgedOutcome[]): JudgedOutcome {
  if (outcomes.includes('not-met')) return 'not-met';
  return outcomes.length === 0 || outcomes.includes('cannot-tell') ? 'cannot-tell' : 'met';
}

interface Asked {
  readonly what: string;
  readonly source: SourceRef;
  readonly at?: number | string;
}

/** A number against its limit; not recorded is cannot-tell. */
export function held(asked: Asked & { unit: string; value: number | null; limit: Limit }): JudgedPoint {
  const { value, limit } = asked;
  return point(asked, value, limit, value === null ? 'cannot-tell' : within(value, limit) ? 'met' : 'not-met');
}

/** A number against two limits, where it is not known which holds: inside the narrow one is met, outside the wide one is not. */
export function heldInDoubt(
  asked: Asked & { unit: string; value: number | null; narrow: Limit; wide: Limit },
): JudgedPoint {
  const { value, narrow, wide } = asked;
  if (value !== null && within(value, narrow)) return point(asked, value, narrow, 'met');
  if (value !== null && !within(value, wide)) return point(asked, value, wide, 'not-met');
  return point(asked, value, narrow, 'cannot-tell');
}

/** A statement that must be `is`; nobody said is cannot-tell. */
export function stated(asked: Asked & { value: boolean | null; is?: boolean }): JudgedPoint {
  const is = asked.is ?? true;
  return point(
    asked,
    asked.value,
    { is },
    asked.value === null ? 'cannot-tell' : asked.value === is ? 'met' : 'not-met',
  );
}

/** Something the test needs and nobody recorded, or that cannot be judged as recorded. */
export function cannotTell(asked: Asked & { unit?: string; value?: number | boolean; limit?: Limit }): JudgedPoint {
  return point(asked, asked.value ?? null, asked.limit ?? {}, 'cannot-tell');
}

function point(
  asked: Asked & { unit?: string },
  value: JudgedPoint['value'],
  limit: Limit,
  outcome: JudgedOutcome,
): JudgedPoint {
  return {
    what: asked.what,
    at: asked.at ?? null,
    value,
    unit: asked.unit ?? null,
    limit,
    outcome,
    source: asked.source,
  };
}

function within(value: number, limit: Limit): boolean {
  const rounded = roundTo(value, 6);
  return (
    (limit.least === undefined || rounded >= limit.least) &&
    (limit.most === undefined || rounded <= limit.most) &&
    (limit.below === undefined || rounded < limit.below)
  );
}
