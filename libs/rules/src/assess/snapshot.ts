import { policyAt } from '../catalogue/policy.js';
import { jobOfHold } from '../dossier/hold.js';
import type { SourceStatus } from '../facts/source.js';
import type { Centihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import type { Capability } from '../verdict/capability.js';
import { needsMeans } from '../verdict/capability.js';
import type { Outcome } from '../verdict/clause.js';
import type { FlightConditions } from '../verdict/conditions.js';
import type { Point } from '../verdict/evaluate.js';
import { best, evaluate, worst } from '../verdict/evaluate.js';
import { leaves, weakestOf } from '../verdict/regions.js';
import type { Ready, Standing } from '../verdict/result.js';
import { metersAt } from './meters.js';
import type { Need } from './operations.js';
import { needsOf } from './operations.js';
import type { System } from './system.js';

/** The answer at one point; what is asked of it is computed when asked and remembered. */
export interface Snapshot {
  readonly point: Point;
  readonly outcome: (statement: number) => Outcome;
  readonly capability: (capability: Capability) => Outcome;
  /** The word alone, without its reasons: for looking along many points. */
  readonly ready: (flight: FlightConditions) => Ready;
  readonly answer: (flight: FlightConditions) => Answer;
}

export interface Answer {
  readonly ready: Ready;
  readonly standing: Standing;
  readonly by: readonly string[];
  /** Keys of the results that stop it; empty for yes. */
  readonly stoppedBy: readonly string[];
  /** Statements that a yes rests on: those on the aircraft, and those on the means that give it. None where it is no yes. */
  readonly restsOn: readonly number[];
  readonly topFt: number | null;
  readonly weakest: SourceStatus | null;
}

export function fails(outcome: Outcome): boolean {
  return outcome === 'not-met' || outcome === 'cannot-tell';
}

/** Statements that fail: what is certain before what cannot be told, else in the order of the rules. */
export function worstFirst(failing: readonly number[], outcome: Snapshot['outcome']): readonly number[] {
  return [...failing].sort((a, b) => (outcome(a) === outcome(b) ? a - b : outcome(a) === 'not-met' ? -1 : 1));
}

export function snapshotOf(
  system: System,
  instant: Instant,
  hoursAhead: Centihours,
  conditions: FlightConditions,
  assumeRead = false,
): Snapshot {
  const outcomes: (Outcome | undefined)[] = [];
  const answers = new Map<FlightConditions, Answer>();
  const holding = new Map<Capability, Outcome | 'asking'>();
  // "None fitted" is certain only where somebody stated the list of equipment complete.
  const noMeans: Outcome = system.facts.complete('equipment') === null ? 'cannot-tell' : 'not-met';
  const { catalogue, zone } = system.facts;
  const readingDays = policyAt(catalogue.policies, 'reading-age', instant, zone)?.body.days ?? null;
  const point: Point = {
    instant,
    meters: metersAt(system.dossier, hoursAhead, assumeRead, readingDays),
    conditions,
    capability,
  };

  function outcome(index: number): Outcome {
    const known = outcomes[index];
    if (known !== undefined) return known;
    const statement = system.statements[index];
    const found = statement ? evaluate(statement.clause, point) : 'not-applicable';
    return (outcomes[index] = found);
  }

  function capability(wanted: Capability): Outcome {
    const known = holding.get(wanted);
    // A capability that leans on itself proves nothing.
    if (known !== undefined) return known === 'asking' ? 'cannot-tell' : known;
    holding.set(wanted, 'asking');
    const found = judge(wanted);
    holding.set(wanted, found);
    return found;
  }

  function judge(wanted: Capability): Outcome {
    const bearing = system.byCapability[wanted];
    const ofAircraft = worst(bearing.aircraft.map(outcome), 'not-applicable');
    if (!needsMeans(wanted))
      return worst([ofAircraft, bearing.judged ? 'not-applicable' : 'cannot-tell'], 'cannot-tell');
    return worst(
      [
        ofAircraft,
        best(
          bearing.means.map((each) => meansOutcome(each)),
          noMeans,
        ),
      ],
      'cannot-tell',
    );
  }

  function meansOutcome(means: { readonly statements: readonly number[]; readonly judged: boolean }): Outcome {
    return worst(
      [worst(means.statements.map(outcome), 'cannot-tell'), means.judged ? 'not-applicable' : 'cannot-tell'],
      'cannot-tell',
    );
  }

  /** Statements that stop a capability on its way nearest to yes, worst ones first. */
  function stops(wanted: Capability): readonly number[] {
    const bearing = system.byCapability[wanted];
    const failing = (indexes: readonly number[]) => indexes.filter((index) => fails(outcome(index)));
    const ways = bearing.means.map((each) => failing(each.statements)).sort((a, b) => weight(a) - weight(b));
    return [...failing(bearing.aircraft), ...(ways[0] ?? [])];
  }

  function weight(indexes: readonly number[]): number {
    return indexes.reduce((sum, index) => sum + (outcome(index) === 'not-met' ? 100 : 1), 0);
  }

  function needOutcome(need: Need): Outcome {
    return 'capability' in need ? capability(need.capability) : best(need.anyOf.map(needOutcome), 'not-met');
  }

  /** Capabilities that answer a need: the ones that hold, or where none does, the one nearest to it. */
  function answering(need: Need): readonly Capability[] {
    if ('capability' in need) return [need.capability];
    const members = need.anyOf.flatMap(answering);
    const held = members.filter((each) => capability(each) === 'met');
    if (held.length > 0) return held;
    const ranked = [...members].sort((a, b) => distance(a) - distance(b));
    return ranked.slice(0, 1);
  }

  function hasNoMeans(wanted: Capability): boolean {
    return needsMeans(wanted) && system.byCapability[wanted].means.length === 0;
  }

  function distance(wanted: Capability): number {
    return (hasNoMeans(wanted) ? 100_000 : 0) + weight(stops(wanted));
  }

  function ready(flight: FlightConditions): Ready {
    const total = worst(needsOf(flight).map(needOutcome), 'cannot-tell');
    return total === 'met' ? 'yes' : total === 'not-met' ? 'no' : 'cannot-tell';
  }

  function answer(flight: FlightConditions): Answer {
    const known = answers.get(flight) ?? reasoned(flight);
    answers.set(flight, known);
    return known;
  }

  function reasoned(flight: FlightConditions): Answer {
    const needs = needsOf(flight);
    const word = ready(flight);
    const wanted = [...new Set(needs.flatMap(answering))];
    const holdingMeans = wanted.flatMap((each) =>
      system.byCapability[each].means.filter((means) => meansOutcome(means) === 'met'),
    );
    const behind = [
      ...new Set([
        ...wanted.flatMap((each) => system.byCapability[each].aircraft),
        ...holdingMeans.flatMap((each) => each.statements),
      ]),
    ];
    const tops = behind.flatMap((index) => (outcome(index) === 'met' ? (system.statements[index]?.topFt ?? []) : []));
    const stopping = [...new Set(wanted.flatMap(stops))];
    const ordered = worstFirst(stopping, outcome);
    return {
      ready: word,
      standing: standingOf(word, wanted, ordered),
      by: [...new Set(holdingMeans.map((each) => each.means.id))],
      stoppedBy: ordered.flatMap((index) => system.statements[index]?.key ?? []),
      restsOn: word === 'yes' ? behind : [],
      topFt: tops.length > 0 ? Math.min(...tops) : null,
      weakest: word === 'yes' ? weakestOf(behind.flatMap(sourcesOf)) : null,
    };
  }

  function sourcesOf(index: number) {
    const clause = system.statements[index]?.clause;
    return clause && outcome(index) === 'met'
      ? [...leaves(clause)].filter((leaf) => evaluate(leaf, point) === 'met').map((leaf) => leaf.source)
      : [];
  }

  function standingOf(word: Ready, wanted: readonly Capability[], stopping: readonly number[]): Standing {
    const holds = stopping.flatMap((index) => {
      const statement = system.statements[index];
      return statement?.ruleId === 'held' && outcome(index) === 'not-met' ? [statement.subject] : [];
    });
    // What a person wants to know first: somebody holds it, then that a job does.
    if (holds.length > 0) return holds.every((each) => jobOfHold(each) !== null) ? 'in-work' : 'held';
    if (stopping.length > 0 && stopping.every((index) => system.statements[index]?.ruleId === 'source-say-so'))
      return 'say-so';
    if (noMeans === 'not-met' && wanted.some(hasNoMeans)) return 'not-fitted';
    const unjudged = (each: Capability) => {
      const { means, judged } = system.byCapability[each];
      return needsMeans(each) ? !means.some((one) => one.judged) : !judged;
    };
    return word === 'cannot-tell' && wanted.some(unjudged) ? 'not-judged' : 'judged';
  }

  return { point, outcome, capability, ready, answer };
}
