import type { AskedMoment } from '../assess/assess.js';
import { viewOf, widenMoment } from '../assess/assess.js';
import { verdictAt } from '../assess/assess.js';
import type { Snapshot } from '../assess/snapshot.js';
import type { System } from '../assess/system.js';
import { systemOf } from '../assess/system.js';
import type { Catalogue } from '../catalogue/type.js';
import { apply } from '../changes/changes.js';
import type { Dossier } from '../dossier/dossier.js';
import type { SourceStatus } from '../facts/source.js';
import { weakerStatus } from '../facts/source.js';
import type { Capability } from '../verdict/capability.js';
import { capabilities } from '../verdict/capability.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import type { Moment, Ready, Verdict } from '../verdict/result.js';
import type { Action } from './action.js';
import { cheapest } from './cheapest.js';
import type { Path, Problem } from './cheapest.js';
import type { Assumption } from './deeds.js';
import type { Job, LabourTable } from './labour.js';
import { defaultLabour } from './labour.js';
import type { State } from './moves.js';
import { fails, movesOf } from './moves.js';
import { supposing } from './supposing.js';

/** Low, typical and high: person-hours, or money in the house's currency. */
export interface Span {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
}

export interface WayStep {
  readonly job: Job;
  readonly subjects: readonly string[];
  /** Kind of change to record; null: facts to find out. */
  readonly change: string | null;
  readonly facts: readonly string[];
  readonly hours: Span;
  readonly assumes: readonly Assumption[];
}

/** One way to a yes: what to do, in this order. */
export interface Way {
  readonly steps: readonly WayStep[];
  readonly hours: Span;
  /** Null: no price of an hour is known. Parts without a price are not in it. */
  readonly money: Span | null;
  /** True where a unit or an antenna is fitted whose price nobody entered. */
  readonly partsUnknown: boolean;
  readonly assumes: readonly Assumption[];
  /** Weakest of the figures behind the hours. */
  readonly hoursRestOn: SourceStatus;
  /** The full verdict as it would then stand: by which means, until when, how many hours. */
  readonly then: Verdict;
  /** What the aircraft could do before and then no longer can at that moment. */
  readonly loses: readonly Capability[];
}

export interface WayBack {
  readonly now: Ready;
  /** Cheapest first; empty where the answer is yes already, or where no work known here leads to a yes. */
  readonly ways: readonly Way[];
  /** False: the search stopped at its limit before it had looked at every state. */
  readonly complete: boolean;
  readonly looked: number;
}

const usualLimits = { states: 1500, paths: 3 };

/**
 * The cheapest work that brings a lost flight back, by search over states: an action may open new obligations, and these
 * must be met as well. Every way is judged by the full rules at its end. It promises nothing: each step says what it assumes,
 * and a person decides. Work is thought of as done at the moment asked, one step a minute, so that its order is known.
 */
export function wayBack(
  dossier: Dossier,
  catalogue: Catalogue,
  asked: AskedMoment,
  conditions?: Partial<FlightConditions>,
  labour: LabourTable = defaultLabour,
  limits: { readonly states: number; readonly paths: number } = usualLimits,
): WayBack {
  const moment = widenMoment(asked);
  const flight = widenConditions(conditions);
  const problem = problemOf(dossier, catalogue, moment, flight, labour);
  const now = verdictOfState(problem.start, catalogue, moment, flight).ready;
  if (now === 'yes') return { now, ways: [], complete: true, looked: 1 };
  const found = cheapest(problem, limits);
  return {
    now,
    ways: found.paths.map((path) => wayOf(problem.start, path, catalogue, moment, flight, labour)),
    complete: found.complete,
    looked: found.looked,
  };
}

