import { dateTimeWords, localTimeAt } from '@tallywing/rules';
import { hoursText, readHours } from '../../trade/hours.js';
import { hoursWords } from '../../ui/words.js';
import type { RecordInput, SheetMeter, SheetRow } from './query.js';

/** What a person typed for one meter. */
export interface Entry {
  readonly dial: string;
  /** When it was read, where that is not the time of the whole sheet. */
  readonly asOf: string | null;
  /** The person was asked about it and said that it is right. */
  readonly sure: boolean;
  /** Why it is lower than the last reading: it is then recorded as a correction. */
  readonly reason: string;
}

export type Entries = Readonly<Record<string, Entry>>;

/** One line of the sheet; an aircraft without a meter has one line without. */
export interface Line {
  readonly key: string;
  readonly row: SheetRow;
  readonly meter: SheetMeter | null;
}

export interface Judged {
  /** Stops it: the text is no reading, or the time cannot be right. */
  readonly problem: string | null;
  /** It is possible and unlikely: asked before it is recorded. */
  readonly questions: readonly string[];
  readonly lower: boolean;
  /** The change to record; null while something is open. */
  readonly change: RecordInput['changes'][number] | null;
}

export const blankEntry: Entry = { dial: '', asOf: null, sure: false, reason: '' };
export const keyOf = (aircraftId: string, meterId: string): string => `${aircraftId} ${meterId}`;

const DAY = 86_400_000;
const DAY_HOURS = 2400;
const DAYS_A_MONTH = 30.44;
/* House policy, hours in hundredths: how far from the recorded use a reading may be before somebody is asked about it. */
const TIMES_THE_USE = 3;
const HOURS_FREE = 500;
const HARDLY = 0.1;
const HARDLY_FROM_HOURS = 1000;

/** All lines of the sheet, of each aircraft first the meter that stands for time in service. */
export function linesOf(rows: readonly SheetRow[]): Line[] {
  return rows.flatMap((row): Line[] =>
    row.meters.length === 0
      ? [{ key: row.aircraft.id, row, meter: null }]
      : [...row.meters]
          .sort((a, b) => Number(b.timeInService) - Number(a.timeInService))
          .map((meter) => ({ key: keyOf(row.aircraft.id, meter.id), row, meter })),
  );
}

export interface Age {
  /** `behind`: the other meters were read later, so that hours flown between are unknown. */
  readonly state: 'good' | 'old' | 'behind' | 'never';
  readonly days: number | null;
}

/** How old the last reading is, by the reading age of the house or of the aircraft. */
export function ageOf({ asOf, goodBefore }: Pick<SheetMeter, 'asOf' | 'goodBefore'>, now: string): Age {
  if (asOf === null) return { state: 'never', days: null };
  const days = Math.max(0, Math.floor(msBetween(asOf, now) / DAY));
  if (goodBefore === null) return { state: 'behind', days };
  return { state: now < goodBefore ? 'good' : 'old', days };
}

/**
 * What is wrong with an entry, what is to be asked about it, and the change that records it.
 * @param asOf when the sheet was read
 */
export function judgeEntry(
  { row, meter }: { readonly row: SheetRow; readonly meter: SheetMeter },
  entry: Entry,
  asOf: string,
  now: string,
  by: string,
): Judged {
  const at = entry.asOf ?? asOf;
  const dial = readHours(entry.dial.replace(',', '.'));
  const nothing: Judged = { problem: null, questions: [], lower: false, change: null };
  if (dial === null) return nothing;
  if (typeof dial === 'string')
    return { ...nothing, problem: 'This is not a reading. Type hours, with at most two decimals: 1250.3' };
  const value = dial + Math.round(meter.offset * 100);
  if (value < 0) return { ...nothing, problem: 'With what was carried over from the old dial this is below zero.' };
  if (at > now) return { ...nothing, problem: 'This time has not come yet. Change when it was read.' };
  const last = meter.hours === null ? null : Math.round(meter.hours * 100);
  const lower = last !== null && value < last;
  if (!lower && meter.asOf !== null && at < meter.asOf)
    return {
      ...nothing,
      problem: `The last reading is of ${timeWords(meter.asOf, row)}. Change when this one was read.`,
    };
  const questions = lower
    ? [`Lower than the last reading, ${hoursWords(last - Math.round(meter.offset * 100))} on this dial.`]
    : doubts(row, meter, last, value, at);
  const answered = questions.length === 0 || (entry.sure && (!lower || entry.reason.trim() !== ''));
  const reading = { meter: meter.id, asOf: at, by };
  const change = lower
    ? { meterCorrect: { ...reading, value, reason: entry.reason.trim() } }
    : { meterRead: { ...reading, dial } };
  return { problem: null, questions, lower, change: answered ? (change as Judged['change']) : null };
}

