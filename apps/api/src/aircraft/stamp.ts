import { assess, blankDossier, rulesVersion } from '@tallywing/rules';
import type { EquipmentType, FlightConditions, Policy } from '@tallywing/rules';
import { contentHash } from '../common/canonical.js';

/** A named flight that the house asks about: a column of the board. */
export interface Profile {
  readonly id: string;
  readonly name: string;
  readonly conditions: FlightConditions;
}

/** What a stored verdict was made with; the policies of the house are in the third, beside its profiles. A row with another stamp is being judged again, and its yes is not a yes. */
export interface Stamp {
  readonly rules: string;
  readonly zones: string;
  readonly profiles: string;
}

const zones = assess(blankDossier('none'), { version: 'none', types: {} }, { instant: '2020-01-01T00:00Z' }).of.zones;

export function stampOf(profiles: readonly Profile[], policies: readonly Policy[]): Stamp {
  const asked = [...profiles].sort((a, b) => (a.id < b.id ? -1 : 1)).map(({ id, conditions }) => ({ id, conditions }));
  return {
    rules: rulesVersion,
    zones,
    profiles: contentHash(policies.length === 0 ? asked : [asked, policies]).slice(0, 16),
  };
}

/** Versions are numbers between dots, the later one greater at the first that differs: 2026.11.27.12 comes after 2026.11.27.9. */
export function isLaterVersion(one: string, than: string): boolean {
  const numbers = than.split('.').map(Number);
  for (const [at, part] of one.split('.').map(Number).entries()) {
    const other = numbers[at] ?? -1;
    if (part !== other) return part > other;
  }
  return false;
}

/** Entries never change under an id, so the ids used say which slice of the catalogue a verdict rests on. */
export function catalogueVersion(typeIds: readonly string[]): string {
  return contentHash([...new Set(typeIds)].sort()).slice(0, 16);
}

/** The id of a catalogue entry: its family and its content. */
export function equipmentTypeId(body: Omit<EquipmentType, 'id'>): string {
  return `${body.family}@${contentHash(body).slice(0, 12)}`;
}
