import { CsvError, parse } from 'csv-parse/sync';
import type { BadRow } from './problems.js';
import { shortened } from './problems.js';

export interface UploadedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Table {
  readonly file: string;
  readonly delimiter: Delimiter;
  /** Column names as this format writes them: lower case, blanks and dashes as `_`. */
  readonly header: readonly string[];
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
  readonly bad: readonly BadRow[];
}

export type Delimiter = ',' | ';' | '\t';
export const mostRows = 50_000;
const longestCell = 20_000;

/**
 * Reads one file as RFC 4180 describes it, and as spreadsheets write it: with or without a byte order mark, comma,
 * semicolon or tab, any line ending (LF inside cells afterwards). Blank lines and blank cells at the end of a row are passed over. A broken row is
 * named and the rest is read on.
 */
export function readTable({ name, bytes }: UploadedFile): Table {
  const decoded = decode(bytes);
  if ('reason' in decoded) return unreadable(name, { line: null, ...decoded });
  // One kind of line end from here on, inside cells too: the reader below counts CRLF within quotes twice.
  const text = decoded.text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  if (text.trim() === '')
    return unreadable(name, { line: null, reason: 'The file is empty.', wayOut: 'Send a file with a header row.' });
  const delimiter = delimiterOf(text);
  const bad: BadRow[] = [];
  const tell = (line: number | null, reason: string, wayOut: string, value: string | null = null) =>
    bad.push({ file: name, line, column: null, value, reason, wayOut });
  const records = parse(text, {
    delimiter,
    info: true,
    relax_column_count: true,
    max_record_size: 200_000,
    record_delimiter: '\n',
    skip_records_with_error: true,
    on_skip: (error) => {
      if (error instanceof CsvError) tell(Number(error['lines']) || null, ...wordsFor(error));
      return undefined;
    },
  }) as unknown as readonly { readonly record: readonly string[]; readonly info: { readonly lines: number } }[];

  const rows = numbered(records).filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const [first, ...body] = rows;
  const header = (first?.cells ?? []).map(columnName);
  const width = header.findLastIndex((column) => column !== '') + 1;
  const kept = body.slice(0, mostRows).flatMap(({ line, cells }) => {
    const beyond = cells.slice(width).find((cell) => cell.trim() !== '');
    if (beyond !== undefined)
      tell(
        line,
        'The row has more cells than the header.',
        'Put quotes around a cell that holds the delimiter.',
        shortened(beyond),
      );
    else if (cells.some((cell) => cell.length > longestCell))
      tell(line, 'A cell is longer than anything this format knows.', 'Look for a quote that was never closed.');
    else return [{ line, cells: Array.from({ length: width }, (_, at) => (cells[at] ?? '').trim()) }];
    return [];
  });
  if (body.length > mostRows)
    tell(null, `The file has more than ${mostRows} rows.`, 'Split it; a second file adds to the first.');
  return { file: name, delimiter, header: header.slice(0, width), rows: kept, bad };
}

/** `Max weight (lb)` and `max-weight-lb` are both max_weight_lb. */
export function columnName(cell: string): string {
  return cell
    .trim()
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '');
}

function unreadable(file: string, problem: { line: number | null; reason: string; wayOut: string }): Table {
  return { file, delimiter: ',', header: [], rows: [], bad: [{ file, column: null, value: null, ...problem }] };
}

function decode(bytes: Uint8Array): { text: string } | { reason: string; wayOut: string; line?: number } {
  const wayOut = 'Save it again as CSV in UTF-8.';
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return { reason: 'The file is in UTF-16.', wayOut };
  if (bytes[0] === 0x50 && bytes[1] === 0x4b)
    return { reason: 'This is a workbook, not a CSV file.', wayOut: 'Save the sheet as CSV in UTF-8.' };
  const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  try {
    return { text: strict.decode(bytes) };
  } catch {
    // The line is worth a second look: people search for it.
    let start = 0;
    for (let line = 1; start <= bytes.length; line += 1) {
      const found = bytes.indexOf(0x0a, start);
      const end = found === -1 ? bytes.length : found;
      try {
        strict.decode(bytes.subarray(start, end));
      } catch {
        return { reason: 'A character here is not UTF-8.', wayOut, line };
      }
      start = end + 1;
    }
    return { reason: 'The file is not in UTF-8.', wayOut };
  }
}

/** The one that the header uses most, outside quotes. */
function delimiterOf(text: string): Delimiter {
  const line = /^(?:"(?:[^"]|"")*"|[^\n"])*/.exec(text.trimStart())?.[0] ?? '';
  const bare = line.replace(/"(?:[^"]|"")*"/g, '');
  const counts = ([',', ';', '\t'] as const).map((each) => ({ each, times: bare.split(each).length }));
  return counts.reduce((a, b) => (b.times > a.times ? b : a)).each;
}

/** The reader tells the line on which a record ends; people look for the one on which it begins. */
function numbered(
  records: readonly { readonly record: readonly string[]; readonly info: { readonly lines: number } }[],
): { line: number; cells: readonly string[] }[] {
  return records.map(({ record, info }) => {
    const within = record.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
    return { line: info.lines - within, cells: record };
  });
}

function wordsFor(error: CsvError): [reason: string, wayOut: string] {
  if (error.code === 'CSV_QUOTE_NOT_CLOSED')
    return ['A quote is opened here and never closed.', 'Close it, or write a quote inside a cell as two quotes.'];
  if (error.code === 'CSV_MAX_RECORD_SIZE')
    return ['This row is longer than any row can be.', 'Look for a quote that was never closed.'];
  return [
    'A quote stands where none may be.',
    'Put the whole cell in quotes and write a quote inside it as two quotes.',
  ];
}
