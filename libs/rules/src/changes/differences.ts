import type { Dossier } from '../dossier/dossier.js';

/** One thing of the dossier that is not what it was: a member of a list by its id, or a fact that stands alone. */
export interface Difference {
  /** Where it stands: `units`, `records`, `mass`, `readings`. */
  readonly place: string;
  /** Null where the place holds one thing only. */
  readonly id: string | null;
  /** Null: it was not there, or nobody had recorded it. */
  readonly was: unknown;
  readonly is: unknown;
}

/** What differs between two dossiers of one aircraft, in the order of the dossier. Parts that are the same object are passed over. */
export function differencesOf(before: Dossier, after: Dossier): readonly Difference[] {
  return (['configuration', 'status', 'meters'] as const).flatMap((part) => {
    const was = before[part] as Readonly<Record<string, unknown>>;
    const is = after[part] as Readonly<Record<string, unknown>>;
    return was === is ? [] : Object.keys(is).flatMap((place) => within(place, was[place], is[place]));
  });
}

function within(place: string, was: unknown, is: unknown): Difference[] {
  if (was === is) return [];
  // A list that a record need not have, such as what people said, is not there before its first member.
  if (Array.isArray(is)) return among(place, keyed((was ?? []) as readonly unknown[]), keyed(is));
  if (place === 'readings')
    return among(place, new Map(Object.entries(was as object)), new Map(Object.entries(is as object)));
  return same(was, is) ? [] : [{ place, id: null, was: was ?? null, is: is ?? null }];
}

function among(place: string, was: ReadonlyMap<string, unknown>, is: ReadonlyMap<string, unknown>): Difference[] {
  return [...new Set([...was.keys(), ...is.keys()])].sort().flatMap((id) => {
    const [old, now] = [was.get(id) ?? null, is.get(id) ?? null];
    return same(old, now) ? [] : [{ place, id, was: old, is: now }];
  });
}

/** Lists of the dossier name their members by id, by the 91.205 item, by the list spoken of, or by unit, database and slot. */
function keyed(list: readonly unknown[]): ReadonlyMap<string, unknown> {
  return new Map(
    list.map((member, at) => {
      const { id, item, list: name, unitId, database, slot } = member as Readonly<Record<string, string | undefined>>;
      return [id ?? item ?? name ?? (unitId ? `${unitId}|${database}|${slot}` : String(at)), member];
    }),
  );
}

/** The dossier is data that survives JSON, and its changes keep the order of fields. */
function same(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(one ?? null) === JSON.stringify(other ?? null);
}
