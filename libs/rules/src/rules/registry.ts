import { held } from './authority/held.js';
import { hirePermitted } from './authority/hire-permitted.js';
import { kindOfOperation } from './authority/kind-of-operation.js';
import { dayEquipment } from './equipment/day-equipment.js';
import { highAltitudeEquipment } from './equipment/high-altitude-equipment.js';
import { instrumentEquipment } from './equipment/instrument-equipment.js';
import { nightEquipment } from './equipment/night-equipment.js';
import { lateralIndicator } from './indication/lateral-indicator.js';
import { annualInspection } from './inspections/annual-inspection.js';
import { staticAltimeterTest } from './inspections/static-altimeter-test.js';
import { transponderTest } from './inspections/transponder-test.js';
import { vorCheck } from './inspections/vor-check.js';
import { ifrAltitudeLimit } from './readings/ifr-altitude-limit.js';
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
  staticAltimeterTest,
  transponderTest,
  vorCheck,
  ifrAltitudeLimit,
];
