import { admit, apply, blankDossier, parseChange, refusalTexts } from '@tallywing/rules';
import type { Catalogue, Change, Dossier, EquipmentType, Refusal } from '@tallywing/rules';
import type { Table, UploadedFile } from './csv.js';
import { readTable } from './csv.js';
import type { Draft, FileKind, PlanContext, ReadRow } from './file-kind.js';
import { kindOf, readRows } from './file-kind.js';
import { aircraftKinds, allKinds, typesKind } from './kinds/all.js';
import type { TypeRow } from './kinds/types.js';
import { typeOf } from './kinds/types.js';
import { Lists } from './lists.js';
import type { BadRow, Remark } from './problems.js';
import { CellProblem, shortened } from './problems.js';

/** What is stored already, as far as the files can touch it. */
export interface Known {
  /** UTC, to the minute. */
  readonly now: string;
  readonly aircraft: ReadonlyMap<string, KnownAircraft>;
  readonly aircraftIds: ReadonlySet<string>;
  readonly operators: readonly { readonly id: string; readonly name: string }[];
  readonly bases: readonly { readonly id: string; readonly name: string; readonly zone: string }[];
  readonly types: readonly EquipmentType[];
  /** Of them, ids of versions that a newer one took the place of. */
  readonly supersededTypes: ReadonlySet<string>;
}

export interface KnownAircraft {
  readonly dossier: Dossier;
  /** Natural keys of every entry, reading and defect that was ever recorded, superseded or not. */
  readonly recorded: ReadonlySet<string>;
}

export interface PlannedAircraft {
  readonly registration: string;
  readonly aircraftId: string;
  /** Revision that the plan starts from; 0 for an aircraft that is new. */
  readonly revision: number;
  readonly dossier: Dossier;
  readonly changes: readonly Change[];
}

export interface FileSummary {
  readonly name: string;
  readonly kind: string | null;
  readonly rows: number;
  readonly good: number;
  readonly bad: number;
  /** Good rows that say nothing new. */
  readonly unchanged: number;
}

export interface Plan {
  readonly files: readonly FileSummary[];
  readonly aircraft: readonly PlannedAircraft[];
  readonly newOperators: readonly { readonly id: string; readonly name: string }[];
  readonly newTypes: readonly EquipmentType[];
  readonly catalogue: Catalogue;
  readonly bad: readonly BadRow[];
  readonly remarks: readonly Remark[];
}

interface Working {
  readonly registration: string;
  readonly aircraftId: string;
  readonly revision: number;
  readonly recorded: ReadonlySet<string>;
  dossier: Dossier;
  readonly changes: Change[];
}

/** Registrations that the files speak of, to look up what is stored of them. */
export function registrationsIn(files: readonly UploadedFile[]): readonly string[] {
  const found = new Set<string>();
  for (const table of files.map(readTable)) {
    const at = table.header.indexOf('registration');
    for (const { cells } of table.rows) if (at >= 0) found.add((cells[at] ?? '').toUpperCase().replace(/\s+/g, ''));
  }
  return [...found];
}

/** From files to the changes that each aircraft would see. Pure; every row that cannot be taken is named, and the rest goes on. */
export function planImport(files: readonly UploadedFile[], known: Known): Plan {
  const bad: BadRow[] = [];
  const remarks: Remark[] = [];
  const tables = files.map(readTable);
  const sorted = tables.map((table) => identify(table, bad, remarks));
  const rows = sorted.flatMap(({ rows }) => rows);
  const lists = new Lists(known);
  const { types, newTypes } = takeTypes(rows, known, bad, remarks);
  const catalogue = { version: 'import', types: Object.fromEntries(types.map((type) => [type.id, type])) };
  const planner = new Planner(known, lists, catalogue, bad, remarks);
  for (const kind of aircraftKinds) {
    const own = rows.filter((row) => row.kind.kind === kind.kind);
    for (const row of inOrder(own, kind)) planner.take(row);
  }
  return {
    files: sorted.map(({ table, kind, read }) => {
      const badLines = new Set(bad.filter(({ file }) => file === table.file).map(({ line }) => line));
      badLines.delete(null);
      const total = table.rows.length + table.bad.filter(({ line }) => line !== null).length;
      return {
        name: table.file,
        kind: kind?.kind ?? null,
        rows: total,
        good: kind === null ? 0 : total - badLines.size,
        bad: kind === null ? total : badLines.size,
        unchanged: read.filter((row) => planner.unchanged.has(row)).length,
      };
    }),
    aircraft: planner.aircraft(),
    newOperators: lists.newOperators,
    newTypes,
    catalogue,
    bad: bad.sort((a, b) => compare(a.file, b.file) || (a.line ?? 0) - (b.line ?? 0)),
    remarks,
  };
}

