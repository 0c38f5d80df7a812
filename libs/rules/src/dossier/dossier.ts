import { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import { id } from '../catalogue/words.js';
import { aircraft, authority, equipmentState } from './aircraft.js';
import { antenna, electrical, link, mass, opening, placard, supplement, takenOut, unit } from './installation.js';
import { meterDefinition, meterReading, utilisation } from './meters.js';
import {
  completeness,
  databaseLoad,
  defect,
  directive,
  hold,
  obligation,
  recordHead,
  sayso,
  staticSystem,
} from './status.js';
import { decision, documentPack, identity, lifeLimit, paper, recurringItem } from './upkeep.js';

/**
 * Everything known about one aircraft, in three parts under one revision: a meter reading writes only the small one.
 * Lists are kept sorted by id, so that equal dossiers are equal as text.
 */
export const dossierSchemaVersion = 1;

export const configuration = z.object({
  aircraft,
  authority: authority.nullable(),
  equipment: z.array(equipmentState),
  openings: z.array(opening),
  units: z.array(unit),
  takenOut: z.array(takenOut),
  links: z.array(link),
  antennas: z.array(antenna),
  placards: z.array(placard),
  supplements: z.array(supplement),
  staticSystems: z.array(staticSystem),
  electrical: electrical.nullable(),
  mass: mass.nullable(),
  identities: z.array(identity),
  papers: z.array(paper),
  packs: z.array(documentPack),
});

export const status = z.object({
  records: z.array(recordHead),
  obligations: z.array(obligation),
  defects: z.array(defect),
  directives: z.array(directive),
  loads: z.array(databaseLoad),
  holds: z.array(hold),
  completeness: z.array(completeness),
  recurring: z.array(recurringItem),
  lifeLimits: z.array(lifeLimit),
  decisions: z.array(decision),
  /** Left out until the first one is given, so that older records stay as they are. */
  sayings: z.array(sayso).optional(),
});

export const meters = z.object({
  definitions: z.array(meterDefinition),
  /** Which meter stands for time in service; null: not stated. */
  timeInService: id.nullable(),
  readings: z.record(z.string(), meterReading),
  utilisation: utilisation,
});

export const dossier = z.object({
  schema: z.literal(dossierSchemaVersion),
  aircraftId: id,
  revision: z.int().min(0),
  configuration,
  status,
  meters,
});

export type Dossier = Read<typeof dossier>;
export type Configuration = Dossier['configuration'];
export type Status = Dossier['status'];
export type Meters = Dossier['meters'];
