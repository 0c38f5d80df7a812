import type { Catalogue, EquipmentType } from '@tallywing/rules';
import type { Carried } from './aircraft-records.js';
import type { TypeRow } from './kinds/types.js';
import { typeOf } from './kinds/types.js';
import { Lists } from './lists.js';
import type { Decision, Difference, Heard, KnownAircraft, PlannedAircraft } from './planner.js';
import { badRow, Planner } from './planner.js';
import type { BadRow, Remark } from './problems.js';
import type { FilesRead } from './read-files.js';

/** What the house has stored, apart from its aircraft. */
export interface KnownHouse {
  /** UTC, to the minute. */
  readonly now: string;
  readonly aircraftIds: ReadonlySet<string>;
  readonly operators: readonly { readonly id: string; readonly name: string }[];
  readonly bases: readonly { readonly id: string; readonly name: string; readonly zone: string }[];
  readonly types: readonly EquipmentType[];
  /** Of them, ids of versions that a newer one took the place of. */
  readonly supersededTypes: ReadonlySet<string>;
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

/** What came of a plan, apart from the aircraft themselves. */
export interface PlanFindings {
  readonly files: readonly FileSummary[];
  readonly newOperators: readonly { readonly id: string; readonly name: string }[];
  readonly newTypes: readonly EquipmentType[];
  /** Versions that aircraft records name and the house does not have. */
  readonly keptTypes: Carried['types'];
  readonly bad: readonly BadRow[];
  readonly remarks: readonly Remark[];
  readonly differences: readonly Difference[];
  readonly uncatalogued: readonly { readonly type: string; readonly units: number }[];
}

/**
 * From files to the changes that each aircraft would see. Does no input or output; every row that cannot be taken is named, and the rest
 * goes on. Aircraft are planned in parts, so that not all of a large fleet is held at once.
 */
export class Plan {
  readonly catalogue: Catalogue;
  private readonly newTypes: readonly EquipmentType[];
  private readonly keptTypes: PlanFindings['keptTypes'];
  private readonly lists: Lists;
  private readonly planner: Planner;
  private readonly ids: Set<string>;
  private readonly heard: Heard;

  constructor(
    private readonly read: FilesRead,
    house: KnownHouse,
    decision: Decision = null,
  ) {
    this.heard = {
      bad: [...read.bad],
      remarks: [...read.remarks],
      differences: [],
      uncatalogued: new Map(),
      unchanged: new Map(),
      refused: new Map(),
    };
    this.ids = new Set(house.aircraftIds);
    this.lists = new Lists(house);
    takeOperators(read, house, this.lists, this.heard);
    const { types, newTypes, keptTypes } = takeTypes(read, house, this.heard);
    this.newTypes = newTypes;
    this.keptTypes = keptTypes;
    this.catalogue = { version: 'import', types: Object.fromEntries(types.map((type) => [type.id, type])) };
    this.planner = new Planner({
      now: house.now,
      lists: this.lists,
      catalogue: this.catalogue,
      decision,
      heard: this.heard,
      freeId: (registration) => this.freeId(registration),
    });
  }

  take(registrations: readonly string[], stored: ReadonlyMap<string, KnownAircraft>): readonly PlannedAircraft[] {
    return registrations.flatMap((registration) => {
      const rows = this.read.byAircraft.get(registration) ?? [];
      const carried = this.read.carried.histories.get(registration) ?? null;
      return this.planner.plan(registration, rows, stored.get(registration) ?? null, carried) ?? [];
    });
  }

  findings(): PlanFindings {
    const { bad, remarks, differences, uncatalogued, unchanged, refused } = this.heard;
    return {
      files: this.read.files.map(({ name, kind, rows }) => {
        const badLines = new Set(bad.filter(({ file }) => file === name).map(({ line }) => line));
        badLines.delete(null);
        const lost = kind === null ? rows : badLines.size + (refused.get(name) ?? 0);
        return {
          name,
          kind,
          rows,
          good: rows - lost,
          bad: lost,
          unchanged: unchanged.get(name) ?? 0,
        };
      }),
      newOperators: this.lists.newOperators,
      newTypes: this.newTypes,
      keptTypes: this.keptTypes,
      bad: [...bad].sort(byPlace),
      remarks: [...remarks].sort(byPlace),
      differences: [...differences].sort(byPlace),
      uncatalogued: [...uncatalogued].map(([type, units]) => ({ type, units })),
    };
  }

  private freeId(registration: string): string {
    const wanted = registration.toLowerCase();
    for (let n = 1; ; n += 1) {
      const candidate = n === 1 ? wanted : `${wanted}-${n}`;
      if (this.ids.has(candidate)) continue;
      this.ids.add(candidate);
      return candidate;
    }
  }
}

function takeOperators({ carried }: FilesRead, house: KnownHouse, lists: Lists, heard: Heard): void {
  for (const { id, name, file } of carried.operators) {
    const known = house.operators.find((each) => each.id === id || each.name === name);
    if (!known) lists.newOperators.push({ id, name });
    else if (known.id !== id || known.name !== name)
      heard.bad.push({
        file,
        line: null,
        column: 'operators',
        value: name,
        reason: `The operator ${name} is ${id} in the file, and here ${known.name} is ${known.id}.`,
        wayOut: 'Rename the operator here, so that the two cannot be mixed up.',
      });
  }
}

function takeTypes(
  { typeRows: rows, carried }: FilesRead,
  { types: stored, supersededTypes }: KnownHouse,
  heard: Heard,
) {
  const newTypes: EquipmentType[] = [];
  for (const row of rows) {
    try {
      const type = typeOf(row.row as unknown as TypeRow);
      if (!stored.some(({ id }) => id === type.id)) newTypes.push(type);
      else if (supersededTypes.has(type.id))
        heard.remarks.push({
          file: row.file,
          line: row.line,
          text: `An older version of ${type.maker} ${type.name}: the catalogue has a newer one, which stays in force.`,
        });
    } catch (error) {
      heard.bad.push(badRow(row, error));
    }
  }
  const keptTypes = carried.types
    .filter(({ type }) => ![...stored, ...newTypes].some(({ id }) => id === type.id))
    .map(({ type, supersededBy }) => {
      const inForce = stored.find(({ id, family }) => family === type.family && !supersededTypes.has(id));
      return { type, supersededBy: inForce?.id ?? supersededBy };
    });
  const renewed = new Set(newTypes.map(({ family }) => family));
  // Versions that aircraft carry stay known under their ids; by name only the newest is found.
  return {
    newTypes,
    keptTypes,
    types: [
      ...newTypes,
      ...stored.filter(({ family }) => !renewed.has(family)),
      ...stored.filter(({ family }) => renewed.has(family)),
      ...keptTypes.map(({ type }) => type),
    ],
  };
}

function byPlace(
  a: { readonly file: string; readonly line: number | null },
  b: { readonly file: string; readonly line: number | null },
): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return (a.line ?? 0) - (b.line ?? 0);
}
