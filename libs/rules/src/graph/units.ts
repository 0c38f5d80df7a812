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
