import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { busy, everyChange } from '../../testing/every-change.js';
import { goodDay, trainerCatalogue } from '../../testing/trainer.js';
import type { Dossier } from '../dossier/dossier.js';
import { dossier as dossierSchema } from '../dossier/dossier.js';
import type { Change } from './changes.js';
import { admit, apply, blankDossier, parseChange } from './changes.js';

const from = (change: Change): Dossier => (change.kind === 'aircraft.add' ? blankDossier('new') : busy);
const titled = everyChange.map((change, index) => [`${change.kind}, example ${index}`, change] as const);
const kinds = [...new Set(everyChange.map(({ kind }) => kind))];

describe('a change of each kind', () => {
  it.each(titled)('%s: is read, admitted and applied, within the schema', (_, change) => {
    expect(parseChange(JSON.parse(JSON.stringify(change)))).toEqual({ ok: true, change });
    expect(admit(from(change), trainerCatalogue, change, goodDay)).toEqual([]);
    const next = apply(from(change), change);
    expect(dossierSchema.safeParse(next).error?.issues ?? []).toEqual([]);
    expect(next.revision).toBe(from(change).revision + 1);
    expect(namedTwice(next)).toEqual([]);
  });

  it.each(titled)('%s: starts no aircraft, unless it adds one', (_, change) => {
    const refused = admit(blankDossier('new'), trainerCatalogue, change, goodDay).map(({ code }) => code);
    expect(refused).toEqual(change.kind === 'aircraft.add' ? [] : ['no-aircraft']);
  });

  it.each(titled)('%s: keeps its hands off what was there', (_, change) => {
    const before = structuredClone(from(change));
    apply(from(change), change);
    expect(from(change)).toEqual(before);
  });

  it.each(kinds)('%s: what it does, and what is refused with one thing in it wrong, is written down', async (kind) => {
    const text = everyChange
      .filter((change) => change.kind === kind)
      .map((change, index) => `example ${index + 1}\n${doneBy(change)}${refusedOf(change)}`)
      .join('');
    const wayOut = `see that ${kind} should do this, then run \`npx vitest run --project rules libs/rules -u\``;
    const file = fileURLToPath(new URL(`../../stated/changes/${kind}.txt`, import.meta.url));
    await expect(text, wayOut).toMatchFileSnapshot(file);
  });
});

function doneBy(change: Change): string {
  const lines = difference(from(change), { ...apply(from(change), change), revision: from(change).revision }, '');
  return lines.map((line) => `  ${line}\n`).join('');
}

/** Each value of the change replaced by one that can be read and may be wrong, one at a time. */
function refusedOf(change: Change): string {
  return wrongOnes(change, [])
    .filter(([, , wrong]) => parseChange(wrong).ok)
    .flatMap(([path, value, wrong]) => {
      const refusals = admit(from(change), trainerCatalogue, wrong as Change, goodDay);
      return refusals.map(
        ({ code, field, data }) => `  ! ${path}=${value}: ${code} at "${field}" ${JSON.stringify(data)}\n`,
      );
    })
    .join('');
}

function wrongOnes(whole: unknown, path: readonly string[]): (readonly [string, string, unknown])[] {
  const value = path.reduce<unknown>((here, step) => (here as Record<string, unknown>)[step], whole);
  if (path[0] === 'kind' || path[0] === 'version') return [];
  if (typeof value === 'object' && value !== null)
    return Object.keys(value).flatMap((step) => wrongOnes(whole, [...path, step]));
  return badValues(value).map((bad) => {
    const copy = structuredClone(whole);
    const parent = path.slice(0, -1).reduce<unknown>((here, step) => (here as Record<string, unknown>)[step], copy);
    (parent as Record<string, unknown>)[path.at(-1) ?? ''] = bad;
    return [path.join('.'), JSON.stringify(bad), copy] as const;
  });
}

/** Ids that are taken: a unit, an entry, a defect, a hold and one that was lifted, a joint. */
const inUse = ['gps1', 'swing', 'd1', 'h1', 'h2', busy.configuration.links[0]?.id ?? ''];

function badValues(value: unknown): readonly unknown[] {
  if (value === null) return ['nowhere'];
  if (typeof value === 'number') return [0, value - 1, 19_999_999];
  if (typeof value !== 'string') return [];
  if (/^\d{4}-\d\d-\d\dT/.test(value)) return [null, '1900-01-01T00:00Z', goodDay, '2099-01-01T00:00Z'];
  // Manufactured on 4 May 1979; 17 March has begun somewhere on earth, 18 March nowhere.
  if (/^\d{4}-\d\d-\d\d$/.test(value))
    return [null, '1979-05-03', '1979-05-04', '2026-03-04', '2026-03-17', '2026-03-18'];
  return ['nowhere', ...inUse, null];
}

/** What is different, by path; members of a list by their id where they have one. */
function difference(before: unknown, after: unknown, path: string): readonly string[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  if (!isGroup(before) || !isGroup(after))
    return [`${path}: ${JSON.stringify(before) ?? 'nothing'} to ${JSON.stringify(after) ?? 'nothing'}`];
  const [old, now] = [membersOf(before), membersOf(after)];
  const order =
    [...old.keys()].filter((key) => now.has(key)).join() === [...now.keys()].filter((key) => old.has(key)).join();
  return [
    ...[...new Set([...old.keys(), ...now.keys()])].flatMap((key) =>
      difference(old.get(key), now.get(key), `${path}.${key}`),
    ),
    ...(order && old.size === now.size ? [] : [`${path} in order: ${[...now.keys()].join()}`]),
  ];
}

function isGroup(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}

function membersOf(group: object): Map<string, unknown> {
  if (!Array.isArray(group)) return new Map(Object.entries(group));
  return new Map(group.map((each: unknown, index) => [nameOf(each) ?? String(index), each]));
}

/** Names that stand twice in one list. */
function namedTwice(whole: object): readonly string[] {
  const names = Array.isArray(whole) ? whole.map(nameOf).filter((name) => name !== null) : [];
  return [
    ...names.filter((name, index) => names.indexOf(name) !== index),
    ...Object.values(whole).flatMap((each: unknown) => (isGroup(each) ? namedTwice(each) : [])),
  ];
}

function nameOf(value: unknown): string | null {
  if (!isGroup(value)) return null;
  const { id, item, list } = value as { readonly id?: string; readonly item?: string; readonly list?: string };
  return id ?? item ?? list ?? null;
}
