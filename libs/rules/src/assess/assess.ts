import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Centihours } from '../time/hours.js';
import { toCentihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import { zoneDataVersion } from '../time/zones.js';
import type { Outcome } from '../verdict/clause.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import type { Explained } from '../verdict/evaluate.js';
import { explain, worst } from '../verdict/evaluate.js';
import { collectEdges, noEdges } from '../verdict/regions.js';
import type { Assessment, Moment, Result, Statement, Verdict } from '../verdict/result.js';
import type { Capability } from '../verdict/capability.js';
import { capabilities, needsMeans } from '../verdict/capability.js';
import { hoursUntil } from './meters.js';
import { fixedOperations } from './operations.js';
import type { Answer, Snapshot } from './snapshot.js';
import { fails, snapshotOf, worstFirst } from './snapshot.js';
import type { System } from './system.js';
import { hasRef, systemOf } from './system.js';
import { rulesVersion } from './version.js';

/** A moment in full, or the short form: a point in time with the decimal flight hours flown since the latest reading. */
export type AskedMoment = Moment | { readonly instant: Instant; readonly hours?: number };

/**
 * What this aircraft may be used for, and why. Pure: same dossier, catalogue, moment and conditions, same answer everywhere.
 * Without conditions it answers for the default profile; a field left open takes its strictest value.
 * A flight is judged from its start through its end, with the hours expected at its end.
 */
export function assess(
  dossier: Dossier,
  catalogue: Catalogue,
  asked: AskedMoment,
  conditions?: Partial<FlightConditions>,
): Assessment {
  const moment = widenMoment(asked);
  const flight = widenConditions(conditions);
  const system = systemOf(dossier, catalogue);
  const view = viewOf(system, moment);
  const { notWanted } = dossier.configuration.aircraft;
  const operations = Object.fromEntries(
    Object.entries(fixedOperations(flight)).map(([name, each]) => {
      const verdict = verdictAt(system, moment, each, view);
      return [name, notWanted.includes(name) ? { ...verdict, standing: 'not-wanted' as const } : verdict];
    }),
  );
  return {
    of: {
      aircraftId: dossier.aircraftId,
      revision: dossier.revision,
      rules: rulesVersion,
      catalogue: catalogue.version,
      zones: zoneDataVersion,
      moment,
      conditions: flight,
      ...(catalogue.policies === undefined ? {} : { policies: catalogue.policies }),
    },
    results: resultsOf(system, moment, flight, view),
    operations,
    notJudged: notJudgedIn(system),
  };
}

/** Capabilities that no rule judges, though something is fitted that could have them: gaps of the rules, not of the aircraft. */
export function notJudgedIn({ byCapability }: System): readonly Capability[] {
  return capabilities.filter((each) => {
    const { means, judged } = byCapability[each];
    return needsMeans(each) ? means.length > 0 && !means.some((one) => one.judged) : !judged;
  });
}

export function widenMoment(asked: AskedMoment): Moment {
  if ('to' in asked) return asked;
  return { instant: asked.instant, to: asked.instant, hoursAhead: toCentihours(asked.hours ?? 0) };
}

/** Snapshots by instant, hours and conditions, made once. */
export interface View {
  readonly at: (instant: Instant, hours: Centihours, flight: FlightConditions) => Snapshot;
  /** Instants after `after` at which anything may change. */
  readonly later: (after: Instant) => readonly Instant[];
  /** Flight hours above `above` after which anything may change: last hours of the old state. */
  readonly furtherHours: (above: Centihours) => readonly Centihours[];
  readonly between: (from: Instant, to: Instant) => readonly Instant[];
}

export function viewOf(system: System, moment: Pick<Moment, 'instant'>, assumeRead = false): View {
  const instants = [...system.edges.instants].filter((each) => each > moment.instant).sort();
  const hours = hourEdges(system);
  const made = new Map<string, Snapshot>();
  // Spelling a flight out costs more than looking a snapshot up: once for each flight asked about.
  const names = new Map<FlightConditions, string>();
  const nameOf = (flight: FlightConditions): string => {
    // Approaches are wishes, not regions: flights that differ in them alone share a snapshot.
    const name = names.get(flight) ?? JSON.stringify({ ...flight, approaches: [] });
    names.set(flight, name);
    return name;
  };
  return {
    at: (instant, ahead, flight) => {
      const key = `${instant}|${ahead}|${nameOf(flight)}`;
      const known = made.get(key) ?? snapshotOf(system, instant, ahead, flight, assumeRead);
      made.set(key, known);
      return known;
    },
    later: (after) => instants.filter((each) => each > after),
    furtherHours: (above) => hours.filter((each) => each >= above),
    between: (from, to) => instants.filter((each) => each > from && each <= to),
  };
}

export function hourEdges(system: System): readonly Centihours[] {
  const found = new Set<Centihours>();
  for (const [meter, limits] of system.edges.meters) {
    for (const limit of limits) {
      const hours = hoursUntil(system.dossier, meter, limit);
      if (hours !== null && hours >= 0) found.add(hours);
    }
  }
  return [...found].sort((a, b) => a - b);
}

/** Every part of one result's clause with its own outcome at the end of the flight: the reason, opened. Null: no such result. */
export function explainResult(
  dossier: Dossier,
  catalogue: Catalogue,
  asked: AskedMoment,
  key: string,
  conditions?: Partial<FlightConditions>,
): Explained | null {
  const moment = widenMoment(asked);
  const system = systemOf(dossier, catalogue);
  const statement = system.statements.find((each) => each.key === key);
  return statement
    ? explain(
        statement.clause,
        viewOf(system, moment).at(moment.to, moment.hoursAhead, widenConditions(conditions)).point,
      )
    : null;
}

/** What each statement says of one flight, and when that changes. */
export function resultsOf(
  system: System,
  moment: Moment,
  flight: FlightConditions,
  view = viewOf(system, moment),
): readonly Result[] {
  return system.statements.map((statement, index) => resultOf(statement, index, view, moment, flight));
}

function resultOf(statement: Statement, index: number, view: View, moment: Moment, flight: FlightConditions): Result {
  const during = [moment.instant, ...view.between(moment.instant, moment.to)].map((instant) =>
    view.at(instant, moment.hoursAhead, flight).outcome(index),
  );
  const outcome: Outcome = worst(during, 'not-applicable');
  const last = view.at(moment.to, moment.hoursAhead, flight).outcome(index);
  const edges = noEdges();
  collectEdges(statement.clause, edges);
  const leans = hasRef(statement.clause);
  const own =
    leans || edges.meters.size > 0
      ? view.later(moment.to)
      : view.later(moment.to).filter((each) => edges.instants.has(each));
  const changesAt = own.find((instant) => view.at(instant, moment.hoursAhead, flight).outcome(index) !== last);
  const hoursLeft =
    edges.meters.size === 0 && !leans
      ? undefined
      : view
          .furtherHours(moment.hoursAhead)
          .find((hours) => view.at(moment.to, hours + 1, flight).outcome(index) !== last);
  return {
    ruleId: statement.ruleId,
    key: statement.key,
    subject: statement.subject,
    outcome,
    messageId: statement.messages[outcome],
    data: statement.data,
    clause: statement.clause,
    effects: statement.effects,
    ...(changesAt === undefined ? {} : { changesAt }),
    ...(hoursLeft === undefined ? {} : { hoursLeft: hoursLeft - moment.hoursAhead }),
    due: statement.due ?? [],
    remedies: outcome === 'met' || outcome === 'not-applicable' ? [] : statement.remedies,
  };
}

/** The verdict on one flight over statements that may be supposed, beside what `assess` answers for a dossier as it stands. */
export function verdictAt(
  system: System,
  moment: Moment,
  flight: FlightConditions,
  view = viewOf(system, moment),
): Verdict {
  const answers = [moment.instant, ...view.between(moment.instant, moment.to)].map((instant) =>
    view.at(instant, moment.hoursAhead, flight).answer(flight),
  );
  const answer = answers.reduce((a, b) => (readyRank[b.ready] < readyRank[a.ready] ? b : a));
  const ends = view
    .later(moment.to)
    .find((instant) => view.at(instant, moment.hoursAhead, flight).ready(flight) !== answers.at(-1)?.ready);
  const hours = view
    .furtherHours(moment.hoursAhead)
    .find((each) => view.at(moment.to, each + 1, flight).ready(flight) !== answers.at(-1)?.ready);
  // A yes that hours end has a day too: the one on which their reading is too old.
  const because = answer.ready !== 'yes' ? answer.stoppedBy : ends === undefined ? [] : endedBy(ends);

  /** What a yes rests on at the last: some of what gives it today may be gone long before. */
  function endedBy(instant: Instant): readonly string[] {
    const before = view.between(moment.to, instant).filter((each) => each < instant);
    const at = (each: Instant) => view.at(each, moment.hoursAhead, flight);
    return changed(system, at(before.at(-1) ?? moment.to), at(instant), flight);
  }

  return {
    ...verdictBody(answer, because),
    ...(ends === undefined ? {} : { changesAt: ends }),
    ...(hours === undefined ? {} : { hoursLeft: hours - moment.hoursAhead }),
  };
}

export function verdictBody(answer: Answer, because: readonly string[]): Verdict {
  return {
    ready: answer.ready,
    standing: answer.standing,
    by: answer.by,
    because,
    weakestSource: answer.weakest,
    ...(answer.topFt === null ? {} : { topFt: answer.topFt }),
  };
}

/**
 * Keys of the results that make the difference in the later snapshot: what a yes rests on and no longer has; else what stops the
 * flight and did not before; or, where it gets better, what no longer does.
 */
export function changed(
  system: System,
  before: Snapshot,
  after: Snapshot | null,
  flight: FlightConditions,
): readonly string[] {
  if (after === null) return [];
  const keysOf = (indexes: readonly number[]) => indexes.flatMap((index) => system.statements[index]?.key ?? []);
  const stops = after.answer(flight).stoppedBy;
  const lost = keysOf(
    worstFirst(
      before.answer(flight).restsOn.filter((index) => fails(after.outcome(index))),
      after.outcome,
    ),
  );
  const told = stops.filter((key) => lost.includes(key));
  if (lost.length > 0) return told.length > 0 ? told : lost;
  const come = stops.filter((key) => {
    const index = system.statements.findIndex((each) => each.key === key);
    return before.outcome(index) !== after.outcome(index);
  });
  return come.length > 0 ? come : before.answer(flight).stoppedBy.filter((key) => !stops.includes(key));
}

const readyRank = { no: 0, 'cannot-tell': 1, yes: 2 } as const;
