import type { Dossier } from '@tallywing/rules';
import { canonical } from '../common/canonical.js';
import type { Draft } from './file-kind.js';

/** A recorded value in place of which a file says another one. */
export interface Overwritten {
  /** Path within what is restated: `serial`, `approval.approvedOn`. */
  readonly field: string;
  readonly was: string;
  readonly is: string;
}

/**
 * What a planned entry would put in place of something that somebody recorded. Filling in what nobody recorded, a newer
 * reading and a newer load overwrite nothing: they add.
 */
export function overwrittenBy(draft: Draft, dossier: Dossier): readonly Overwritten[] {
  const pair = restated(draft, dossier);
  return pair === null ? [] : differences(pair.stored, pair.stated, '');
}

function restated(draft: Draft, dossier: Dossier): { readonly stored: unknown; readonly stated: unknown } | null {
  const { configuration, status, meters } = dossier;
  const found = <T>(stored: T | undefined | null, stated: T) =>
    stored === undefined || stored === null ? null : { stored, stated };
  const byId = <T extends { readonly id: string }>(list: readonly T[], stated: T) =>
    found(
      list.find(({ id }) => id === stated.id),
      stated,
    );
  switch (draft.kind) {
    case 'aircraft.amend':
      return { stored: configuration.aircraft, stated: draft.aircraft };
    case 'authority.set':
      return found(configuration.authority, draft.authority);
    case 'utilisation.set':
      return { stored: meters.utilisation, stated: draft.utilisation };
    case 'unit.amend': {
      const pair = byId(configuration.units, draft.unit);
      // A unit that is tied to its type takes its functions from there: nothing is lost.
      const tied = pair !== null && pair.stored.typeId === null && draft.unit.typeId !== null;
      return tied ? { ...pair, stored: { ...pair.stored, functions: [] } } : pair;
    }
    case 'antenna.fit':
      return byId(configuration.antennas, draft.antenna);
    case 'placard.fit':
      return byId(configuration.placards, draft.placard);
    case 'supplement.set':
      return byId(configuration.supplements, draft.supplement);
    case 'directive.set':
      return byId(status.directives, draft.directive);
    case 'record.correct':
      return byId(status.records, draft.record);
    case 'meter.correct': {
      const last = meters.readings[draft.meter];
      return last ? { stored: { dial: hours(last.value) }, stated: { dial: hours(draft.value) } } : null;
    }
    case 'equipment.state': {
      const [stated] = draft.items;
      return stated
        ? found(
            configuration.equipment.find(({ item }) => item === stated.item),
            stated,
          )
        : null;
    }
    case 'database.load': {
      const { load } = draft;
      const stored = status.loads.find(
        (each) => each.unitId === load.unitId && each.database === load.database && each.slot === load.slot,
      );
      return stored?.loaded.date === load.loaded.date ? { stored, stated: load } : null;
    }
    default:
      return null;
  }
}

function differences(stored: unknown, stated: unknown, path: string): Overwritten[] {
  if (stored === null || stored === undefined || (Array.isArray(stored) && stored.length === 0)) return [];
  if (isObject(stored) && isObject(stated))
    return Object.keys(stored).flatMap((name) =>
      differences(stored[name], stated[name], path === '' ? name : `${path}.${name}`),
    );
  return canonical(stored) === canonical(stated) ? [] : [{ field: path, was: words(stored), is: words(stated) }];
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function words(value: unknown): string {
  const text = typeof value === 'string' ? value : value === null ? 'not recorded' : JSON.stringify(value);
  return text.length > 120 ? `${text.slice(0, 117)}...` : text;
}

function hours(hundredths: number): string {
  return String(hundredths / 100);
}
