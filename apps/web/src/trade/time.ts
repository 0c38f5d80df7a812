import { dateTimeWords, dateWords, localTimeAt } from '@tallywing/rules';

/** UTC now, to the minute. The one clock of the board; everything below takes moments as arguments. */
export function clockNow(): string {
  return `${new Date().toISOString().slice(0, 16)}Z`;
}

/**
 * Local time 'YYYY-MM-DDTHH:MM' of a zone as an instant; null for text that is no time. A time that a change of clocks
 * leaves out moves on by the gap; one that happens twice is the first.
 */
export function instantAt(local: string, zone: string): string | null {
  const wall = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(local) ? Date.parse(`${local}Z`) : NaN;
  if (Number.isNaN(wall)) return null;
  const guesses = [wall - day, wall + day].map((near) => wall - offsetAt(near, zone));
  const right = guesses.filter((guess) => localTimeAt(text(guess), zone) === local);
  return text(right.length > 0 ? Math.min(...right) : Math.max(...guesses));
}

const day = 86_400_000;

function offsetAt(at: number, zone: string): number {
  return Date.parse(`${localTimeAt(text(at), zone)}Z`) - at;
}

function text(at: number): string {
  return `${new Date(at).toISOString().slice(0, 16)}Z`;
}

/**
 * How long something holds, as the base's calendar says it: 'through 30 Jun 2027' where it ends with a day, else 'until
 * 25 Dec 2026 14:00'. The year is left out where it is that of `near`.
 */
export function untilWords(instant: string, zone: string, near?: string): string {
  const local = localTimeAt(instant, zone);
  const endsWithDay = local.endsWith('T00:00');
  const shown = endsWithDay ? new Date(Date.parse(`${local}Z`) - day).toISOString().slice(0, 10) : local;
  const words = endsWithDay ? dateWords(shown) : dateTimeWords(shown);
  const year = near === undefined ? null : localTimeAt(near, zone).slice(0, 4);
  const short = year === shown.slice(0, 4) ? words.replace(` ${year}`, '') : words;
  return `${endsWithDay ? 'through' : 'until'} ${short}`;
}
