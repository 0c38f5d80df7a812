import { equipmentType, limitationFields, withSpeed, type EquipmentType, type Limitation } from '@tallywing/rules';
import { blank, specOf, type Spec } from '../../form/spec.js';
import { valueAt, withValueAt } from '../../form/tree.js';

/** An entry as the form holds it: it may be unfinished. */
export type Entry = Readonly<Record<string, unknown>>;

type ObjectSpec = Extract<Spec, { readonly kind: 'object' }>;

/** What an entry holds is said in one place, the core's schema; the store makes the id. */
export const entrySpec = specOf(equipmentType.omit({ id: true })) as ObjectSpec;

export interface Section {
  readonly id: string;
  readonly title: string;
  /** Said once under the heading. */
  readonly lead?: string;
  readonly fields: readonly string[];
}

export const sections: readonly Section[] = [
  {
    id: 'identity',
    title: 'Identity and document',
    fields: ['maker', 'name', 'partNumber', 'family', 'document', 'revision'],
  },
  { id: 'functions', title: 'Functions and approvals', fields: ['functions', 'authorisations'] },
  { id: 'size', title: 'Size and mass', fields: ['bezel', 'massLb'] },
  { id: 'power', title: 'Power and cooling', fields: ['drawA', 'supplyV', 'cooling'] },
  { id: 'ports', title: 'Ports', fields: ['ports'] },
  { id: 'databases', title: 'Databases', fields: ['databases'] },
  { id: 'view', title: 'View', fields: ['view'] },
  {
    id: 'pairs',
    title: 'Approved pairs',
    lead: 'Products that the manual approves this one to be joined with.',
    fields: ['pairs'],
  },
  {
    id: 'limitations',
    title: 'Limitations',
    lead: 'What the manual forbids or requires. Every flight is judged by it.',
    fields: ['limitations'],
  },
];

export function specAt(field: string): Spec {
  const found = entrySpec.fields.find(({ name }) => name === field);
  if (!found) throw new Error(`An entry has no field ${field}.`);
  return found.spec;
}

export function blankEntry(): Entry {
  return blank(entrySpec) as Entry;
}

/** An entry of the catalogue as the form takes it up. */
export function entryOf({ id: _id, ...body }: EquipmentType): Entry {
  return body;
}

/** The start of another product: what says which product it is, and by which document, is still to be written. */
export function copyOf(type: EquipmentType): Entry {
  return { ...entryOf(type), family: '', name: '', partNumber: '', document: '', revision: '' };
}

/** The entry after a field was set, with what follows from it: what a kind or a standard does not use is emptied. */
export function entryWith(entry: Entry, path: string, next: unknown): Entry {
  const value = withValueAt(entry, path, next);
  const limit = /^(limitations\.\d+)\.kind$/.exec(path)?.[1];
  if (limit !== undefined) return emptied(value, limit, next);
  const port = /^(ports\.\d+)\.standard$/.exec(path)?.[1];
  return port !== undefined && !hasSpeed(next) ? withValueAt(value, `${port}.speed`, null) : value;
}

function emptied(entry: Entry, path: string, kind: unknown): Entry {
  const uses = usesOf(kind);
  const rest: readonly (readonly [boolean, string, unknown])[] = [
    [uses.beyond, 'beyond', []],
    [uses.places, 'places', []],
    [uses.elsewhere, 'elsewhere', false],
  ];
  return rest.reduce((at, [used, name, none]) => (used ? at : withValueAt(at, `${path}.${name}`, none)), entry);
}

/** What a field's kind or standard does not use is not asked for. */
export function isHidden(entry: Entry, path: string): boolean {
  const [, limit, name] = /^(limitations\.\d+)\.(beyond|places|elsewhere)$/.exec(path) ?? [];
  if (limit !== undefined && name !== undefined)
    return !usesOf(valueAt(entry, `${limit}.kind`))[name as 'beyond' | 'places' | 'elsewhere'];
  const port = /^(ports\.\d+)\.speed$/.exec(path)?.[1];
  return port !== undefined && !hasSpeed(valueAt(entry, `${port}.standard`));
}

/**
 * Of what a list could name, what can count: ports and options of functions that the unit has, signals of ports that it has. What is
 * ticked already stays in sight. Null: the whole list.
 */
export function choicesAt(entry: Entry, path: string): readonly string[] | null {
  const ticked = valueAt(entry, path) as readonly string[];
  const had = (entry['functions'] ?? []) as readonly string[];
  const [, limit, name] = /^(limitations\.\d+)\.(functions|beyond)$/.exec(path) ?? [];
  if (limit !== undefined) {
    const uses = usesOf(valueAt(entry, `${limit}.kind`));
    const here = name === 'functions' || valueAt(entry, `${limit}.elsewhere`) === false;
    return uses.own && (name === 'functions' || uses.elsewhere) && here ? union(had, ticked) : null;
  }
  if (/^ports\.\d+\.requiredFor$/.test(path)) return union(had, ticked);
  if (!/^pairs\.\d+\.signals$/.test(path)) return null;
  const ports = (entry['ports'] ?? []) as readonly { readonly signal: string }[];
  const signals = ports.map(({ signal }) => signal).filter((each) => each !== '');
  return signals.length === 0 ? null : union(signals, ticked);
}

function union(...lists: readonly (readonly string[])[]): readonly string[] {
  return [...new Set(lists.flat())];
}

const noUse = { own: false, beyond: false, places: false, elsewhere: false };

function usesOf(kind: unknown) {
  return limitationFields[kind as Limitation['kind']] ?? noUse;
}

function hasSpeed(standard: unknown): boolean {
  return withSpeed.some((each) => each === standard);
}
