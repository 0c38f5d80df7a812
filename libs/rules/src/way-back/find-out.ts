import type { AskedMoment } from '../assess/assess.js';
import { widenMoment } from '../assess/assess.js';
import { fixedOperations } from '../assess/operations.js';
import { snapshotOf } from '../assess/snapshot.js';
import type { System } from '../assess/system.js';
import { systemOf } from '../assess/system.js';
import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import { leaves } from '../verdict/regions.js';
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

/** An operation opened outweighs any number of results settled. */
const opensWeighs = 1000;

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
  const system = systemOf(dossier, catalogue);
  const now = snapshotOf(system, instant, hoursAhead, flight);
  const open = system.statements.flatMap((_, index) => (now.outcome(index) === 'cannot-tell' ? [index] : []));
  const askers = new Map<string, number[]>();
  for (const index of open) {
    const statement = system.statements[index];
    if (!statement) continue;
    for (const leaf of leaves(statement.clause))
      for (const fact of leaf.missing ?? []) askers.set(fact, [...(askers.get(fact) ?? []), index]);
  }
  const readyNow = readiness(system, instant, hoursAhead, flight);
  const found = [...askers].map(([fact, indexes]): FactToFind => {
    const better = supposing(system, new Set([fact]));
    const then = snapshotOf(better, instant, hoursAhead, flight);
    const readyThen = readiness(better, instant, hoursAhead, flight);
    return {
      fact,
      subjects: [...new Set(indexes.flatMap((index) => system.statements[index]?.subject ?? []))],
      opens: Object.keys(readyThen).filter((name) => readyThen[name] === 'yes' && readyNow[name] !== 'yes'),
      settles: open
        .filter((index) => then.outcome(index) !== 'cannot-tell')
        .flatMap((index) => system.statements[index]?.key ?? []),
    };
  });
  return found.sort((a, b) => weight(b) - weight(a) || (a.fact < b.fact ? -1 : 1));
}

function weight(each: FactToFind): number {
  return each.opens.length * opensWeighs + each.settles.length;
}

function readiness(
  system: System,
  instant: string,
  hoursAhead: number,
  flight: FlightConditions,
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(fixedOperations(flight)).map(([name, each]) => [
      name,
      snapshotOf(system, instant, hoursAhead, each).ready(each),
    ]),
  );
}
