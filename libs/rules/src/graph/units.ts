import type { EquipmentType, FunctionCode } from '../catalogue/type.js';
import type { InstalledUnit } from '../dossier/installation.js';

/** An installed unit with its equipment type and what it does. */
export interface UnitFacts {
  readonly id: string;
  readonly unit: InstalledUnit;
  /** Null: not catalogued. */
  readonly type: EquipmentType | null;
  readonly functions: ReadonlySet<FunctionCode>;
  /** False: deactivated; it is no means of anything, but its other rules still apply. */
  readonly active: boolean;
}

/** Whether a unit may be part of a means at all: in use, and fitted. A portable device stands in for no required equipment (common practice). */
export function mayServe({ active, functions }: Pick<UnitFacts, 'active' | 'functions'>): boolean {
  return active && !functions.has('portable-display');
}
