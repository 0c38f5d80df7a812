import type { IntervalPart, LastDone, NextPart, Recurrence } from '../calculations/recurrence.js';
import { nextDue } from '../calculations/recurrence.js';
import type { RecordHead } from '../dossier/status.js';
import type { CivilDate } from '../time/instant.js';
import type { Counted } from './accomplished.js';
import { entryOutcome } from './entry-outcome.js';

/** When an entry was done, and when it was due by the entries before it. */
export interface Series {
  readonly last: LastDone;
  /** False: flown over on the way to the place of inspection, and no entry says how far. */
  readonly dueKnown: boolean;
}

/**
 * What counts from when it was due needs the due point: as the entry gives it, else from the newest older entry that counts. An entry a
 * whole interval late or more begins the series anew, and so does the first that is recorded: it counts from when it was done.
 * `older`: the entries before it, newest first.
 */
export function lastOfSeries(recurrence: Recurrence, record: RecordHead, older: readonly Counted[]): Series {
  const done: LastDone = {
    doneDate: record.done.date,
    doneMeters: Object.fromEntries(record.meters.map((each) => [each.meter, each.value])),
  };
  if (recurrence.countFrom === 'done') return { last: done, dueKnown: true };
  const at = older.findIndex((each) => entryOutcome(each) === 'met');
  const before = older[at];
  const due = before
    ? nextDue(recurrence, lastOfSeries(recurrence, before.record, older.slice(at + 1)).last).parts
    : [];
  const dates = due.flatMap((each) => (each.kind === 'date' ? [each.lastGoodDay] : []));
  const [dueDate = null] = dates.filter((date) => lateByLess(recurrence, { ...done, dueDate: date }, record.done.date));
  const dueMeters = Object.fromEntries(
    recurrence.parts.flatMap((part, index) => {
      const point = dueMeter(part, due[index], record.dueAt, done);
      return point === null || !('meter' in part) ? [] : [[part.meter, point] as const];
    }),
  );
  const unknown = record.enRoute === true && Object.keys(dueMeters).length === 0 && dueDate === null;
  return { last: { ...done, dueDate, dueMeters }, dueKnown: !unknown };
}

/** The entry's own figure goes first; it is in hours. */
function dueMeter(part: IntervalPart, due: NextPart | undefined, dueAt: number | null, done: LastDone): number | null {
  if (part.kind === 'hours' && dueAt !== null) return dueAt;
  if (!('meter' in part) || due?.kind !== 'meter') return null;
  const at = done.doneMeters[part.meter] ?? Number.POSITIVE_INFINITY;
  return due.at + part.count > at ? due.at : null;
}

/** Counted from that due point it falls due after it was done. */
function lateByLess(recurrence: Recurrence, due: LastDone, doneDate: CivilDate): boolean {
  const fromDue = nextDue({ ...recurrence, countFrom: 'due' }, due).parts;
  return fromDue.every((each) => each.kind !== 'date' || each.lastGoodDay > doneDate);
}