/** The search as such; apart, so that its optimum can be held against trying everything. */
export function problemOf(
  dossier: Dossier,
  catalogue: Catalogue,
  moment: Moment,
  flight: FlightConditions,
  labour: LabourTable = defaultLabour,
): Problem<State, Action> {
  const judged = new WeakMap<State, { readonly system: System; readonly stop: Snapshot | null }>();
  const judge = (state: State) => {
    const known = judged.get(state);
    if (known) return known;
    const system = systemOfState(state, catalogue);
    const found = { system, stop: stopping(system, moment, flight) };
    judged.set(state, found);
    return found;
  };
  return {
    start: { dossier, supposed: new Set(), deeds: [], steps: 0 },
    solved: (state) => judge(state).stop === null,
    moves: (state) => {
      const { system, stop } = judge(state);
      return stop === null ? [] : movesOf(system, stop, { state, catalogue, moment, flight, labour });
    },
    after: (state, action) => {
      // A test that later work undid is made once, after that work.
      const before = state.deeds.filter((each) => each.id !== action.id);
      const moved = before.length < state.deeds.length;
      const from = moved ? before.flatMap((each) => each.changes).reduce(apply, dossier) : state.dossier;
      return {
        dossier: action.changes.reduce(apply, from),
        supposed: new Set([...state.supposed, ...action.supposes]),
        deeds: [...before, action],
        steps: state.steps + 1,
      };
    },
    // Deeds in another order are another state only where something else then fails.
    key: (state) => {
      const { system, stop } = judge(state);
      const failing = stop === null ? [] : system.statements.filter((_, index) => fails(stop, index));
      const done = state.deeds.map((each) => each.id).sort();
      return [...done, '', ...failing.map((each) => each.key)].join('\n');
    },
  };
}

function systemOfState(state: State, catalogue: Catalogue): System {
  return supposing(systemOf(state.dossier, catalogue), state.supposed);
}

/** The first look during the flight that is not a yes; null: it is yes throughout. */
function stopping(system: System, moment: Moment, flight: FlightConditions): Snapshot | null {
  const view = viewOf(system, moment);
  for (const instant of [moment.instant, ...view.between(moment.instant, moment.to)]) {
    const snapshot = view.at(instant, moment.hoursAhead, flight);
    if (snapshot.ready(flight) !== 'yes') return snapshot;
  }
  return null;
}

function verdictOfState(state: State, catalogue: Catalogue, moment: Moment, flight: FlightConditions): Verdict {
  return verdictAt(systemOfState(state, catalogue), moment, flight);
}

function wayOf(
  start: State,
  path: Path<State, Action>,
  catalogue: Catalogue,
  moment: Moment,
  flight: FlightConditions,
  { hourly, jobs }: LabourTable,
): Way {
  const actions = path.state.deeds;
  const hours = reckoned((of) => actions.reduce((total, { job }) => total + of(jobs[job]), 0));
  const parts = actions.reduce((total, each) => total + (jobs[each.job].parts ?? 0), 0);
  return {
    steps: actions.map(({ job, subjects, change, supposes, assumes }) => ({
      job,
      subjects,
      change,
      facts: supposes,
      hours: spanOf(jobs[job]),
      assumes,
    })),
    hours,
    money: hourly === null ? null : reckoned((of) => of(hours) * hourly + parts),
    partsUnknown: actions.some((each) => needsParts(each.job) && jobs[each.job].parts === null),
    assumes: [...new Set(actions.flatMap((each) => each.assumes))],
    hoursRestOn: actions.map((each) => jobs[each.job].status).reduce(weakerStatus),
    then: verdictOfState(path.state, catalogue, moment, flight),
    loses: lost(start, path.state, catalogue, moment, flight),
  };
}

function lost(
  before: State,
  after: State,
  catalogue: Catalogue,
  moment: Moment,
  flight: FlightConditions,
): readonly Capability[] {
  const atEnd = (state: State) =>
    viewOf(systemOfState(state, catalogue), moment).at(moment.to, moment.hoursAhead, flight);
  const was = atEnd(before);
  const is = atEnd(after);
  return capabilities.filter((each) => was.capability(each) === 'met' && is.capability(each) !== 'met');
}

function needsParts(job: Job): boolean {
  return job.startsWith('fit-') || job.startsWith('replace-') || job === 'elt-battery' || job === 'repair-defect';
}

/** Each of the three figures by the same reckoning, to the hundredth. */
function reckoned(figure: (of: (span: Span) => number) => number): Span {
  const rounded = (of: (span: Span) => number) => Math.round(figure(of) * 100) / 100;
  return {
    low: rounded((each) => each.low),
    typical: rounded((each) => each.typical),
    high: rounded((each) => each.high),
  };
}

function spanOf({ low, typical, high }: Span): Span {
  return { low, typical, high };
}
