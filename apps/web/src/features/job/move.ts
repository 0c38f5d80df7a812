import type { Catalogue, Dossier } from '@tallywing/rules';

/** What is known of a unit, recorded with another version of its type: the fields of a `unit.amend`. */
export interface Move {
  readonly unit: Dossier['configuration']['units'][number];
  readonly reason: string;
}

/** Null where there is no such unit or version, or the unit is recorded with it already. */
export function moveTo(
  dossier: Dossier,
  catalogue: Catalogue,
  unitId: string | null,
  typeId: string | null,
): Move | null {
  const unit = dossier.configuration.units.find(({ id }) => id === unitId);
  const type = typeId === null ? undefined : catalogue.types[typeId];
  if (!unit || !type || unit.typeId === type.id) return null;
  // Only another version of what it is: another product is another unit.
  const family = unit.typeId === null ? null : catalogue.types[unit.typeId]?.family;
  if (family !== type.family) return null;
  return { unit: { ...unit, typeId: type.id }, reason: `${type.document}, revision ${type.revision}` };
}