/** Movement since the last reading that hardly can be, or that the recorded use does not explain. */
function doubts(row: SheetRow, meter: SheetMeter, last: number | null, value: number, at: string): string[] {
  if (last === null || meter.asOf === null) return [];
  const days = msBetween(meter.asOf, at) / DAY;
  const moved = value - last;
  const inDays = `${hoursWords(moved)} in ${daysWords(days)}`;
  // In a day nothing runs longer than a day; a meter may run faster than the clock by its own pace only.
  if (meter.kind !== 'landings' && moved > Math.round(DAY_HOURS * days * Math.max(1, meter.perFlightHour)))
    return [`${inDays}: more than 24 hours a day.`];
  if (row.hoursPerMonth === null || meter.perFlightHour === 0) return [];
  const expected = Math.round(((row.hoursPerMonth * 100) / DAYS_A_MONTH) * days * meter.perFlightHour);
  const use = `the recorded use (${row.hoursPerMonth} h a month) makes it about ${hoursWords(Math.round(expected / 10) * 10)}`;
  if (moved > TIMES_THE_USE * expected + Math.round(HOURS_FREE * meter.perFlightHour)) return [`${inDays}: ${use}.`];
  if (expected >= HARDLY_FROM_HOURS && moved < HARDLY * expected) return [`Only ${inDays}: ${use}.`];
  return [];
}

/** One aircraft with something typed: the work to record, or the lines on which something is still open. */
export interface Batch {
  readonly row: SheetRow;
  /** Keys of the lines, in the order of the changes. */
  readonly keys: readonly string[];
  readonly changes: RecordInput['changes'];
  readonly open: readonly string[];
  /** The same typed text gives the same mark: a request whose answer was lost is then sent again as it was. */
  readonly mark: string;
}

export function batchesOf(rows: readonly SheetRow[], entries: Entries, asOf: string, now: string, by: string): Batch[] {
  return rows.flatMap((row): Batch[] => {
    const typed = row.meters.flatMap((meter) => {
      const key = keyOf(row.aircraft.id, meter.id);
      const entry = entries[key];
      if (!entry || entry.dial.trim() === '') return [];
      return [{ key, entry, judged: judgeEntry({ row, meter }, entry, asOf, now, by) }];
    });
    if (typed.length === 0) return [];
    return [
      {
        row,
        keys: typed.map(({ key }) => key),
        changes: typed.flatMap(({ judged }) => (judged.change ? [judged.change] : [])),
        open: typed.filter(({ judged }) => judged.change === null).map(({ key }) => key),
        mark: JSON.stringify([
          asOf === now ? '' : asOf,
          typed.map(({ key, entry }) => [key, entry.dial, entry.asOf, entry.reason]),
        ]),
      },
    ];
  });
}

/** What the dial showed at the last reading: with a replaced meter that is not the hours. */
export function lastDial(meter: SheetMeter): string {
  return meter.hours === null ? 'never read' : `${hoursText(Math.round((meter.hours - meter.offset) * 100))} h`;
}

export function timeWords(instant: string, row: SheetRow): string {
  return dateTimeWords(localTimeAt(instant, row.aircraft.base.zone));
}

function daysWords(days: number): string {
  const rounded = Math.round(days * 10) / 10;
  return rounded === 1 ? '1 day' : `${rounded} days`;
}

function msBetween(from: string, to: string): number {
  return Date.parse(to) - Date.parse(from);
}
