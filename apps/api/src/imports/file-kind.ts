import type { Catalogue, Change, Dossier, EquipmentType } from '@tallywing/rules';
import type { Table } from './csv.js';
import type { Form } from './forms.js';
import type { Overwritten } from './overwritten.js';
import type { BadRow } from './problems.js';
import { CellProblem, shortened } from './problems.js';

export interface Column<T> {
  readonly form: Form<unknown>;
  readonly required: boolean;
  readonly says: string;
  /** Never there at run time: carries the type of the value. */
  readonly value?: T;
}
type Columns = Readonly<Record<string, Column<unknown>>>;
export type RowOf<C extends Columns> = {
  readonly [K in keyof C]: NonNullable<C[K]> extends Column<infer T> ? T : never;
};

export function required<T>(form: Form<T>, says: string): Column<T> {
  return { form, required: true, says };
}
/** An empty cell is "nobody recorded it": null. */
export function optional<T>(form: Form<T>, says: string): Column<T | null> {
  return { form, required: false, says };
}

/** A change without its version. */
export type Draft = { [C in Change as C['kind']]: Omit<C, 'version'> }[Change['kind']];

/** What a row may look at while its changes are planned: the aircraft as the rows before it left it. */
export interface PlanContext {
  readonly dossier: Dossier;
  readonly isNew: boolean;
  readonly file: string;
  /** The civil day of the import, for statements without a day of their own. */
  readonly today: string;
  readonly types: Catalogue['types'];
  readonly typeNamed: (name: string) => EquipmentType | null;
  readonly operatorNamed: (name: string) => string;
  readonly baseNamed: (name: string, zone: string | null) => { id: string; name: string; zone: string };
  /**
   * What was recorded last on the aircraft under this natural key, even when the record has since been superseded: as `keys.ts`
   * tells content apart. Null: never.
   */
  readonly recordedAs: (key: string) => string | null;
  /** Units that the files name by themselves: each of them is another one. */
  readonly named: ReadonlySet<string>;
  /** From here on, this name in the files means that unit of the aircraft. */
  readonly alias: (name: string, unitId: string) => void;
  /** Asks the person about something that both may be; true: as the file has it. */
  readonly ask: (difference: Overwritten) => boolean;
  readonly uncatalogued: (type: string) => void;
  readonly remark: (text: string) => void;
}

/** One kind of file: its columns, what makes a row the same row again, and what a row becomes. */
export interface FileKind<C extends Columns = Columns> {
  readonly kind: string;
  readonly says: string;
  readonly keySays: string;
  readonly columns: C;
  readonly key: (row: RowOf<C>) => string;
  /** Rows of one aircraft are taken in this order; without it, as they stand. */
  readonly order?: (row: RowOf<C>) => string;
  /** Nothing to do for a row that is recorded already: an empty list. Throws CellProblem for a row that cannot be taken. */
  readonly plan: (row: RowOf<C>, context: PlanContext) => readonly Draft[];
  /** Which column holds a field of the change, for refusals. */
  readonly fields: Readonly<Record<string, string>>;
}

export function fileKind<const C extends Columns>(kind: FileKind<C>): FileKind {
  return kind as unknown as FileKind;
}

export interface ReadRow {
  readonly file: string;
  readonly line: number;
  readonly kind: FileKind;
  readonly row: Readonly<Record<string, unknown>>;
  /** The cell of a column as it was written. */
  readonly text: (column: string) => string;
}

/** The kind whose necessary columns are all in the header; of several, the one that knows most of the columns. */
export function kindOf(
  header: readonly string[],
  kinds: readonly FileKind[],
): { readonly kind: FileKind } | { readonly reason: string; readonly wayOut: string } {
  const has = new Set(header);
  const ranked = kinds
    .map((kind) => ({
      kind,
      missing: Object.entries(kind.columns).flatMap(([name, column]) =>
        column.required && !has.has(name) ? [name] : [],
      ),
      known: header.filter((name) => name in kind.columns).length,
    }))
    .sort((a, b) => Number(a.missing.length > 0) - Number(b.missing.length > 0) || b.known - a.known);
  const [best, next] = ranked;
  if (!best || best.known === 0)
    return {
      reason: 'None of the columns is known, so the kind of file cannot be told.',
      wayOut: `Name the columns as the description of the format does. Kinds of file: ${kinds.map(({ kind }) => kind).join(', ')}.`,
    };
  if (best.missing.length > 0)
    return {
      reason: `This looks like a file of ${best.kind.kind}, but these columns are missing: ${best.missing.join(', ')}.`,
      wayOut: 'Add them to the header; every row needs them.',
    };
  if (next && next.missing.length === 0 && next.known === best.known)
    return {
      reason: `This can be a file of ${best.kind.kind} or of ${next.kind.kind}.`,
      wayOut: 'Add a column that only one of them has.',
    };
  return { kind: best.kind };
}

/** Reads every cell; a row with a cell that cannot be read is bad as a whole, and each such cell is named. */
export function readRows(
  table: Table,
  kind: FileKind,
): { readonly rows: readonly ReadRow[]; readonly bad: readonly BadRow[] } {
  const bad: BadRow[] = [];
  const rows: ReadRow[] = [];
  for (const { line, cells } of table.rows) {
    const text = (column: string) => cells[table.header.indexOf(column)] ?? '';
    const row: Record<string, unknown> = {};
    const before = bad.length;
    for (const [name, column] of Object.entries(kind.columns)) {
      const cell = text(name);
      try {
        if (cell === '' && column.required) throw new CellProblem('This cell is empty.', needed(column));
        row[name] = cell === '' ? null : column.form.read(cell);
      } catch (error) {
        if (!(error instanceof CellProblem)) throw error;
        bad.push({
          file: table.file,
          line,
          column: name,
          value: cell === '' ? null : shortened(cell),
          reason: error.reason,
          wayOut: error.wayOut,
        });
      }
    }
    if (bad.length === before) rows.push({ file: table.file, line, kind, row, text });
  }
  return { rows, bad };
}

function needed(column: Column<unknown>): string {
  return column.form.written.startsWith('day') || column.form.written.startsWith('UTC')
    ? 'Give the day of the entry; if no paper has it, the day on which it was seen.'
    : `Every row needs it: ${column.form.written}.`;
}
