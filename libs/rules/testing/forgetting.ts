import type { Dossier } from '../src/dossier/dossier.js';
import { dossier as dossierSchema } from '../src/dossier/dossier.js';

/** Null here is a state, not an unrecorded fact: not deactivated, not deferred, open-ended, not yet answered, no other program, no test set named. */
const statesThatAreNull = new Set([
  'deactivated',
  'deferral',
  'until',
  'closedBy',
  'program',
  'operatorId',
  'reinspectedOn',
  'localTrainingNm',
  'amendment',
  'note',
  'notes',
  'enRoute',
  'dueAt',
  'nextDue',
  'instrument',
]);

type Path = readonly string[];

/** Whether the schema lets a place be null does not depend on the dossier: asked once for each place, list positions left aside. */
const nullablePlaces = new Map<string, boolean>();

/** Every recorded fact of a dossier that somebody might not have recorded. A dossier outside the schema has none. */
export function recordedFacts(dossier: Dossier): readonly Path[] {
  if (!dossierSchema.safeParse(dossier).success) return [];
  return pathsOf(dossier, []).filter((path) => {
    const place = path.map((step) => (/^\d+$/.test(step) ? '*' : step)).join('.');
    const known = nullablePlaces.get(place) ?? dossierSchema.safeParse(forget(dossier, path)).success;
    nullablePlaces.set(place, known);
    return known;
  });
}

/** The dossier with one fact made null; what lies beside the path is shared, not copied. */
export function forget(dossier: Dossier, path: Path): Dossier {
  return without(dossier, path) as Dossier;
}

function without(value: unknown, [step, ...rest]: Path): unknown {
  if (step === undefined) return null;
  if (Array.isArray(value))
    return value.map((each: unknown, index) => (String(index) === step ? without(each, rest) : each));
  const record = value as Readonly<Record<string, unknown>>;
  return { ...record, [step]: without(record[step], rest) };
}

function pathsOf(value: unknown, path: Path): Path[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const here = [...path, key];
    const isFact = inner !== null && inner !== undefined && !statesThatAreNull.has(key) && !Array.isArray(value);
    return [...(isFact ? [here] : []), ...pathsOf(inner, here)];
  });
}
