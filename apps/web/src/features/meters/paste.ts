import { instantAt } from '../../trade/time.js';
import { countWords, listWords } from '../../ui/words.js';
import type { SheetMeter, SheetRow } from './query.js';
import { blankEntry, keyOf, type Entries } from './sheet.js';

export interface Pasted {
  /** What was typed before, with the pasted readings in it. */
  readonly entries: Entries;
  readonly filled: number;
  /** Lines that gave nothing, from 1, with the reason and what to do. */
  readonly left: readonly { readonly line: number; readonly text: string; readonly why: string }[];
}

/**
 * Fills in lines of a spreadsheet or CSV: registration, meter, reading and perhaps the date. Columns may be parted by tabs,
 * semicolons or commas; a first line of headings is passed over; an empty meter is the one that stands for time in service.
 * @param whole whether all aircraft of the house are on the sheet
 */
export function fillIn(text: string, rows: readonly SheetRow[], entries: Entries, now: string, whole: boolean): Pasted {
  const next: Record<string, Entries[string]> = { ...entries };
  const left: { line: number; text: string; why: string }[] = [];
  const seen = new Map<string, number>();
  let filled = 0;
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const separator = separatorOf(lines);
  for (const [index, each] of lines.entries()) {
    const cells = cellsOf(each, separator);
    if (cells.every((cell) => cell === '') || (seen.size === 0 && left.length === 0 && isHeading(cells))) continue;
    const read = readLine(cells, rows, now, whole);
    const line = index + 1;
    const earlier = 'key' in read ? seen.get(read.key) : undefined;
    if ('why' in read) left.push({ line, text: each.trim(), why: read.why });
    else if (earlier !== undefined)
      left.push({ line, text: each.trim(), why: `The same meter is in line ${earlier} already. Keep one of the two.` });
    else {
      next[read.key] = { ...blankEntry, dial: read.dial, asOf: read.asOf };
      seen.set(read.key, line);
      filled += 1;
    }
  }
  return { entries: next, filled, left };
}

type Read = { readonly key: string; readonly dial: string; readonly asOf: string | null } | { readonly why: string };

function readLine(
  [registration = '', meterName = '', reading = '', date = '']: readonly string[],
  rows: readonly SheetRow[],
  now: string,
  whole: boolean,
): Read {
  const row = rows.find(({ aircraft }) => plain(aircraft.registration) === plain(registration));
  if (!row) {
    const more = whole ? 'Check the registration.' : 'Show all aircraft (filters, more pages), then paste again.';
    return { why: registration === '' ? 'The registration is missing.' : `No ${registration} on this sheet. ${more}` };
  }
  const meter = meterOf(row, meterName);
  if (!meter) return { why: noSuchMeter(row, meterName) };
  const dial = reading.replace(/\s*h$/i, '').replace(/^(\d+),(\d{1,2})$/, '$1.$2');
  if (!/^\d{1,6}(\.\d{0,2})?$/.test(dial))
    return {
      why:
        reading === ''
          ? 'The reading is missing: it is the third column.'
          : `"${reading}" is not a reading. Write hours with at most two decimals, and no separator of thousands.`,
    };
  const asOf = date === '' ? null : asOfDate(date, row.aircraft.base.zone, now);
  if (date !== '' && asOf === null)
    return {
      why: `"${date}" is not a date that is known here. Write 2026-03-09, with 14:05 after it if the time matters.`,
    };
  return { key: keyOf(row.aircraft.id, meter.id), dial, asOf };
}

/** A day alone is its end at the base, or now if that has not come: the reading is of that day's last flight. */
function asOfDate(date: string, zone: string, now: string): string | null {
  const found = /^(\d{4}-\d{2}-\d{2})(?:[T ](\d{1,2}:\d{2})(?::\d{2})?)?$/.exec(date);
  if (!found || Number.isNaN(Date.parse(`${found[1]}T00:00Z`))) return null;
  if (found[2] !== undefined) return instantAt(`${found[1]}T${found[2].padStart(5, '0')}`, zone);
  const end = instantAt(`${found[1]}T23:59`, zone);
  const begin = instantAt(`${found[1]}T00:00`, zone);
  return end !== null && end > now && begin !== null && begin <= now ? now : end;
}

function meterOf(row: SheetRow, name: string): SheetMeter | undefined {
  if (name === '') return row.meters.find((each) => each.timeInService) ?? onlyOne(row.meters);
  const wanted = plain(name);
  return row.meters.find(
    (each) => plain(each.name) === wanted || plain(each.id) === wanted || plain(each.kind) === wanted,
  );
}

const onlyOne = (meters: readonly SheetMeter[]): SheetMeter | undefined =>
  meters.length === 1 ? meters[0] : undefined;

function noSuchMeter({ aircraft, meters }: SheetRow, name: string): string {
  const names = listWords(meters.map((each) => each.name));
  if (meters.length === 0) return `${aircraft.registration} has no meter. Define one on its job screen.`;
  if (name === '') return `Which meter? ${aircraft.registration} has ${countWords(meters.length, 'meter')}: ${names}.`;
  return `${aircraft.registration} has no meter "${name}". It has: ${names}.`;
}

/** Letters and digits only: TW-01Q, tw 01q and TW01Q are one registration. */
function plain(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

function isHeading(cells: readonly string[]): boolean {
  return !/\d/.test(cells[2] ?? '') && /^(registration|aircraft|tail|reg)/i.test(cells[0] ?? '');
}

function separatorOf(lines: readonly string[]): string {
  const first = lines.find((line) => line.trim() !== '') ?? '';
  return ['\t', ';'].find((each) => first.includes(each)) ?? ',';
}

/** The cells of one line; a cell in quotes may hold the separator, and two quotes for one. */
function cellsOf(line: string, separator: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < line.length; at += 1) {
    const sign = line[at] ?? '';
    if (sign === '"' && quoted && line[at + 1] === '"') {
      cell += '"';
      at += 1;
    } else if (sign === '"') quoted = !quoted;
    else if (sign === separator && !quoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += sign;
  }
  return [...cells, cell.trim()];
}
