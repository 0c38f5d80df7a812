import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lpv } from '../../testing/flights.js';
import { lostFlights } from '../../testing/lost-flights.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import { viewOf, widenMoment } from '../assess/assess.js';
import { systemOf } from '../assess/system.js';
import type { Dossier } from '../dossier/dossier.js';
import { missingPaths } from '../rules/gaps.js';
import { instantOf, minutesOf } from '../time/instant.js';
import { capabilities } from '../verdict/capability.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import type { Action } from './action.js';
import { actionsFor, findOutAction, readMeters } from './actions.js';
import type { Move } from './cheapest.js';
import { cheapest } from './cheapest.js';
import { fittingsFor } from './fittings.js';
import type { Job, LabourTable } from './labour.js';
import { defaultLabour } from './labour.js';
import type { State } from './moves.js';
import { fails } from './moves.js';
import { supposing } from './supposing.js';
import { problemOf } from './way-back.js';

const asked = widenMoment({ instant: goodDay, hours: 1 });

const jobs = Object.keys(defaultLabour.jobs) as Job[];
const weighing = (weight: (job: Job) => number): LabourTable => ({
  hourly: null,
  jobs: Object.fromEntries(
    jobs.map((job) => [job, { ...defaultLabour.jobs[job], typical: weight(job) }]),
  ) as LabourTable['jobs'],
});

/** What the search finds, and what walking through every order of everything finds. */
function compared(dossier: Dossier, flight: Partial<FlightConditions>, labour: LabourTable, states: number) {
  const conditions = widenConditions(flight);
  const problem = problemOf(dossier, trainerCatalogue, asked, conditions, labour);
  const all = { ...problem, moves: (state: State) => everyMove(state, conditions, labour) };
  const found = cheapest(problem, { states: 1500, paths: 1 }).paths[0];
  const whole = cheapest(all, { states, paths: 1 });
  return { found, whole };
}

describe.each(lostFlights)('%s', (_, dossier, flight) => {
  it('cannot be had for less by any order of what any failing result on the way names, whatever the jobs cost', () => {
    // Close enough to each other that a way of one job more never costs less: what has to be looked through stays small.
    const weights = fc.array(fc.integer({ min: 10, max: 14 }), { minLength: jobs.length, maxLength: jobs.length });
    fc.assert(
      fc.property(weights, (drawn) => {
        const labour = weighing((job) => drawn[jobs.indexOf(job)] ?? 0);
        const { found, whole } = compared(dossier, flight, labour, 200);
        expect(whole.complete).toBe(true);
        expect(found?.cost).toBe(whole.paths[0]?.cost);
        expect(found?.cost).toBeGreaterThan(0);
      }),
      { numRuns: 4 },
    );
  });
});

it('an antenna gone: what its fitting opens is met as well, by no other jobs than the fewest of all orders of everything', () => {
  const antennas = trainer().configuration.antennas.filter((each) => each.id !== 'a-gps');
  const without = trainer({ configuration: { antennas } });
  const { found, whole } = compared(
    without,
    lpv,
    weighing(() => 1),
    1200,
  );
  expect(whole.complete).toBe(true);
  const [first, ...opened] = found?.moves.map(({ action }) => action.job) ?? [];
  expect([first, ...opened.sort()]).toEqual(['fit-antenna', 'controls-check', 'release-entry']);
  expect(whole.paths[0]?.cost).toBe(3);
});

/** Everything that somebody could begin with: what all failing results name, at any minute of the flight, and a unit for each lost use. */
function everyMove(state: State, flight: FlightConditions, { jobs: hours }: LabourTable): readonly Move<Action>[] {
  const system = supposing(systemOf(state.dossier, trainerCatalogue), state.supposed);
  const at = instantOf(minutesOf(asked.instant) + state.steps);
  const situation = { dossier: state.dossier, catalogue: trainerCatalogue, facts: system.facts, at, flight };
  const view = viewOf(system, asked);
  const looks = [asked.instant, ...view.between(asked.instant, asked.to)].map((instant) =>
    view.at(instant, asked.hoursAhead, flight),
  );
  const named = looks.flatMap((snapshot) => [
    ...system.statements.flatMap((statement, index) =>
      fails(snapshot, index)
        ? [
            ...statement.remedies.flatMap((remedy) => actionsFor(remedy, situation)),
            findOutAction(
              statement.key,
              missingPaths(statement.clause).filter((path) => !state.supposed.has(path)),
            ),
          ]
        : [],
    ),
    ...capabilities
      .filter((each) => snapshot.capability(each) !== 'met')
      .flatMap((each) => fittingsFor(each, situation)),
  ]);
  return [...new Map([...named, readMeters(situation)].map((each) => [each.id, each])).values()]
    .filter((each) => each.changes.length + each.supposes.length > 0)
    .flatMap((action) => {
      const done = state.deeds.some((each) => each.id === action.id);
      if (done && action.change !== 'record.add') return [];
      return [{ id: action.id, action, cost: done ? 0 : hours[action.job].typical }];
    });
}
