import type { IntervalPart, LastDone, NextPart, Recurrence } from '../calculations/recurrence.js';
import { nextDue } from '../calculations/recurrence.js';
import type { RecordedRecurrence } from '../dossier/recurrence.js';
import type { Facts } from '../graph/facts.js';
import type { Instant } from '../time/instant.js';
import { startOfDayAfter } from '../time/zones.js';
import { allOf, anyOf, unknown, within } from '../verdict/build.js';
import type { Clause, Leaf, Quantity } from '../verdict/clause.js';
import type { Due } from '../verdict/result.js';

/**
 * In time by the recurrence engine: through the last good day and at the figure of the meter, of all intervals or of any, as they are
 * combined. `missing`: where the start of a meter, or for null the day, would be recorded.
 */
export function inInterval(
  facts: Facts,
  recurrence: Recurrence,
  last: LastDone,
  asked: {
    readonly label: string;
    readonly from?: Instant;
    readonly missing: (meter: string | null) => string;
    readonly extra: Pick<Leaf, 'source' | 'evidence'>;
  },
): Clause {
  const { label, from, missing } = asked;
  const start = from === undefined ? {} : { from };
  const regions = nextDue(recurrence, last).parts.map((part: NextPart, index): Clause => {
    const interval = recurrence.parts[index];
    const extra = { ...asked.extra, ...(interval ? { limit: quantity(interval) } : {}) };
    if (part.kind === 'unknown')
      return unknown(part.meter === null ? 'day-recorded' : 'hours-recorded', [missing(part.meter)], extra);
    return part.kind === 'date'
      ? within(label, { ...start, before: startOfDayAfter(part.lastGoodDay, facts.zone) }, extra)
      : within(label, { ...start, atMost: { [part.meter]: part.at } }, extra);
  });
  if (regions.length === 1 && regions[0]) return regions[0];
  return recurrence.combine === 'first' ? allOf(label, regions, 'cannot-tell') : anyOf(label, regions, 'cannot-tell');
}

/** The point at which it falls due, as lists show it. Nothing known: none. */
export function dueOf(
  facts: Facts,
  what: string,
  parts: readonly NextPart[],
  combine: Recurrence['combine'],
): readonly Due[] {
  const days = parts
    .filter((each) => each.kind === 'date')
    .sort((one, other) => (one.lastGoodDay < other.lastGoodDay ? -1 : 1));
  const day = combine === 'first' ? days[0] : days.at(-1);
  const hours = parts.find((each) => each.kind === 'meter');
  if (!day && !hours) return [];
  return [
    {
      what,
      ...(day ? { lastGoodDay: day.lastGoodDay, lapses: startOfDayAfter(day.lastGoodDay, facts.zone) } : {}),
      ...(hours ? { meter: hours.meter, at: hours.at } : {}),
      combine,
    },
  ];
}

/** The day or the hours, as a message shows them. */
export function partWords(part: NextPart): string {
  if (part.kind === 'date') return part.lastGoodDay;
  if (part.kind === 'meter') return `${part.at / 100} h`;
  return part.meter === null ? 'day not recorded' : 'hours not recorded';
}

/** As recorded, for the engine. Null: an interval in hours or landings names no meter. */
export function intervalParts(parts: RecordedRecurrence['parts']): readonly IntervalPart[] | null {
  const read = parts.map(({ kind, count, meter, tolerance }): IntervalPart | null => {
    const extra = tolerance === null ? {} : { tolerance };
    if (kind !== 'hours' && kind !== 'landings') return { kind, count, ...extra };
    return meter === null ? null : { kind, meter, count, ...extra };
  });
  return read.every((each) => each !== null) ? read : null;
}

function quantity(part: IntervalPart): Quantity {
  if (part.kind === 'hours') return { amount: part.count / 100, unit: 'h' };
  return { amount: part.count, unit: part.kind.replace('-', ' ') };
}
