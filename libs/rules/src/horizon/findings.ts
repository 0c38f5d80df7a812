import { hourEdges, viewOf } from '../assess/assess.js';
import { systemOf } from '../assess/system.js';
import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Topic } from '../rules/rule.js';
import { rules } from '../rules/registry.js';
import type { Centihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import type { Capability } from '../verdict/capability.js';
import type { Clause, Outcome } from '../verdict/clause.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { strictest, widenConditions } from '../verdict/conditions.js';
import { worst } from '../verdict/evaluate.js';
import type { Remedy, Statement, Values } from '../verdict/result.js';

export type FindingEffect = 'stops-aircraft' | 'stops-operation' | 'stops-release' | 'record' | 'advice';

/** A result that is not met, as an interval of time and flight hours: "open now" is a question, not a state. */
export interface Finding {
  readonly key: string;
  readonly ruleId: string;
  readonly topic: Topic;
  readonly subject: string;
  readonly outcome: 'not-met' | 'cannot-tell';
  readonly messageId: string;
  readonly data: Values;
  readonly opensAt: Instant;
  /** Exclusive; null: beyond the end of the horizon. */
  readonly closesAt: Instant | null;
  /** Flight hours since the latest reading: exclusive and inclusive; null = no limit. */
  readonly above: Centihours;
  readonly upTo: Centihours | null;
  readonly effect: FindingEffect;
  readonly capabilities: readonly Capability[];
  readonly remedies: readonly Remedy[];
}

const topicOf = new Map(rules.map((rule) => [rule.meta.id, rule.meta.topic]));

/**
 * Findings from `from` to `to`: results that are not met on at least one of the flights asked about, by default the strictest.
 * A house asks about the flights that it flies: what only a flight that nobody makes would need is no finding.
 * Rectangles of one finding do not overlap; old readings alone open no finding before they are old.
 */
export function findingsOf(
  dossier: Dossier,
  catalogue: Catalogue,
  from: Instant,
  to: Instant,
  flights: readonly FlightConditions[] = [strictest],
): readonly Finding[] {
  const system = systemOf(dossier, catalogue);
  const view = viewOf(system, { instant: from });
  const times = [from, ...view.between(from, to).filter((each) => each < to)];
  const edges = hourEdges(system);
  const tops: readonly (Centihours | null)[] = [...edges, null];
  const beyond = (edges.at(-1) ?? -1) + 1;
  // Made once: every statement asks the same points.
  const points = flights
    .map(widenConditions)
    .map((flight) => tops.map((top) => times.map((time) => view.at(time, top ?? beyond, flight))));
  const open: Finding[] = [];
  system.statements.forEach((statement, index) => {
    // Where the flight plays no part one answers for all.
    const asked = dependsOnFlight(statement.clause) ? points : points.slice(0, 1);
    const outcomesIn = (band: number): Outcome[] =>
      times.map((_, at) =>
        worst(
          asked.map((bands) => bands[band]?.[at]?.outcome(index) ?? 'not-applicable'),
          'not-applicable',
        ),
      );
    let next = outcomesIn(0);
    let low = 0;
    // One band of hours after the other; within it, stretches of time.
    for (let band = 0; band < tops.length; band += 1) {
      const outcomes = next;
      next = band + 1 < tops.length ? outcomesIn(band + 1) : [];
      if (next.length > 0 && outcomes.every((each, at) => each === next[at])) continue;
      const above = tops[low - 1] ?? -1;
      for (let start = 0; start < times.length;) {
        let end = start + 1;
        while (end < times.length && outcomes[end] === outcomes[start]) end += 1;
        const outcome = outcomes[start];
        if (outcome === 'not-met' || outcome === 'cannot-tell') {
          open.push(
            findingOf(statement, outcome, {
              opensAt: times[start] ?? from,
              closesAt: times[end] ?? null,
              above,
              upTo: tops[band] ?? null,
            }),
          );
        }
        start = end;
      }
      low = band + 1;
    }
  });
  return open;
}

/** Whether flights of different kinds can get different outcomes; one that says no answers for all. */
export function dependsOnFlight(clause: Clause): boolean {
  switch (clause.is) {
    case 'leaf':
      return clause.when !== undefined;
    case 'ref':
      return true;
    case 'implies':
      return dependsOnFlight(clause.if) || dependsOnFlight(clause.then);
    default:
      return clause.of.some(dependsOnFlight);
  }
}

function findingOf(
  statement: Statement,
  outcome: 'not-met' | 'cannot-tell',
  region: Pick<Finding, 'opensAt' | 'closesAt' | 'above' | 'upTo'>,
): Finding {
  return {
    key: statement.key,
    ruleId: statement.ruleId,
    topic: topicOf.get(statement.ruleId) ?? 'authority',
    subject: statement.subject,
    outcome,
    messageId: statement.messages[outcome],
    data: statement.data,
    ...region,
    effect: effectOf(statement),
    capabilities: [
      ...new Set(statement.effects.flatMap((effect) => (effect.stops === 'capability' ? [effect.capability] : []))),
    ],
    remedies: statement.remedies,
  };
}

/** The gravest effect of the statement. */
export function effectOf(statement: Pick<Statement, 'effects'>): FindingEffect {
  const { effects } = statement;
  if (effects.some((each) => each.stops === 'capability' && each.capability === 'fly')) return 'stops-aircraft';
  if (effects.some((each) => each.stops === 'capability')) return 'stops-operation';
  if (effects.some((each) => each.stops === 'release' || each.stops === 'plan')) return 'stops-release';
  return effects.some((each) => each.stops === 'nothing' && each.kind === 'record') ? 'record' : 'advice';
}
