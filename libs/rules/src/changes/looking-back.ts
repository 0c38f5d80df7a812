import type { CivilDate, Instant } from '../time/instant.js';
import { civilDateAt } from '../time/zones.js';
import type { Change, ChangeKind, ChangeOf } from './changes.js';

/** The day that an entry is about; `at` where the minute is known. */
export interface Day {
  readonly date: CivilDate;
  readonly at: Instant | null;
}

/** One entry as it was written down. */
export interface Written {
  readonly number: number;
  /** The same text: recorded in one piece of work. */
  readonly together: string;
  readonly writtenAt: Instant;
  readonly change: Change;
}

/** What an entry needs for the question which one it corrects. */
export interface Correctable {
  readonly number: number;
  readonly kind: string;
  /** Id of the entry of the record, meter or unit that it is about. */
  readonly about: string | null;
}

type DayOf = { readonly [K in ChangeKind]: ((change: ChangeOf<K>) => Day | null) | null };

const on = (date: CivilDate | null): Day | null => (date === null ? null : { date, at: null });
const minute = (at: Instant): Day => ({ date: at.slice(0, 10), at });
const performed = ({ performed }: { readonly performed: Day }): Day => performed;
const latest = (dates: readonly CivilDate[]): Day | null => on([...dates].sort().at(-1) ?? null);

/** null: a kind that states how something is and names no day for it. */
const dayOfKind: DayOf = {
  'aircraft.add': null,
  'aircraft.amend': performed,
  'authority.set': null,
  'equipment.state': ({ items }) => latest(items.flatMap(({ seen }) => (seen === null ? [] : [seen.asOf]))),
  'static-system.set': null,
  'work.done': performed,
  'touched.state': ({ by }) => on(by.asOf),
  'unit.install': performed,
  'unit.remove': performed,
  'unit.amend': null,
  'unit.deactivate': performed,
  'unit.reactivate': performed,
  'link.connect': performed,
  'link.disconnect': performed,
  'antenna.fit': performed,
  'antenna.remove': performed,
  'placard.fit': null,
  'placard.remove': null,
  'supplement.set': null,
  'opening.set': null,
  'electrical.set': null,
  'mass.revise': ({ mass }) => on(mass.revisedOn),
  'mass.note': ({ item }) => on(item.on),
  'record.add': ({ record }) => record.done,
  'record.correct': ({ record }) => record.done,
  'database.load': ({ load }) => load.loaded,
  'database.drop': null,
  'defect.raise': ({ defect }) => defect.raised,
  'defect.defer': ({ deferral }) => on(deferral.on),
  'defect.close': performed,
  'directive.set': null,
  'hold.place': ({ hold }) => minute(hold.from),
  'hold.lift': ({ at }) => minute(at),
  'say-so.give': ({ sayso }) => minute(sayso.from),
  'say-so.end': ({ at }) => minute(at),
  'completeness.state': ({ lists }) => latest(lists.map(({ stated }) => stated.asOf)),
  adopt: ({ by }) => on(by.asOf),
  'identity.set': null,
  'recurring.set': null,
  'recurring.end': null,
  'life-limit.set': null,
  'life-limit.end': null,
  'paper.set': null,
  'pack.set': null,
  'decision.record': ({ decision }) => on(decision.on),
  'meter.define': null,
  'meter.read': ({ asOf }) => minute(asOf),
  'meter.replace': ({ at }) => minute(at),
  'meter.correct': ({ asOf }) => minute(asOf),
  'utilisation.set': null,
};

/** The day a change says it is about: when the work was done, the meter read, the defect found. Null: it names none. */
export function dayOf(change: Change): Day | null {
  return (dayOfKind[change.kind] as ((change: Change) => Day | null) | null)?.(change) ?? null;
}

