import type { Need } from '../assess/operations.js';
import { needsOf } from '../assess/operations.js';
import type { Snapshot } from '../assess/snapshot.js';
import type { System } from '../assess/system.js';
import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import { missingPaths } from '../rules/gaps.js';
import { instantOf, minutesOf } from '../time/instant.js';
import type { Capability } from '../verdict/capability.js';
import { needsMeans } from '../verdict/capability.js';
import type { Clause } from '../verdict/clause.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { collectEdges, noEdges } from '../verdict/regions.js';
import type { Moment } from '../verdict/result.js';
import type { Action } from './action.js';
import { actionsFor, findOutAction, readMeters } from './actions.js';
import type { Move } from './cheapest.js';
import { fittingsFor } from './fittings.js';
import type { LabourTable } from './labour.js';

/** What the search walks over: the aircraft as it would be, and what is taken to turn out well. */
export interface State {
  readonly dossier: Dossier;
  readonly supposed: ReadonlySet<string>;
  /** In the order in which they are done. */
  readonly deeds: readonly Action[];
  /** Moves made, also those that only put a test later. */
  readonly steps: number;
}

export interface Around {
  readonly state: State;
  readonly catalogue: Catalogue;
  readonly moment: Moment;
  readonly flight: FlightConditions;
  readonly labour: LabourTable;
}

/** Moves of which every solution takes at least one: those on one failing result, or, where there are several means, on one of each. */
export function movesOf(system: System, snapshot: Snapshot, around: Around): readonly Move<Action>[] {
  const situation = {
    dossier: around.state.dossier,
    catalogue: around.catalogue,
    facts: system.facts,
    at: instantOf(minutesOf(around.moment.instant) + around.state.steps),
    flight: around.flight,
  };
  const asking = new Set<Capability>();

  function onNeed(need: Need): readonly Action[] {
    return 'capability' in need ? onCapability(need.capability) : need.anyOf.flatMap(onNeed);
  }

  function onCapability(capability: Capability): readonly Action[] {
    if (asking.has(capability)) return [];
    asking.add(capability);
    const found = alternatives(capability);
    asking.delete(capability);
    return found;
  }

  function alternatives(capability: Capability): readonly Action[] {
    const bearing = system.byCapability[capability];
    const ofAircraft = bearing.aircraft.filter((index) => fails(snapshot, index));
    if (ofAircraft.length > 0) return fewest(ofAircraft.map(onStatement));
    if (!needsMeans(capability)) return [];
    const ways = bearing.means.flatMap((means) => {
      const failing = means.statements.filter((index) => fails(snapshot, index));
      return failing.length > 0 ? fewest(failing.map(onStatement)) : [];
    });
    return [...ways, ...fittingsFor(capability, situation)];
  }

  function onStatement(index: number): readonly Action[] {
    const statement = system.statements[index];
    if (!statement) return [];
    const { clause, effects, key, remedies } = statement;
    const missing = snapshot.outcome(index) === 'cannot-tell' ? missingPaths(clause) : [];
    const open = missing.filter((each) => !around.state.supposed.has(each));
    const wantsUnit = remedies.some(({ change, subject }) => change === 'unit.install' && subject === 'aircraft');
    return [
      ...remedies.flatMap((each) => actionsFor(each, situation)),
      ...(wantsUnit
        ? effects.flatMap((each) => (each.stops === 'capability' ? fittingsFor(each.capability, situation) : []))
        : []),
      ...refsOf(clause).flatMap(onCapability),
      findOutAction(key, open),
      ...(asksStaleHours(clause, snapshot) ? [readMeters(situation)] : []),
    ];
  }

  const need = needsOf(around.flight).find((each) => !holds(each, snapshot));
  return need ? unique(onNeed(need)).flatMap((action) => moveOf(action, around)) : [];
}

/** The result with the fewest ways to mend it: any one would do, this one branches least. */
function fewest(lists: readonly (readonly Action[])[]): readonly Action[] {
  return lists.reduce((least, each) => (unique(each).length < unique(least).length ? each : least));
}

/** One of each name, and none that changes nothing. */
function unique(actions: readonly Action[]): readonly Action[] {
  return [...new Map(actions.filter(does).map((each) => [each.id, each])).values()];
}

function does(action: Action): boolean {
  return action.changes.length > 0 || action.supposes.length > 0;
}

/** What was done is not done again; an entry may be put later, which costs nothing more. */
function moveOf(action: Action, { labour: { hourly, jobs }, state }: Around): readonly Move<Action>[] {
  const done = state.deeds.some((each) => each.id === action.id);
  if (done && action.change !== 'record.add') return [];
  const { typical, parts } = jobs[action.job];
  const cost = hourly === null ? typical : typical * hourly + (parts ?? 0);
  return [{ id: action.id, action, cost: done ? 0 : cost }];
}

export function fails(snapshot: Snapshot, index: number): boolean {
  const outcome = snapshot.outcome(index);
  return outcome === 'not-met' || outcome === 'cannot-tell';
}

function holds(need: Need, snapshot: Snapshot): boolean {
  return 'capability' in need
    ? snapshot.capability(need.capability) === 'met'
    : need.anyOf.some((each) => holds(each, snapshot));
}

function refsOf(clause: Clause): readonly Capability[] {
  if (clause.is === 'ref') return [clause.capability];
  if (clause.is === 'leaf') return [];
  return clause.is === 'implies' ? [...refsOf(clause.if), ...refsOf(clause.then)] : clause.of.flatMap(refsOf);
}

/** It hangs on a meter whose reading is too old, or was not taken with the others. */
function asksStaleHours(clause: Clause, { point }: Snapshot): boolean {
  const edges = noEdges();
  collectEdges(clause, edges);
  return [...edges.meters.keys()].some((meter) => {
    const goodBefore = point.meters[meter]?.goodBefore ?? null;
    return goodBefore === null || goodBefore <= point.instant;
  });
}
