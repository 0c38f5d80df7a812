import { blankDossier } from '../src/changes/changes.js';
import type { Dossier } from '../src/dossier/dossier.js';

/** A partial dossier: objects are merged, lists and scalars replaced. */
export type Part<T> = T extends readonly unknown[]
  ? T
  : T extends object
    ? { readonly [K in keyof T]?: Part<T[K]> }
    : T;

/** A blank airplane, based in Chicago's zone, with what the case states. Everything unstated is unrecorded. */
export function dossierOf(...parts: readonly Part<Dossier>[]): Dossier {
  const blank = blankDossier('test-aircraft');
  const airplane: Part<Dossier> = {
    revision: 1,
    configuration: {
      aircraft: {
        registration: 'TW-01Q',
        make: 'Testbed',
        model: 'One',
        kind: 'airplane',
        base: { id: 'field', name: 'Field', zone: 'America/Chicago' },
      },
    },
  };
  return [airplane, ...parts].reduce<Dossier>((whole, part) => merge(whole, part) as Dossier, blank);
}

/** What the removal of units leaves in a dossier: their short names, and the release that the aircraft owes since the last work. */
export function afterRemovals(on: string, ids: readonly string[], becauseOf = 'unit.remove'): Part<Dossier> {
  return {
    configuration: { takenOut: ids.map((id) => ({ id, serial: null })) },
    status: {
      obligations: [
        {
          id: 'release-entry:aircraft',
          what: 'release-entry',
          subject: 'aircraft',
          since: { date: on, at: null },
          becauseOf,
          touched: null,
          closedBy: null,
        },
      ],
    },
  };
}

/** The list of joints stated complete: only then is a joint that nobody recorded none. */
export const jointsComplete: Part<Dossier> = {
  status: { completeness: [{ list: 'links', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] },
};

function merge(whole: unknown, part: unknown): unknown {
  if (part === undefined) return whole;
  if (!isObject(whole) || !isObject(part)) return part;
  const merged: Record<string, unknown> = { ...whole };
  for (const [key, value] of Object.entries(part)) merged[key] = merge(merged[key], value);
  return merged;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
