import { codeWords, doubtedStatuses } from '@tallywing/rules';
import { sourceStatusWords } from '../../ui/source.js';
import type { HousePolicy } from './query.js';

/** What is typed for a policy of any kind; each kind uses its own part. */
export interface PolicyDraft {
  readonly from: string;
  readonly reason: string;
  readonly days: string;
  readonly noticeDays: string;
  readonly count: string;
  readonly statuses: readonly string[];
  readonly by: readonly string[];
}

export const statusOptions = doubtedStatuses.map((id) => ({ id, name: sourceStatusWords[id] }));
export const roleOptions = ['manager', 'technician', 'dispatcher'].map((id) => ({ id, name: codeWords(id) }));

/** Begins with what was set last; the day and the reason are new each time. */
export function draftOf({ versions }: HousePolicy, today: string): PolicyDraft {
  const last = (versions[0]?.body ?? {}) as Readonly<Record<string, unknown>>;
  const number = (value: unknown) => (typeof value === 'number' ? String(value) : '');
  return {
    from: today,
    reason: '',
    days: number(last['days']) || '31',
    noticeDays: number(last['noticeDays']),
    count: typeof last['count'] === 'string' ? last['count'] : 'usual',
    statuses: (last['statuses'] as readonly string[] | undefined) ?? [],
    by: (last['by'] as readonly string[] | undefined) ?? ['manager'],
  };
}

/** Field and what is wrong with it; null where all can be sent. */
export function numberProblem({ days, noticeDays }: PolicyDraft): readonly [string, string] | null {
  const whole = (text: string) => /^\d{1,3}$/.test(text.trim()) && Number(text) >= 1;
  if (!whole(days)) return ['readingAge.days', 'Write whole days, 1 to 366.'];
  if (noticeDays.trim() !== '' && !whole(noticeDays))
    return ['readingAge.noticeDays', 'Write whole days, or leave it empty.'];
  return null;
}

/** The part of the request that goes with the kind. */
export function bodyOf(kind: string, draft: PolicyDraft) {
  if (kind === 'reading-age') {
    const noticeDays = draft.noticeDays.trim() === '' ? null : Number(draft.noticeDays);
    return { readingAge: { days: Number(draft.days), noticeDays } };
  }
  if (kind === 'day-count') return { dayCount: { count: draft.count } };
  return { weakSource: { statuses: [...draft.statuses], by: [...draft.by] } };
}
