import type { Directive } from '../dossier/status.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import { allOf, anyOf, unknown, within } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import type { Due } from '../verdict/result.js';
import { endOfDay } from './periodic.js';

/** A day, hours of a meter, or both, whichever comes first or last. A part that is asked and null is not recorded. */
export type DuePoint = NonNullable<Directive['nextDue']>;

/** Good through the day and at the hours stated. `path`: where the point is recorded. */
export function untilDue(facts: Facts, point: DuePoint, path: string, source: SourceRef): Clause {
  const day =
    point.date === null
      ? unknown('due-day-recorded', [`${path}.date`], { source })
      : within('before-due-day-ends', { before: endOfDay(facts, point.date) }, { source });
  const hours =
    point.meter === null || point.at === null
      ? unknown('due-hours-recorded', [point.meter === null ? `${path}.meter` : `${path}.at`], { source })
      : within('at-most-due-hours', { atMost: { [point.meter]: point.at } }, { source });
  if (point.by === 'date') return day;
  if (point.by === 'meter') return hours;
  return point.by === 'first'
    ? allOf('whichever-first', [day, hours], 'cannot-tell')
    : anyOf('whichever-last', [day, hours], 'cannot-tell');
}

export function dueAt(facts: Facts, what: string, point: DuePoint): Due {
  const day = point.by === 'meter' ? null : point.date;
  const { meter, at } = point.by === 'date' ? { meter: null, at: null } : point;
  return {
    what,
    ...(day === null ? {} : { lastGoodDay: day, lapses: endOfDay(facts, day) }),
    ...(meter === null || at === null ? {} : { meter, at }),
    combine: point.by === 'last' ? 'last' : 'first',
  };
}

/** The day, the hours, or both, as a message shows them. */
export function dueWords(point: DuePoint): string {
  const day = point.date ?? 'day not recorded';
  const hours = point.at === null ? 'hours not recorded' : `${point.at / 100} h`;
  if (point.by === 'date') return day;
  return point.by === 'meter' ? hours : `${day} or ${hours}`;
}
