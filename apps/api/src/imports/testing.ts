import type { UploadedFile } from './csv.js';
import type { KnownHouse, PlanFindings } from './plan.js';
import { Plan } from './plan.js';
import type { Decision, KnownAircraft, PlannedAircraft } from './planner.js';
import { readFiles } from './read-files.js';

/** For tests: a house and its aircraft, and what the files do to them, all in one go. */
export interface KnownFleet extends KnownHouse {
  readonly aircraft: ReadonlyMap<string, KnownAircraft>;
}

export function planAll(
  files: readonly UploadedFile[],
  known: KnownFleet,
  decision: Decision = null,
): PlanFindings & { readonly aircraft: readonly PlannedAircraft[] } {
  const read = readFiles(files);
  const plan = new Plan(read, known, decision);
  const aircraft = plan.take(read.registrations, known.aircraft);
  return { ...plan.findings(), aircraft };
}
