import { admit, apply, blankDossier, parseChange, refusalTexts } from '@tallywing/rules';
import type { Catalogue, Change, Dossier, EquipmentType, Refusal } from '@tallywing/rules';
import type { CarriedAircraft } from './aircraft-records.js';
import type { FileKind, PlanContext, ReadRow } from './file-kind.js';
import type { Lists } from './lists.js';
import type { Overwritten } from './overwritten.js';
import { overwrittenBy } from './overwritten.js';
import type { BadRow, Remark } from './problems.js';
import { CellProblem, shortened } from './problems.js';
import { takenOver } from './taken-over.js';

export interface KnownAircraft {
  readonly dossier: Dossier;
  /** Natural keys of every entry, reading and defect that was ever recorded, superseded or not, with what it said last. */
  readonly recorded: ReadonlyMap<string, string>;
  /** Hash of the record after as many entries as the file of aircraft records holds; null where there are none or not so many. */
  readonly hashAt: string | null;
}

export interface PlannedAircraft {
  readonly registration: string;
  readonly aircraftId: string;
  /** Revision that the plan starts from; 0 for an aircraft that is new. */
  readonly revision: number;
  readonly dossier: Dossier;
  readonly changes: readonly Change[];
}

/** A row that says otherwise than what is recorded. Nothing is overwritten until a person says so. */
export interface Difference extends Overwritten {
  readonly file: string;
  readonly line: number;
  readonly registration: string;
  /** True: the file's word is taken; false: what is recorded stays; null: nobody has decided. */
  readonly taken: boolean | null;
}

/** What a person decided about differences: all of one kind, or the rows (`file:line`) whose word is taken. */
export type Decision = 'take' | 'keep' | ReadonlySet<string> | null;

/** Where findings of the planning go. */
export interface Heard {
  readonly bad: BadRow[];
  readonly remarks: Remark[];
  readonly differences: Difference[];
  /** Units by the name of the type that the catalogue does not have. */
  readonly uncatalogued: Map<string, number>;
  /** Good rows that say nothing new, by file. */
  readonly unchanged: Map<string, number>;
  /** Aircraft records that could not be taken, by file. */
  readonly refused: Map<string, number>;
}

interface Working {
  readonly known: KnownAircraft;
  readonly start: Dossier;
  readonly aliases: Map<string, string>;
  readonly named: ReadonlySet<string>;
  dossier: Dossier;
  readonly changes: Change[];
}

export interface PlannerGiven {
  readonly now: string;
  readonly lists: Lists;
  readonly catalogue: Catalogue;
  readonly decision: Decision;
  readonly heard: Heard;
  readonly freeId: (registration: string) => string;
}

/** Columns that name a unit of the aircraft by the short name that the files use. */
const unitColumns = ['unit', 'from_unit', 'to_unit', 'serves', 'units', 'subjects', 'subject'] as const;

/** The rows of one aircraft, turned into what has to be recorded on it. */
export class Planner {
  constructor(private readonly given: PlannerGiven) {}

  /** Null where there is nothing to record on: the aircraft is not known and its own row could not be taken. */
  plan(
    registration: string,
    rows: readonly ReadRow[],
    stored: KnownAircraft | null,
    carried: CarriedAircraft | null,
  ): PlannedAircraft | null {
    let working = stored && begun(stored, rows);
    if (carried !== null) working = this.takeOver(carried, rows, stored) ?? working;
    let lost = carried !== null && working === null;
    for (const row of rows) {
      const own = row.kind.kind === 'aircraft';
      try {
        if (!working && !own) throw nowhere(registration, lost);
        const from: Working = working ?? begun(blank(this.given.freeId(registration)), rows);
        this.take(from, row);
        working = from;
      } catch (error) {
        if (own) lost = true;
        this.given.heard.bad.push(badRow(row, error));
      }
    }
    if (!working) return null;
    const { dossier, start, changes } = working;
    return { registration, aircraftId: dossier.aircraftId, revision: start.revision, dossier, changes };
  }

  /** Null, and told, where the record cannot be taken over. */
  private takeOver(carried: CarriedAircraft, rows: readonly ReadRow[], stored: KnownAircraft | null): Working | null {
    const { catalogue, now, heard, freeId } = this.given;
    const { file, registration } = carried;
    try {
      const known = stored ?? blank(freeId(registration));
      const { dossier, changes, older } = takenOver(carried, known.dossier, known.hashAt, catalogue, now);
      if (changes.length === 0) count(heard.unchanged, file);
      if (older)
        heard.remarks.push({
          file,
          line: null,
          text: `${registration} has gone on since; nothing of the file is new.`,
        });
      const working = begun(known, rows);
      working.dossier = dossier;
      working.changes.push(...changes);
      return working;
    } catch (error) {
      if (!(error instanceof CellProblem)) throw error;
      const { column, reason, wayOut } = error;
      heard.bad.push({ file, line: null, column, value: registration, reason, wayOut });
      count(heard.refused, file);
      return null;
    }
  }

