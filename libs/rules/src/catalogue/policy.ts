import { z } from 'zod';
import type { SourceRef } from '../facts/source.js';
import type { CivilDate, Instant } from '../time/instant.js';
import { isCivilDate } from '../time/instant.js';
import { startOfDay } from '../time/zones.js';

/** Sources that a house may want a named person's say-so for. What a text says, and what a house decides, need none. */
export const doubtedStatuses = ['from-memory', 'common-practice', 'reading'] as const;

/** What a house may set, by kind. A policy asks more than the law or says more than it; none asks less. */
export const policyBodies = {
  /** For how many days a meter reading carries limits in hours, and after how many it is remarked on. */
  'reading-age': z
    .object({ days: z.int().min(1).max(366), noticeDays: z.int().min(1).max(366).nullable() })
    .refine(({ days, noticeDays }) => noticeDays === null || noticeDays <= days, {
      path: ['noticeDays'],
      message: 'is at most the days for which a reading counts',
    }),
  /** `within the preceding 30 days`: through the 30th day after, or a day earlier. */
  'day-count': z.object({ count: z.enum(['usual', 'earlier']) }),
  /** Which sources behind a yes want a say-so, and the roles that may give it. */
  'weak-source': z
    .object({ statuses: z.array(z.enum(doubtedStatuses)), by: z.array(z.string().min(1).max(40)) })
    .refine(({ statuses, by }) => statuses.length === 0 || by.length > 0, {
      path: ['by'],
      message: 'names at least one role',
    }),
} as const;

export type PolicyKind = keyof typeof policyBodies;

/** One version of one policy. It counts from the beginning of its day where the aircraft lives, until a later version does. */
export interface Policy<K extends PolicyKind = PolicyKind> {
  readonly kind: K;
  readonly version: number;
  readonly from: CivilDate;
  readonly body: z.infer<(typeof policyBodies)[K]>;
}

export interface PolicyStretch<K extends PolicyKind> {
  readonly from: Instant;
  /** Exclusive; null: nothing later is set. */
  readonly before: Instant | null;
  readonly policy: Policy<K>;
}

/** When which version counts: of those whose day has come, the one set last. */
export function stretchesOf<K extends PolicyKind>(
  policies: readonly Policy[] | undefined,
  kind: K,
  zone: string,
): readonly PolicyStretch<K>[] {
  const own = (policies ?? [])
    .filter((each): each is Policy<K> => each.kind === kind)
    .sort((a, b) => a.version - b.version);
  const days = [...new Set(own.map((each) => each.from))].sort();
  return days.flatMap((day, index) => {
    const policy = own.filter((each) => each.from <= day).at(-1);
    const next = days[index + 1];
    return policy
      ? [{ from: startOfDay(day, zone), before: next === undefined ? null : startOfDay(next, zone), policy }]
      : [];
  });
}

export function policyAt<K extends PolicyKind>(
  policies: readonly Policy[] | undefined,
  kind: K,
  instant: Instant,
  zone: string,
): Policy<K> | null {
  const found = stretchesOf(policies, kind, zone).find(
    (each) => each.from <= instant && (each.before === null || instant < each.before),
  );
  return found?.policy ?? null;
}

const said: Readonly<Record<PolicyKind, string>> = {
  'reading-age': 'age of meter readings',
  'day-count': 'count of days',
  'weak-source': 'sources that want a say-so',
};

/** The policy as the source of what it asks. */
export function housePolicy({ kind, version, from }: Policy): SourceRef {
  return {
    document: 'house policy',
    paragraph: said[kind],
    edition: `version ${version}, from ${from}`,
    status: 'house-policy',
  };
}

export function isPolicyKind(kind: string): kind is PolicyKind {
  return Object.hasOwn(policyBodies, kind);
}

export const policyDay = z.string().refine(isCivilDate, 'must be a date YYYY-MM-DD that exists');
