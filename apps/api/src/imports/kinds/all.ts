import type { FileKind } from '../file-kind.js';
import { aircraftFile } from './aircraft.js';
import { antennasFile, linksFile, placardsFile, supplementsFile } from './installation.js';
import { metersFile } from './meters.js';
import { recordsFile } from './records.js';
import { defectsFile, directivesFile, equipmentFile, loadsFile } from './status.js';
import { typesFile } from './types.js';
import { unitsFile } from './units.js';

/** Files about aircraft, in the order in which their rows are taken: each builds on what stands before it. */
export const aircraftKinds: readonly FileKind[] = [
  aircraftFile,
  metersFile,
  unitsFile,
  linksFile,
  antennasFile,
  placardsFile,
  supplementsFile,
  equipmentFile,
  directivesFile,
  recordsFile,
  loadsFile,
  defectsFile,
];

/** The catalogue's rows are planned apart; here it takes part in telling the kinds of file. */
export const typesKind: FileKind = {
  ...typesFile,
  key: (row) => String(row['family']),
  plan: () => [],
  fields: {},
} as FileKind;

export const allKinds: readonly FileKind[] = [typesKind, ...aircraftKinds];
