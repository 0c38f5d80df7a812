import type { CivilDate } from '../time/instant.js';
import type { UnitFacts } from '../graph/units.js';

/** Day on which a unit went in: the later of work and release, as far as they are recorded. Null: neither is. */
export function fittedOn({ unit }: UnitFacts): CivilDate | null {
  const days = [unit.fitted?.date ?? null, unit.approval?.releasedOn ?? null].filter((each) => each !== null);
  return days.sort().at(-1) ?? null;
}
