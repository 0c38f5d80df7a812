import type { Carried } from './aircraft-records.js';
import { isJson, readRecords } from './aircraft-records.js';
import type { Table, UploadedFile } from './csv.js';
import { readTable } from './csv.js';
import type { FileKind, ReadRow } from './file-kind.js';
import { kindOf, readRows } from './file-kind.js';
import { aircraftKinds, allKinds, typesKind } from './kinds/all.js';
import type { BadRow, Remark } from './problems.js';
import { shortened } from './problems.js';

/** Files as they were sent, row by row, before anybody looks at what is stored. */
export interface FilesRead {
  readonly files: readonly { readonly name: string; readonly kind: string | null; readonly rows: number }[];
  /** What came as whole aircraft records, in JSON. */
  readonly carried: Carried;
  readonly typeRows: readonly ReadRow[];
  /** Aircraft that the files speak of. */
  readonly registrations: readonly string[];
  /** Rows by aircraft, each in the order in which they are taken. */
  readonly byAircraft: ReadonlyMap<string, readonly ReadRow[]>;
  readonly bad: readonly BadRow[];
  readonly remarks: readonly Remark[];
}

export function readFiles(files: readonly UploadedFile[]): FilesRead {
  const bad: BadRow[] = [];
  const remarks: Remark[] = [];
  const tables = files.filter((file) => !isJson(file));
  const sorted = tables.map((file) => identify(readTable(file), bad, remarks));
  const rows = sorted.flatMap((each) => each.rows);
  const { carried, summaries } = readRecords(files.filter(isJson), bad);
  const byAircraft = grouped(aircraftKinds.flatMap((kind) => inOrder(rows, kind)));
  return {
    carried,
    files: [
      ...sorted.map(({ table, kind }) => ({
        name: table.file,
        kind: kind?.kind ?? null,
        rows: table.rows.length + table.bad.filter(({ line }) => line !== null).length,
      })),
      ...summaries,
    ],
    typeRows: rows.filter(({ kind }) => kind === typesKind),
    registrations: [...new Set([...carried.histories.keys(), ...byAircraft.keys()])],
    byAircraft,
    bad,
    remarks,
  };
}

function identify(table: Table, bad: BadRow[], remarks: Remark[]) {
  bad.push(...table.bad);
  const nothing = { table, kind: null as FileKind | null, rows: [] as readonly ReadRow[] };
  if (table.header.length === 0) return nothing;
  const fault = (reason: string, wayOut: string) =>
    bad.push({ file: table.file, line: 1, column: null, value: null, reason, wayOut });
  const twice = table.header.find((name, at) => name !== '' && table.header.indexOf(name) !== at);
  if (twice !== undefined) {
    fault(`The column ${twice} is there twice.`, 'Take one of the two out.');
    return nothing;
  }
  const found = kindOf(table.header, allKinds);
  if ('reason' in found) {
    fault(found.reason, found.wayOut);
    return nothing;
  }
  const { kind } = found;
  const strange = table.header.filter((name) => name !== '' && !(name in kind.columns));
  if (strange.length > 0)
    remarks.push({
      file: table.file,
      line: 1,
      text: `Columns that this format does not know are passed over: ${strange.join(', ')}.`,
    });
  const read = readRows(table, kind);
  bad.push(...read.bad);
  return { table, kind, rows: once(read.rows, kind, bad, remarks) };
}

/** The same key again: the same content is taken once, other content is bad, because one of the two must be wrong. */
function once(rows: readonly ReadRow[], kind: FileKind, bad: BadRow[], remarks: Remark[]): ReadRow[] {
  const first = new Map<string, ReadRow>();
  return rows.filter((row) => {
    const key = kind.key(row.row);
    const earlier = first.get(key);
    if (!earlier) {
      first.set(key, row);
      return true;
    }
    const differs = Object.keys(kind.columns).find(
      (name) => JSON.stringify(earlier.row[name]) !== JSON.stringify(row.row[name]),
    );
    if (differs === undefined)
      remarks.push({ file: row.file, line: row.line, text: `Repeats line ${earlier.line}; taken once.` });
    else
      bad.push({
        file: row.file,
        line: row.line,
        column: differs,
        value: shortened(row.text(differs)),
        reason: `Line ${earlier.line} has the same ${kind.keySays} and says otherwise.`,
        wayOut: 'Keep the right one of the two rows.',
      });
    return false;
  });
}

function inOrder(rows: readonly ReadRow[], kind: FileKind): readonly ReadRow[] {
  const own = rows.filter((row) => row.kind.kind === kind.kind);
  const { order } = kind;
  if (!order) return own;
  return own
    .map((row, at) => ({ row, at, by: order(row.row) }))
    .sort((a, b) => (a.by < b.by ? -1 : a.by > b.by ? 1 : a.at - b.at))
    .map(({ row }) => row);
}

function grouped(rows: readonly ReadRow[]): ReadonlyMap<string, readonly ReadRow[]> {
  const found = new Map<string, ReadRow[]>();
  for (const row of rows) {
    const registration = String(row.row['registration']);
    const own = found.get(registration);
    if (own) own.push(row);
    else found.set(registration, [row]);
  }
  return found;
}
