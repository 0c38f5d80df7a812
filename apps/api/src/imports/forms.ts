import { isZone } from '@tallywing/rules';
import { CellProblem } from './problems.js';

/** How a cell is written. `read` throws a CellProblem that says what is wrong and what to write instead. */
export interface Form<T> {
  readonly written: string;
  readonly read: (text: string) => T;
}

export const text = form('text', (cell) => {
  if (cell.length > 200) throw new CellProblem('This is longer than 200 characters.', 'Shorten it.');
  return cell;
});
export const note = form('text, up to 4,000 characters', (cell) => {
  if (cell.length > 4000) throw new CellProblem('This is longer than 4,000 characters.', 'Shorten it.');
  return cell;
});

export const registration = form('as painted on, letters, digits and dashes', (cell) => {
  const found = cell.toUpperCase().replace(/\s+/g, '');
  if (/^[A-Z0-9][A-Z0-9-]{1,9}$/.test(found)) return found;
  throw new CellProblem('This cannot be a registration.', 'Write 2 to 10 letters, digits and dashes.');
});

/** Ids are the shop's own short names; letter case and blanks around them do not matter. */
export const id = form('short name without blanks, such as nav1', (cell) => {
  const found = cell.toLowerCase();
  if (/^[a-z0-9][a-z0-9._:>/-]{0,79}$/.test(found)) return found;
  throw new CellProblem('This cannot be a short name.', 'Use letters, digits and . _ : > / - without blanks.');
});
export const ids = list('short names, a blank or | between them', id);

export const date = form('day, 2026-03-01 or 1 Mar 2026', (cell) => {
  const named = /^(\d{1,2})[ -]([a-z]{3,9})\.?[ -](\d{4})$/i.exec(cell);
  const ordered = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(cell);
  if (named) return dayOf(cell, named[3], String(monthNumber(cell, named[2] ?? '')), named[1]);
  if (ordered) return dayOf(cell, ordered[1], ordered[2], ordered[3]);
  if (/^\d{5}(\.\d+)?$/.test(cell))
    throw new CellProblem("This looks like a spreadsheet's day number.", 'Format the column as 2026-03-01.');
  if (/^\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4}$/.test(cell))
    throw new CellProblem('It is not certain which part is the day.', 'Write it as 2026-03-01.');
  if (/^\d{4}(-\d{1,2})?$/.test(cell))
    throw new CellProblem('The day is missing.', 'Write it whole, as 2026-03-01; take the last day it can have been.');
  throw new CellProblem('This is not a day.', 'Write it as 2026-03-01.');
});

/** A day alone stands for noon UTC of that day. */
export const instant = form('UTC time, 2026-03-01T14:30Z, or a day alone for noon UTC', (cell) => {
  const found = /^(\d{4}-\d{2}-\d{2})[T ](\d{1,2}):(\d{2})(?::\d{2})?\s?Z?$/i.exec(cell);
  if (!found) return `${date.read(cell)}T12:00Z`;
  const [, day = '', hour = '', minute = ''] = found;
  if (Number(hour) > 23 || Number(minute) > 59)
    throw new CellProblem('There is no such time.', 'Write it as 2026-03-01T14:30Z.');
  return `${date.read(day)}T${hour.padStart(2, '0')}:${minute}Z`;
});

/** Decimal hours to whole hundredths. */
export const hours = form('decimal hours, at most two decimals, such as 1234.5', (cell) => {
  if (/^\d+:\d{2}$/.test(cell))
    throw new CellProblem('Hours and minutes are not decimal hours.', 'Write 30 minutes as 0.5.');
  const hundredths = decimal(cell) * 100;
  if (hundredths < 0) throw new CellProblem('Hours cannot be negative.', 'Check the reading.');
  if (Math.abs(hundredths - Math.round(hundredths)) > 1e-6)
    throw new CellProblem('Hours have at most two decimals.', 'Round as the meter shows it.');
  if (hundredths > 20_000_000)
    throw new CellProblem('That is more hours than an aircraft can have.', 'Check the decimal point.');
  return Math.round(hundredths);
});

