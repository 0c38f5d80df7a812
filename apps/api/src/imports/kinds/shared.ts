import type { ChangeOf } from '@tallywing/rules';
import { CellProblem } from '../problems.js';

export type Statement = { readonly asOf: string; readonly by: string };
type DocumentRef = ChangeOf<'authority.set'>['authority']['document'];

export function documentNamed(title: string, date: string | null = null, revision: string | null = null): DocumentRef {
  return { title, revision, date };
}

/** Equal as the record stores them, whatever the order of fields. */
export function same(a: unknown, b: unknown): boolean {
  return JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, inner]) => [name, sorted(inner)]),
  );
}

/** What a file states over what is stored: an empty cell leaves the stored value alone. */
export function over<T extends object>(stored: T, stated: { readonly [K in keyof T]?: T[K] | null | undefined }): T {
  const given = Object.entries(stated).filter(([, value]) => value !== null && value !== undefined);
  return { ...stored, ...Object.fromEntries(given) };
}

/** As `over`, within what is stored too: whatever the file leaves empty stays as it is. */
export function laidOver<T>(stored: T, stated: T): T {
  if (stated === null || stated === undefined || (Array.isArray(stated) && stated.length === 0)) return stored;
  if (!isObject(stored) || !isObject(stated)) return stated;
  const names = [...new Set([...Object.keys(stored), ...Object.keys(stated)])];
  return Object.fromEntries(names.map((name) => [name, laidOver(stored[name], stated[name])])) as T;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Two cells that only make sense together. */
export function together(a: unknown, b: unknown, column: string, what: string): void {
  if ((a === null) !== (b === null))
    throw new CellProblem(`${what} must be given together.`, 'Fill in both, or leave both empty.', column);
}

export function need<T>(value: T | null, column: string, reason: string, wayOut: string): T {
  if (value === null) throw new CellProblem(reason, wayOut, column);
  return value;
}

/** An entry of which nothing is recorded but that it is there. */
export const blankHead = {
  meters: [],
  outcome: null,
  enRoute: null,
  dueAt: null,
  agency: null,
  secondPerson: null,
  instrument: null,
  document: null,
  testedToFt: null,
  marked: null,
  place: null,
  expires: null,
  readings: null,
  note: null,
} as const;

type Agency = NonNullable<ChangeOf<'record.add'>['record']['agency']>;

/** A person or station, from its cells; null when nobody is named. */
export function agencyOf(
  name: string | null,
  kind: Agency['kind'] | null,
  kindColumn: string,
  more: { readonly certificate: string | null; readonly ratings: Agency['ratings'] | null },
): Agency | null {
  if (name === null) return null;
  const what = need(
    kind,
    kindColumn,
    `${name} is named, but not what ${name} is.`,
    'Say whether it is a mechanic, a repair station, a pilot ...',
  );
  return { kind: what, name, certificate: more.certificate, ratings: more.ratings };
}
