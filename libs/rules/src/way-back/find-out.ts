import type { AskedMoment } from '../assess/assess.js';
import { widenMoment } from '../assess/assess.js';
import { fixedOperations } from '../assess/operations.js';
import type { Snapshot } from '../assess/snapshot.js';
import { snapshotOf } from '../assess/snapshot.js';
import type { System } from '../assess/system.js';
import { systemOf } from '../assess/system.js';
import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import { leaves } from '../verdict/regions.js';
import type { Statement } from '../verdict/result.js';
import { supposing } from './supposing.js';

/** A fact that nobody recorded, and what would follow if it turned out well. */
export interface FactToFind {
  /** Path of the fact in the dossier. */
  readonly fact: string;
  /** Subjects of the results that ask for it. */
  readonly subjects: readonly string[];
  /** Operations that would become yes by this fact alone. */
  readonly opens: readonly string[];
  /** Keys of results that would no longer be cannot-tell. */
  readonly settles: readonly string[];
}

/**
 * Missing facts, most useful first: the ones that open operations, then the ones that settle most results.
 * What it assumes is said by its name: that the fact turns out well. It promises nothing.
 */
export function findOut(
  dossier: Dossier,
  catalogue: Catalogue,
  asked: AskedMoment,
  conditions?: Partial<FlightConditions>,
): readonly FactToFind[] {
  const { instant, hoursAhead } = widenMoment(asked);
  const flight = widenConditions(conditions);
  const asking = { instant, hoursAhead, flight, operations: fixedOperations(flight) };
  const system = systemOf(dossier, catalogue);
  const now = answersOf(system, asking);
  const askers = askersOf(now);
  const found = [...askers].map(([fact, statements]): FactToFind => ({
    fact,
    subjects: [...new Set([...statements].map(({ subject }) => subject))],
    ...gainOf(supposing(system, new Set([fact])), now, asking),
  }));
  return found.sort(mostUseful);
}

/** What follows if facts turn out well. */
export type Gain = Pick<FactToFind, 'opens' | 'settles'>;

/** What is opened outweighs any number of results settled. */
export function usefulness({ opens, settles }: Gain): number {
  return opens.length * 1000 + settles.length;
}

export function mostUseful(a: Gain & { readonly fact: string }, b: Gain & { readonly fact: string }): number {
  return usefulness(b) - usefulness(a) || (a.fact < b.fact ? -1 : 1);
}

export interface Asking {
  readonly instant: string;
  readonly hoursAhead: number;
  readonly flight: FlightConditions;
  /** Of which it is asked whether they become a yes. */
  readonly operations: Readonly<Record<string, FlightConditions>>;
}

/** How a system answers as it stands. */
export interface Answers {
  /** Statements that nobody can tell, by their places in the system. */
  readonly open: ReadonlyMap<number, Statement>;
  readonly ready: Readonly<Record<string, string>>;
}

export function answersOf(system: System, asking: Asking): Answers {
  const now = snapshotOf(system, asking.instant, asking.hoursAhead, asking.flight);
  return {
    open: new Map([...system.statements.entries()].filter(([index]) => now.outcome(index) === 'cannot-tell')),
    ready: readiness(system, asking, now),
  };
}

/** Facts that are missing, with the statements that ask for them. */
export function askersOf({ open }: Pick<Answers, 'open'>): ReadonlyMap<string, ReadonlySet<Statement>> {
  const askers = new Map<string, Set<Statement>>();
  for (const statement of open.values())
    for (const leaf of leaves(statement.clause))
      for (const fact of leaf.missing ?? []) askers.set(fact, (askers.get(fact) ?? new Set()).add(statement));
  return askers;
}

/** What is different once some facts turned out well: `better` is the system that supposes it. */
export function gainOf(better: System, now: Answers, asking: Asking): Gain {
  const then = snapshotOf(better, asking.instant, asking.hoursAhead, asking.flight);
  const ready = readiness(better, asking, then);
  return {
    opens: Object.keys(ready).filter((name) => ready[name] === 'yes' && now.ready[name] !== 'yes'),
    settles: [...now.open].filter(([index]) => then.outcome(index) !== 'cannot-tell').map(([, { key }]) => key),
  };
}

/** The flight itself is judged already; the other operations are judged here. */
function readiness(
  system: System,
  { instant, hoursAhead, flight, operations }: Asking,
  judged: Snapshot,
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(operations).map(([name, each]) => [
      name,
      (each === flight ? judged : snapshotOf(system, instant, hoursAhead, each)).ready(each),
    ]),
  );
}