function identify(table: Table, bad: BadRow[], remarks: Remark[]) {
  bad.push(...table.bad);
  const nothing = { table, kind: null as FileKind | null, rows: [] as ReadRow[], read: [] as readonly ReadRow[] };
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
  return { table, kind, rows: once(read.rows, kind, bad, remarks), read: read.rows };
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
        value: shortened(row.texts[differs] ?? ''),
        reason: `Line ${earlier.line} has the same ${kind.keySays} and says otherwise.`,
        wayOut: 'Keep the right one of the two rows.',
      });
    return false;
  });
}

function takeTypes(
  rows: readonly ReadRow[],
  { types: stored, supersededTypes }: Pick<Known, 'types' | 'supersededTypes'>,
  bad: BadRow[],
  remarks: Remark[],
) {
  const newTypes: EquipmentType[] = [];
  for (const row of rows.filter(({ kind }) => kind === typesKind)) {
    try {
      const type = typeOf(row.row as unknown as TypeRow);
      if (!stored.some(({ id }) => id === type.id)) newTypes.push(type);
      else if (supersededTypes.has(type.id))
        remarks.push({
          file: row.file,
          line: row.line,
          text: `An older version of ${type.maker} ${type.name}: the catalogue has a newer one, which stays in force.`,
        });
    } catch (error) {
      bad.push(badRow(row, error));
    }
  }
  const renewed = new Set(newTypes.map(({ family }) => family));
  // Versions that aircraft carry stay known under their ids; by name only the newest is found.
  return {
    newTypes,
    types: [
      ...newTypes,
      ...stored.filter(({ family }) => !renewed.has(family)),
      ...stored.filter(({ family }) => renewed.has(family)),
    ],
  };
}

function inOrder(rows: readonly ReadRow[], kind: FileKind): readonly ReadRow[] {
  const { order } = kind;
  if (!order) return rows;
  return rows
    .map((row, at) => ({ row, at, by: order(row.row) }))
    .sort((a, b) => compare(a.by, b.by) || a.at - b.at)
    .map(({ row }) => row);
}

class Planner {
  readonly unchanged = new Set<ReadRow>();
  private readonly working = new Map<string, Working>();
  private readonly lost = new Set<string>();

  constructor(
    private readonly known: Known,
    private readonly lists: Lists,
    private readonly catalogue: Catalogue,
    private readonly bad: BadRow[],
    private readonly remarks: Remark[],
  ) {}

  aircraft(): readonly PlannedAircraft[] {
    return [...this.working.values()];
  }

  take(row: ReadRow): void {
    const registration = String(row.row['registration']);
    const own = row.kind.kind === 'aircraft';
    try {
      const working = this.find(registration, own);
      const drafts = row.kind.plan(row.row, this.contextOf(working, row));
      const { dossier, changes } = this.taken(working, row, drafts);
      working.dossier = dossier;
      working.changes.push(...changes);
      this.working.set(registration, working);
      if (changes.length === 0) this.unchanged.add(row);
    } catch (error) {
      if (own) this.lost.add(registration);
      this.bad.push(badRow(row, error));
    }
  }

  private find(registration: string, mayStart: boolean): Working {
    const working = this.working.get(registration);
    if (working) return working;
    const stored = this.known.aircraft.get(registration);
    if (stored) {
      const { dossier, recorded } = stored;
      return {
        registration,
        aircraftId: dossier.aircraftId,
        revision: dossier.revision,
        recorded,
        dossier,
        changes: [],
      };
    }
    if (!mayStart)
      throw new CellProblem(
        this.lost.has(registration)
          ? `The row of ${registration} in the file of aircraft could not be taken.`
          : `There is no aircraft ${registration}.`,
        this.lost.has(registration)
          ? 'Mend that row; this one then goes in with it.'
          : 'Correct the registration, or add the aircraft to the file of aircraft.',
        'registration',
      );
    const aircraftId = this.freeId(registration);
    return {
      registration,
      aircraftId,
      revision: 0,
      recorded: new Set(),
      dossier: blankDossier(aircraftId),
      changes: [],
    };
  }

