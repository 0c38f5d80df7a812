import type { Catalogue } from '../catalogue/type.js';
import type { Change } from '../changes/changes.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Facts } from '../graph/facts.js';
import type { Instant } from '../time/instant.js';
import type { FlightConditions } from '../verdict/conditions.js';
import type { Assumption } from './deeds.js';
import type { Job } from './labour.js';

/** Something that a shop can do, as changes to record. */
export interface Action {
  /** The same deed has the same name in every state. */
  readonly id: string;
  readonly job: Job;
  /** Units, static systems, links, records it is about; empty for the aircraft. */
  readonly subjects: readonly string[];
  /** Kind of change that a person would record; null: a fact to find out. */
  readonly change: string | null;
  readonly changes: readonly Change[];
  /** Paths of facts taken to turn out well. */
  readonly supposes: readonly string[];
  readonly assumes: readonly Assumption[];
}

/** Where an action is thought of. */
export interface Situation {
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly facts: Facts;
  /** Minute at which it would be done; later than all that the record holds of that day. */
  readonly at: Instant;
  readonly flight: FlightConditions;
}

export function action(
  job: Job,
  subjects: readonly string[],
  change: string,
  changes: readonly Change[],
  assumes: readonly Assumption[] = [],
): Action {
  return { id: [job, ...subjects].join(' '), job, subjects, change, changes, supposes: [], assumes };
}