export const decimalNumber = form('number', decimal);
export const wholeNumber = form('whole number', (cell) => {
  const found = decimal(cell);
  if (!Number.isInteger(found)) throw new CellProblem('This must be a whole number.', 'Round it.');
  return found;
});
/** Part of what one flight hour moves the meter on, in thousandths. */
export const pace = form('how far it moves in one flight hour, such as 1 or 1.18', (cell) => {
  const found = Math.round(decimal(cell) * 1000);
  if (found < 0 || found > 5000) throw new CellProblem('No meter runs like that.', 'Write 1 for the same pace.');
  return found;
});

export const yesNo = form('yes or no', (cell) => {
  if (/^(y|yes|true|1)$/i.test(cell)) return true;
  if (/^(n|no|false|0)$/i.test(cell)) return false;
  throw new CellProblem('This is neither yes nor no.', 'Write yes or no; leave it empty if nobody knows.');
});

export const zone = form('zone name, such as America/Chicago', (cell) => {
  if (isZone(cell)) return cell;
  throw new CellProblem('This zone is not known.', 'Use a zone name such as America/Chicago.');
});

/** A document of another format in one cell, in the quotes that RFC 4180 asks for. */
export const json = form('JSON', (cell): unknown => {
  try {
    return JSON.parse(cell);
  } catch {
    throw new CellProblem('This is not JSON.', 'Write quotes inside the cell as two quotes.');
  }
});

/** One word of a closed list; letter case, blanks and underscores do not matter. */
export function word<const W extends string>(words: readonly W[]): Form<W> {
  return form(words.join(', '), (cell) => {
    const asked = plain(cell);
    const found = words.find((each) => plain(each) === asked);
    if (found !== undefined) return found;
    throw new CellProblem(`${cell} is not a word of this list.`, `Use one of: ${words.join(', ')}.`);
  });
}

export function words<const W extends string>(allowed: readonly W[]): Form<W[]> {
  return list(`${allowed.join(', ')}; a blank or | between them`, word(allowed));
}

function list<T>(written: string, each: Form<T>): Form<T[]> {
  return form(written, (cell) => [
    ...new Set(
      cell
        .split(/[|\s]+/)
        .filter((part) => part !== '')
        .map((part) => each.read(part)),
    ),
  ]);
}

function form<T>(written: string, read: (text: string) => T): Form<T> {
  return { written, read };
}

function plain(word: string): string {
  return word.toLowerCase().replace(/[\s_]+/g, '-');
}

/** `1,234.5`, `1234.5` and `1234,5` are one number; `1.234,5` is refused, it can be meant either way elsewhere. */
function decimal(cell: string): number {
  const compact = cell.replace(/\s/g, '');
  const usual = /^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(compact) ? compact.replaceAll(',', '') : compact;
  const pointed = /^-?\d+,\d{1,2}$/.test(usual) ? usual.replace(',', '.') : usual;
  if (!/^-?\d+(\.\d+)?$/.test(pointed)) throw new CellProblem('This is not a number.', 'Write it as 1234.5.');
  return Number(pointed);
}

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
function monthNumber(cell: string, name: string): number {
  const found = months.indexOf(name.slice(0, 3).toLowerCase());
  if (found < 0) throw new CellProblem(`${cell} names no month.`, 'Write it as 2026-03-01.');
  return found + 1;
}

function dayOf(cell: string, year = '', month = '', day = ''): string {
  const found = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const real = new Date(`${found}T00:00:00Z`);
  if (Number.isNaN(real.getTime()) || real.toISOString().slice(0, 10) !== found)
    throw new CellProblem(`There is no day ${cell}.`, 'Check day and month.');
  if (found < '1900-01-01' || found > '2100-12-31')
    throw new CellProblem(`${cell} lies outside anything this record can hold.`, 'Check the year.');
  return found;
}
