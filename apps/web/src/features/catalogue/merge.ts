import type { Entry } from './entry.js';

export interface Merged {
  readonly entry: Entry;
  /** Fields that only the other person changed: theirs now stands in the draft. */
  readonly taken: readonly string[];
  /** Fields that both changed, and differently: one's own stands. */
  readonly kept: readonly string[];
}

/** Two people revised the same version: what one did not touch is taken from the other, what one wrote stays. */
export function mergedOn(base: Entry, mine: Entry, theirs: Entry): Merged {
  const names = [...new Set([...Object.keys(theirs), ...Object.keys(mine)])];
  const changedByThem = names.filter((name) => !same(base[name], theirs[name]));
  const taken = changedByThem.filter((name) => same(base[name], mine[name]));
  const kept = changedByThem.filter((name) => !taken.includes(name) && !same(mine[name], theirs[name]));
  return { entry: { ...mine, ...Object.fromEntries(taken.map((name) => [name, theirs[name]])) }, taken, kept };
}

/** Equal in content; the order of names in an object says nothing. */
export function same(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((each, at) => same(each, b[at]));
  if (isPlain(a) && isPlain(b)) {
    const names = Object.keys(a);
    return names.length === Object.keys(b).length && names.every((name) => name in b && same(a[name], b[name]));
  }
  return Object.is(a, b);
}

function isPlain(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
