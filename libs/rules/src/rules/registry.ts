import { held } from './authority/held.js';
import { hirePermitted } from './authority/hire-permitted.js';
import { kindOfOperation } from './authority/kind-of-operation.js';
import { dayEquipment } from './equipment/day-equipment.js';
import { highAltitudeEquipment } from './equipment/high-altitude-equipment.js';
import { instrumentEquipment } from './equipment/instrument-equipment.js';
import { nightEquipment } from './equipment/night-equipment.js';
import { lateralIndicator } from './indication/lateral-indicator.js';
import { annualInspection } from './inspections/annual-inspection.js';
import type { Rule } from './rule.js';

/** Every rule in force, by topic. */
export const rules: readonly Rule[] = [
  held,
  hirePermitted,
  kindOfOperation,
  dayEquipment,
  highAltitudeEquipment,
  instrumentEquipment,
  nightEquipment,
  lateralIndicator,
  annualInspection,
];
