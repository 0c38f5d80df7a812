import type { Antenna } from '../dossier/installation.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { anyOf, met, notMet, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { practice } from './cite.js';

export const antennaNeeded = practice('a radio works through an antenna made for its band');

/** Antennas recorded to serve a unit that are made for a band. */
export function antennasFor(facts: Facts, { id }: UnitFacts, kinds: readonly Antenna['kind'][]): readonly Antenna[] {
  return facts.antennasOf(id).filter((each) => kinds.includes(each.kind));
}

/** One of them is enough. None recorded: only a list that somebody stated complete makes the absence certain. */
export function oneServes(
  facts: Facts,
  unit: UnitFacts,
  antennas: readonly Antenna[],
  serves: (antenna: Antenna) => Clause = inBand,
): Clause {
  if (antennas.length > 0) return anyOf('an-antenna', antennas.map(serves), 'cannot-tell');
  const source = antennaNeeded;
  return facts.complete('equipment') === null
    ? unknown('antenna-recorded', ['configuration.antennas', 'status.completeness.equipment'], { source })
    : notMet('antenna-recorded', { source, evidence: [unit.id] });
}

export function inBand({ id }: Antenna): Clause {
  return met('antenna-in-band', { source: antennaNeeded, evidence: [id] });
}
