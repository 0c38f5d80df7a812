import {
  assess,
  type Assessment,
  type Catalogue,
  type Dossier,
  type FlightConditions,
  type Result,
} from '@tallywing/rules';
import { statusOf } from './verdict.js';
import type { Status } from '../ui/status-words.js';

export interface Profile {
  readonly id: string;
  readonly name: string;
  readonly conditions: FlightConditions;
}

export interface ProfileEffect {
  readonly id: string;
  readonly name: string;
  readonly before: Status;
  readonly after: Status;
  /** What still stands in the way after the plan; empty for a yes. */
  readonly stops: readonly Result[];
}

/** What a plan does to the aircraft: the same rules before and after. */
export interface PlanEffect {
  readonly profiles: readonly ProfileEffect[];
  readonly opened: readonly Result[];
  readonly closed: readonly Result[];
  /** Tests and entries that the plan calls for and that it does not itself record. */
  readonly owed: readonly Dossier['status']['obligations'][number][];
  /** Pounds and pound-inches that the plan puts onto the list of small changes. */
  readonly mass: { readonly weightLb: number; readonly momentLbIn: number | null } | null;
}

/** One dossier judged for every profile; made once for the aircraft as it stands and again for each settled plan. */
export type Judged = { readonly dossier: Dossier; readonly byProfile: readonly Assessment[] };

export function judgeAll(dossier: Dossier, catalogue: Catalogue, profiles: readonly Profile[], now: string): Judged {
  return {
    dossier,
    byProfile: profiles.map((profile) => assess(dossier, catalogue, { instant: now }, profile.conditions)),
  };
}

export function effectOf(before: Judged, after: Judged, profiles: readonly Profile[]): PlanEffect {
  const findingsBefore = findingsOf(before.byProfile.flatMap((each) => each.results));
  const findingsAfter = findingsOf(after.byProfile.flatMap((each) => each.results));
  return {
    profiles: profiles.map((profile, index) => ({
      id: profile.id,
      name: profile.name,
      before: flightStatus(before.byProfile[index]),
      after: flightStatus(after.byProfile[index]),
      stops: stopsOf(after.byProfile[index]),
    })),
    opened: [...findingsAfter.values()].filter((each) => !findingsBefore.has(each.key)),
    closed: [...findingsBefore.values()].filter((each) => !findingsAfter.has(each.key)),
    owed: owedBetween(before.dossier, after.dossier),
    mass: massBetween(before.dossier, after.dossier),
  };
}

function flightStatus(assessment: Assessment | undefined): Status {
  const verdict = assessment?.operations['flight'];
  return verdict ? statusOf(verdict) : 'not-judged';
}

function stopsOf(assessment: Assessment | undefined): Result[] {
  const verdict = assessment?.operations['flight'];
  if (!assessment || !verdict || verdict.ready === 'yes') return [];
  return verdict.because.flatMap((key) => assessment.results.find((result) => result.key === key) ?? []);
}

/** One finding a key: the worst over the profiles. Advice that stops nothing is a finding too. */
function findingsOf(results: readonly Result[]): Map<string, Result> {
  const found = new Map<string, Result>();
  for (const result of results) {
    if (result.outcome !== 'not-met' && result.outcome !== 'cannot-tell') continue;
    if (found.get(result.key)?.outcome !== 'not-met') found.set(result.key, result);
  }
  return found;
}

/** Of what was owed when the plan was last judged, what the plan as it stands this moment still leaves open. */
export function stillOwed(owed: PlanEffect['owed'], plan: Dossier): PlanEffect['owed'] {
  const open = new Set(plan.status.obligations.flatMap((each) => (each.closedBy === null ? [each.id] : [])));
  return owed.filter((each) => open.has(each.id));
}

function owedBetween(before: Dossier, after: Dossier): Dossier['status']['obligations'][number][] {
  const known = new Set(
    before.status.obligations.filter((each) => each.closedBy === null).map((each) => `${each.id}@${each.since.date}`),
  );
  return after.status.obligations.filter(
    (each) => each.closedBy === null && !known.has(`${each.id}@${each.since.date}`),
  );
}

function massBetween(before: Dossier, after: Dossier): PlanEffect['mass'] {
  const was = before.configuration.mass?.changesSince.length ?? 0;
  const fresh = after.configuration.mass?.changesSince.slice(was) ?? [];
  if (fresh.length === 0) return null;
  const known = fresh.every((each) => each.armIn !== null);
  return {
    weightLb: fresh.reduce((sum, each) => sum + each.weightLb, 0),
    momentLbIn: known ? fresh.reduce((sum, each) => sum + each.weightLb * (each.armIn ?? 0), 0) : null,
  };
}

/** Profiles that change alike and are stopped alike, put together: ten equal lines say no more than one. */
export function alike(
  profiles: readonly ProfileEffect[],
): (Omit<ProfileEffect, 'id' | 'name'> & { readonly names: readonly string[] })[] {
  const groups = new Map<string, ProfileEffect[]>();
  for (const each of profiles) {
    const key = JSON.stringify([each.before, each.after, each.stops.map((stop) => stop.key)]);
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first
      ? [{ before: first.before, after: first.after, stops: first.stops, names: group.map((each) => each.name) }]
      : [];
  });
}