  private freeId(registration: string): string {
    const wanted = registration.toLowerCase();
    for (let n = 1; ; n += 1) {
      const candidate = n === 1 ? wanted : `${wanted}-${n}`;
      if (!this.known.aircraftIds.has(candidate)) return candidate;
    }
  }

  /** A row's changes are taken all together or not at all. */
  private taken(working: Working, row: ReadRow, drafts: readonly Draft[]) {
    let { dossier } = working;
    const changes: Change[] = [];
    for (const draft of drafts) {
      const parsed = parseChange({ ...draft, version: 1 });
      if (!parsed.ok) throw new Refused(parsed.refusals, row.kind);
      const refusals = admit(dossier, this.catalogue, parsed.change, this.known.now);
      if (refusals.length > 0) throw new Refused(refusals, row.kind);
      dossier = apply(dossier, parsed.change);
      changes.push(parsed.change);
    }
    return { dossier, changes };
  }

  private contextOf(working: Working, row: ReadRow): PlanContext {
    return {
      dossier: working.dossier,
      isNew: working.dossier.revision === 0,
      file: row.file,
      today: this.known.now.slice(0, 10),
      types: this.catalogue.types,
      typeNamed: (name) => typeNamed(Object.values(this.catalogue.types), name),
      operatorNamed: (name) => this.lists.operatorNamed(name, (text) => this.remark(row, text)),
      baseNamed: (name, zone) => this.lists.baseNamed(name, zone, (text) => this.remark(row, text)),
      everRecorded: (key) => working.recorded.has(key),
      remark: (text) => this.remark(row, text),
    };
  }

  private remark(row: ReadRow, text: string): void {
    this.remarks.push({ file: row.file, line: row.line, text });
  }
}

/** By name, part number or family, whatever the letter case; null also where two makers share a name. */
function typeNamed(types: readonly EquipmentType[], name: string): EquipmentType | null {
  const asked = name.trim().toLowerCase();
  const families = new Map<string, EquipmentType>();
  for (const type of types) {
    const names = [type.name, type.partNumber, type.family, type.id, `${type.maker} ${type.name}`];
    if (names.some((each) => each.toLowerCase() === asked) && !families.has(type.family))
      families.set(type.family, type);
  }
  return families.size === 1 ? ([...families.values()][0] ?? null) : null;
}

/** A refusal of the core, turned to the row and column that it came from. */
class Refused extends CellProblem {
  constructor(refusals: readonly Refusal[], kind: FileKind) {
    const [first] = refusals;
    const text = first
      ? refusalTexts[first.code]
      : { says: 'This cannot be recorded.', wayOut: 'Compare it with the format.' };
    super(
      filled(text.says, first?.data ?? {}),
      filled(text.wayOut, first?.data ?? {}),
      columnFor(first?.field ?? '', kind),
    );
  }
}

function columnFor(field: string, kind: FileKind): string | null {
  const exact = kind.fields[field];
  if (exact !== undefined) return exact;
  const known = Object.keys(kind.fields)
    .filter((name) => field.startsWith(`${name}.`))
    .sort((a, b) => b.length - a.length)[0];
  return known === undefined ? null : (kind.fields[known] ?? null);
}

function filled(text: string, data: Readonly<Record<string, string | number | null>>): string {
  // Hours of a meter come in whole hundredths; people read decimal hours.
  const hours = 'meter' in data;
  return text.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = data[name] ?? 'not recorded';
    return hours && typeof value === 'number' ? String(value / 100) : String(value);
  });
}

function badRow(row: ReadRow, error: unknown): BadRow {
  if (!(error instanceof CellProblem)) throw error;
  const { column, reason, wayOut } = error;
  const value = column === null ? '' : (row.texts[column] ?? '');
  return { file: row.file, line: row.line, column, value: value === '' ? null : shortened(value), reason, wayOut };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