  /** A row's changes are taken all together or not at all. */
  private take(working: Working, row: ReadRow): void {
    const { heard } = this.given;
    const drafts = row.kind.plan(aliased(row, working.aliases), this.contextOf(working, row));
    let { dossier } = working;
    const changes: Change[] = [];
    const differences: Difference[] = [];
    for (const draft of drafts) {
      const found = overwrittenBy(draft, working.dossier).map((each) => this.difference(row, each));
      differences.push(...found);
      if (found.some(({ taken }) => taken !== true)) continue;
      const parsed = parseChange({ ...draft, version: 1 });
      if (!parsed.ok) throw new Refused(parsed.refusals, row.kind);
      const refusals = admit(dossier, this.given.catalogue, parsed.change, this.given.now);
      if (refusals.length > 0) throw new Refused(refusals, row.kind);
      dossier = apply(dossier, parsed.change);
      changes.push(parsed.change);
    }
    working.dossier = dossier;
    working.changes.push(...changes);
    heard.differences.push(...differences);
    if (changes.length === 0 && differences.length === 0) count(heard.unchanged, row.file);
  }

  private difference(row: ReadRow, overwritten: Overwritten): Difference {
    const { decision } = this.given;
    const taken =
      decision === null
        ? null
        : typeof decision === 'string'
          ? decision === 'take'
          : decision.has(`${row.file}:${row.line}`);
    const { file, line } = row;
    return { file, line, registration: String(row.row['registration']), ...overwritten, taken };
  }

  private contextOf(working: Working, row: ReadRow): PlanContext {
    const { given } = this;
    const { heard, lists } = given;
    const remark = (text: string) => heard.remarks.push({ file: row.file, line: row.line, text });
    return {
      dossier: working.dossier,
      isNew: working.dossier.revision === 0,
      types: this.given.catalogue.types,
      file: row.file,
      today: given.now.slice(0, 10),
      typeNamed: (name) => typeNamed(Object.values(given.catalogue.types), name),
      operatorNamed: (name) => lists.operatorNamed(name, remark),
      baseNamed: (name, zone) => lists.baseNamed(name, zone, remark),
      recordedAs: (key) => working.known.recorded.get(key) ?? null,
      named: working.named,
      alias: (name, unitId) => working.aliases.set(name, unitId),
      ask: (found) => {
        const difference = this.difference(row, found);
        heard.differences.push(difference);
        return difference.taken === true;
      },
      uncatalogued: (type) => count(heard.uncatalogued, type),
      remark,
    };
  }
}

function count(counts: Map<string, number>, what: string): void {
  counts.set(what, (counts.get(what) ?? 0) + 1);
}

function begun(known: KnownAircraft, rows: readonly ReadRow[]): Working {
  const named = rows.flatMap(({ kind, row }) => (kind.kind === 'units' ? [String(row['unit'])] : []));
  const { dossier } = known;
  return { known, start: dossier, aliases: new Map(), named: new Set(named), dossier, changes: [] };
}

function blank(aircraftId: string): KnownAircraft {
  return { dossier: blankDossier(aircraftId), recorded: new Map(), hashAt: null };
}

function nowhere(registration: string, lost: boolean): CellProblem {
  return new CellProblem(
    lost
      ? `The row of ${registration} in the file of aircraft could not be taken.`
      : `There is no aircraft ${registration}.`,
    lost
      ? 'Mend that row; this one then goes in with it.'
      : 'Correct the registration, or add the aircraft to the file of aircraft.',
    'registration',
  );
}

/** The row with the unit of the aircraft in place of the name that the files have for it. */
function aliased({ kind, row }: ReadRow, aliases: ReadonlyMap<string, string>): ReadRow['row'] {
  if (aliases.size === 0 || kind.kind === 'units') return row;
  const renamed = (name: unknown) => (typeof name === 'string' ? (aliases.get(name) ?? name) : name);
  return Object.fromEntries(
    Object.entries(row).map(([column, value]) => [
      column,
      unitColumns.some((each) => each === column)
        ? Array.isArray(value)
          ? value.map(renamed)
          : renamed(value)
        : value,
    ]),
  );
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
    const data = first?.data ?? {};
    super(filled(text.says, data), filled(text.wayOut, data), columnFor(first?.field ?? '', kind));
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

export function badRow(row: ReadRow, error: unknown): BadRow {
  if (!(error instanceof CellProblem)) throw error;
  const { column, reason, wayOut } = error;
  const value = column === null ? '' : row.text(column);
  return { file: row.file, line: row.line, column, value: value === '' ? null : shortened(value), reason, wayOut };
}
