import { changed, verdictBody, viewOf, hourEdges } from '../assess/assess.js';
import type { Snapshot } from '../assess/snapshot.js';
import type { System } from '../assess/system.js';
import { systemOf } from '../assess/system.js';
import type { Catalogue } from '../catalogue/type.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Centihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import type { Horizon, Ready, Window } from '../verdict/result.js';

interface Cell {
  readonly snapshot: Snapshot;
  readonly ready: Ready;
  readonly sameAs: string;
}

/**
 * The verdict for one flight over time and flight hours, as rectangles that do not overlap and leave no gap from `from` to `to`.
 * Computed on the grid of all region edges: equal to asking `assess` at every minute and every hundredth of an hour.
 * `assumeRead`: as if meters will always be read in time; for looking ahead along a projected use.
 */
export function horizon(
  dossier: Dossier,
  catalogue: Catalogue,
  from: Instant,
  to: Instant,
  conditions?: Partial<FlightConditions>,
  assumeRead = false,
): Horizon {
  return horizonOf(systemOf(dossier, catalogue), from, to, widenConditions(conditions), assumeRead);
}

export function horizonOf(
  system: System,
  from: Instant,
  to: Instant,
  flight: FlightConditions,
  assumeRead = false,
): Horizon {
  const view = viewOf(system, { instant: from }, assumeRead);
  const times = [from, ...view.between(from, to).filter((each) => each < to)];
  // A column is one stretch of time; a cell one stretch of hours in it, named by its last hour, null for no limit.
  const tops: readonly (Centihours | null)[] = [...hourEdges(system), null];
  const lastEdge = hourEdges(system).at(-1) ?? -1;
  const columns = times.map((time) => tops.map((top) => cellAt(view.at(time, top ?? lastEdge + 1, flight), flight)));

  const endedBy = (step: Step | undefined) => (step ? changed(system, step[0].snapshot, step[1].snapshot, flight) : []);

  const windows: Window[] = [];
  let start = 0;
  for (let end = 1; end <= columns.length; end += 1) {
    const next = columns[end];
    if (next && sameColumn(columns[start] ?? [], next)) continue;
    const column = columns[start] ?? [];
    let low = 0;
    for (let high = 1; high <= column.length; high += 1) {
      const cell = column[low];
      if (!cell || column[high]?.sameAs === cell.sameAs) continue;
      const after = next?.[low]?.snapshot ?? null;
      const top = tops[high - 1] ?? null;
      const answer = cell.snapshot.answer(flight);
      windows.push({
        operation: 'flight',
        ...verdictBody(answer, answer.ready === 'yes' ? endedBy(endOfYes(columns, end, low, high)) : answer.stoppedBy),
        from: times[start] ?? from,
        to: times[end] ?? to,
        above: tops[low - 1] ?? -1,
        upTo: top,
        endsBecause: changed(system, cell.snapshot, after, flight),
      });
      low = high;
    }
    start = end;
  }
  return { from, to, conditions: flight, windows };
}

function cellAt(snapshot: Snapshot, flight: FlightConditions): Cell {
  const answer = snapshot.answer(flight);
  return {
    snapshot,
    ready: answer.ready,
    sameAs: JSON.stringify([answer.ready, answer.standing, answer.by, answer.stoppedBy, answer.topFt, answer.weakest]),
  };
}

/**
 * The last cell of a yes and the first that is none, of the window that ends with column `end` and has the hours from `low` to
 * `high`: by the day, and where no day comes, by the hours. It may go on past its window, by other means or to another altitude.
 */
function endOfYes(columns: readonly (readonly Cell[])[], end: number, low: number, high: number): Step | undefined {
  const days = columns.slice(end - 1).map((each) => each.slice(low, high));
  const hours = columns.slice(end - 1, end).flatMap((each) => each.slice(high - 1));
  const steps = [
    ...days.slice(1).flatMap((each, at) => stepsTo(days[at] ?? [], each)),
    ...stepsTo(hours, hours.slice(1)),
  ];
  return steps.find(([, next]) => next.ready !== 'yes');
}

type Step = readonly [last: Cell, next: Cell];

function stepsTo(from: readonly Cell[], to: readonly Cell[]): readonly Step[] {
  return to.flatMap((next, index): Step[] => {
    const last = from[index];
    return last ? [[last, next]] : [];
  });
}

function sameColumn(a: readonly Cell[], b: readonly Cell[]): boolean {
  return a.every((cell, index) => cell.sameAs === b[index]?.sameAs);
}
