import { held } from './authority/held.js';
import { lateralIndicator } from './indication/lateral-indicator.js';
import { annualInspection } from './inspections/annual-inspection.js';
import type { Rule } from './rule.js';

/** Every rule in force, by topic. */
export const rules: readonly Rule[] = [held, lateralIndicator, annualInspection];
