import { TimeError } from './errors.js';

/** UTC to the minute, `YYYY-MM-DDTHH:MMZ`. Sorts as text. */
export type Instant = string;
/** A day on somebody's calendar, `YYYY-MM-DD`, with no zone of its own. Sorts as text. */
export type CivilDate = string;

export const minutesPerDay = 1440;

const lengthsOfMonths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Days in a month of the Gregorian calendar: none in a month that is not 1 to 12. */
export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeap(year) ? 29 : (lengthsOfMonths[month - 1] ?? 0);
}

export function isCivilDate(text: unknown): text is CivilDate {
  return typeof text === 'string' && text.length === 10 && !Number.isNaN(dayOrNaN(text));
}

export function isInstant(text: unknown): text is Instant {
  return !Number.isNaN(minutesOrNaN(text));
}

/** Whole days from 1970-01-01 to the date. Throws `TimeError` if the text is no calendar day. */
export function dayNumber(date: CivilDate): number {
  const day = typeof date === 'string' && date.length === 10 ? dayOrNaN(date) : NaN;
  if (Number.isNaN(day)) {
    throw new TimeError(
      'not-a-date',
      `${show(date)} is not a calendar day. Write it as YYYY-MM-DD, for example 2026-02-28.`,
    );
  }
  return day;
}

/** The date that lies `day` whole days after 1970-01-01; years 0001 to 9999. */
export function civilDateOf(day: number): CivilDate {
  // Days are counted in 400-year eras that start on 1 March, so that the leap day is the last of its year.
  const fromEra = day + 719468;
  const era = Math.floor(fromEra / 146097);
  const dayOfEra = fromEra - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shifted = Math.floor((5 * dayOfYear + 2) / 153);
  const dayOfMonth = dayOfYear - Math.floor((153 * shifted + 2) / 5) + 1;
  const month = shifted < 10 ? shifted + 3 : shifted - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  if (!Number.isInteger(day) || year < 1 || year > 9999) {
    throw new TimeError('out-of-range', `Day ${day} lies outside the years 0001 to 9999. Use a whole number of days.`);
  }
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(dayOfMonth, 2)}`;
}

/** Whole minutes from 1970-01-01T00:00Z to the instant. Throws `TimeError` if the text is no instant. */
export function minutesOf(instant: Instant): number {
  const minutes = minutesOrNaN(instant);
  if (Number.isNaN(minutes)) {
    throw new TimeError(
      'not-an-instant',
      `${show(instant)} is not a UTC minute. Write it as YYYY-MM-DDTHH:MMZ, for example 2026-02-19T09:01Z.`,
    );
  }
  return minutes;
}

/** The instant that lies `minutes` whole minutes after 1970-01-01T00:00Z. */
export function instantOf(minutes: number): Instant {
  return `${localTimeOf(minutes)}Z`;
}

/** `YYYY-MM-DDTHH:MM` of a count of minutes: a clock reading without a zone. */
export function localTimeOf(minutes: number): string {
  const day = Math.floor(minutes / minutesPerDay);
  const rest = minutes - day * minutesPerDay;
  return `${civilDateOf(day)}T${pad(Math.floor(rest / 60), 2)}:${pad(rest % 60, 2)}`;
}

/** Day number of a year, month (1 to 12) and day that are known to be real. */
export function dayNumberOf(year: number, month: number, day: number): number {
  const shiftedYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(shiftedYear / 400);
  const yearOfEra = shiftedYear - era * 400;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

export interface DateParts {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
}

/** Year, month and day of a date. Throws `TimeError` if the text is no calendar day. */
export function partsOf(date: CivilDate): DateParts {
  dayNumber(date);
  return { year: digits(date, 0, 4), month: digits(date, 5, 7), day: digits(date, 8, 10) };
}

function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

function dayOrNaN(text: string): number {
  if (text.charCodeAt(4) !== 45 || text.charCodeAt(7) !== 45) return NaN;
  const year = digits(text, 0, 4);
  const month = digits(text, 5, 7);
  const day = digits(text, 8, 10);
  // A month that there is not has no days.
  const real = year >= 1 && day >= 1 && day <= daysInMonth(year, month);
  return real ? dayNumberOf(year, month, day) : NaN;
}

function minutesOrNaN(text: unknown): number {
  if (typeof text !== 'string' || text.length !== 17) return NaN;
  if (text.charCodeAt(10) !== 84 || text.charCodeAt(13) !== 58 || text.charCodeAt(16) !== 90) return NaN;
  const hour = digits(text, 11, 13);
  const minute = digits(text, 14, 16);
  return hour <= 23 && minute <= 59 ? dayOrNaN(text) * minutesPerDay + hour * 60 + minute : NaN;
}

/** The number written in [from, to), or NaN if any character is no digit. */
function digits(text: string, from: number, to: number): number {
  let value = 0;
  for (let i = from; i < to; i += 1) {
    const code = text.charCodeAt(i) - 48;
    if (!(code >= 0 && code <= 9)) return NaN;
    value = value * 10 + code;
  }
  return value;
}

function pad(value: number, width: number): string {
  return String(value).padStart(width, '0');
}

function show(value: unknown): string {
  return typeof value === 'string' ? `"${value.slice(0, 40)}"` : String(value);
}