/** What a correction of each kind may correct, and where the changes of those kinds name what they are about. */
const corrects: Readonly<Record<string, readonly string[]>> = {
  'record.correct': ['record.add', 'record.correct'],
  'meter.correct': ['meter.read', 'meter.replace', 'meter.correct'],
  'unit.amend': ['unit.install', 'unit.amend'],
};

/** Kinds of changes that correct an earlier one. */
export const correctingKinds: readonly string[] = Object.keys(corrects);

/** Kinds of changes that correct, or are corrected. */
export const correctableKinds: readonly string[] = [
  ...new Set(Object.entries(corrects).flatMap(([kind, targets]) => [kind, ...targets])),
];

/** Entry by entry that corrects another, the one it corrects: the last one before it that is about the same thing. */
export function correctionsAmong(entries: readonly Correctable[]): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  const last = new Map<string, number>();
  for (const { number, kind, about } of [...entries].sort((a, b) => a.number - b.number)) {
    if (about === null) continue;
    const targets = corrects[kind] ?? [];
    const target = Math.max(0, ...targets.map((each) => last.get(`${each}|${about}`) ?? 0));
    if (target > 0) found.set(number, target);
    last.set(`${kind}|${about}`, number);
  }
  return found;
}

/** What a change of a correctable kind is about. */
export function aboutOf(change: Change): string | null {
  if (change.kind === 'record.add' || change.kind === 'record.correct') return change.record.id;
  if (change.kind === 'meter.read' || change.kind === 'meter.replace' || change.kind === 'meter.correct')
    return change.meter;
  return change.kind === 'unit.install' || change.kind === 'unit.amend' ? change.unit.id : null;
}

export interface KnownNow {
  /** The entries that speak of that time, in the order in which they were written. */
  readonly entries: readonly Written[];
  /** Entries that name no day and were not written with any that does: they count from the day they were written. */
  readonly undated: number;
}

/**
 * What is known today about an earlier moment: entries about days until then, whenever they were written. A correction stands
 * in place of what it corrects; what is amended of a unit holds since the unit was fitted. An entry that names no day has the
 * day of the work it was recorded with, else the day it was written: it is never taken to have been so before.
 */
export function knownNow(all: readonly Written[], at: Instant, zone: string): KnownNow {
  const corrections = correctionsAmong(
    all.map(({ number, change }) => ({ number, kind: change.kind, about: aboutOf(change) })),
  );
  const byNumber = new Map(all.map((entry) => [entry.number, entry]));
  const kindOf = (number: number) => byNumber.get(number)?.change.kind ?? '';
  // A replaced meter stays replaced: only its reading was wrong, and the correction comes after it.
  const mistaken = new Set(
    [...corrections]
      .filter(([number, target]) => kindOf(number) !== 'unit.amend' && kindOf(target) !== 'meter.replace')
      .map(([, target]) => target),
  );
  const workDays = new Map<string, CivilDate>();
  for (const { together, change } of all) {
    const day = dayOf(change);
    const known = workDays.get(together);
    if (day !== null && (known === undefined || day.date > known)) workDays.set(together, day.date);
  }
  let undated = 0;
  const dayWithin = (entry: Written): Day => {
    const own = dayOf(entry.change);
    if (own !== null) return own;
    // Of what corrects another, what amends a unit alone names no day.
    const amended = byNumber.get(corrections.get(entry.number) ?? 0);
    if (amended) return dayWithin(amended);
    return (
      on(workDays.get(entry.together) ?? null) ?? { date: civilDateAt(entry.writtenAt, zone), at: entry.writtenAt }
    );
  };
  const then = civilDateAt(at, zone);
  const entries = all.filter((entry) => {
    if (mistaken.has(entry.number)) return false;
    if (entry.change.kind === 'aircraft.add') return true;
    const day = dayWithin(entry);
    const counts = day.at === null ? day.date <= then : day.at <= at;
    if (!counts && !workDays.has(entry.together)) undated += 1;
    return counts;
  });
  return { entries, undated };
}
