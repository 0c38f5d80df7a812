import { expect, it } from 'vitest';
import { unitOf } from '../../testing/builders.js';
import { afterRemovals, dossierOf } from '../../testing/dossiers.js';
import type { MassChange } from '../dossier/installation.js';
import { factsOf } from '../graph/facts.js';
import { countRemedies, mayLackRemoval, uncounted, unitsNoted } from './mass-notes.js';

const change = (weightLb: number, on = '2025-06-01'): MassChange => ({
  what: 'Something',
  weightLb,
  armIn: 40,
  on,
  listed: true,
});

/** Units by the days on which they went in; units taken out, the last of them on a day. */
function aircraft(
  changesSince: readonly MassChange[],
  days: readonly (string | null)[] = [],
  takenOut: readonly string[] = [],
  last = '2025-06-01',
) {
  const mass = {
    emptyWeightLb: 1500,
    emptyArmIn: 40,
    revisedOn: '2024-02-01',
    weighed: true,
    macIn: 60,
    envelope: null,
    equipmentListRevisedOn: null,
    changesSince,
  };
  const units = days.map((date, index) =>
    unitOf({ id: `u${index}`, functions: ['gnss'], fitted: date === null ? null : { date, at: null } }),
  );
  const gone = takenOut.length === 0 ? {} : afterRemovals(last, takenOut);
  const facts = factsOf(dossierOf({ configuration: { mass, units } }, gone), { version: 'none', types: {} });
  return [facts, mass] as const;
}

it('gives each unit one change of its day, and each change to one unit', () => {
  const day = '2025-06-01';
  const noted = (...changes: readonly MassChange[]) =>
    unitsNoted(...aircraft(changes, [day, day, '2025-06-02', null])).map((each) => each.noted);
  expect(noted()).toEqual([false, false, false, false]);
  expect(noted(change(1))).toEqual([true, false, false, false]);
  expect(noted(change(1), change(0), change(2, '2025-06-02'))).toEqual([true, true, true, false]);
  expect(noted(change(-0.01), change(0.01, '2025-06-03'))).toEqual([false, false, false, false]);
});

it('leaves a change of no weight to what came out where another speaks of what went in', () => {
  const swap = (...changes: readonly MassChange[]) =>
    mayLackRemoval(...aircraft(changes, ['2025-06-01'], ['out']), '2024-02-01');
  expect(swap(change(0), change(0.5))).toBe(false);
  expect(swap(change(0.5), change(0))).toBe(false);
  expect(swap(change(0))).toBe(true);
});

it('asks for nothing where nothing was taken out, or all of it before the day in question', () => {
  const lacks = (since: string | null, takenOut: readonly string[] = ['out']) =>
    mayLackRemoval(...aircraft([], [], takenOut), since);
  expect([lacks('2025-05-31'), lacks('2025-06-01'), lacks('2025-06-02'), lacks(null)]).toEqual([
    true,
    false,
    false,
    true,
  ]);
  expect([lacks('2025-05-31', []), lacks(null, [])]).toEqual([false, false]);
});

it('takes nothing to be long ago where the last work on the aircraft is not known', () => {
  const [facts, mass] = aircraft([], [], ['out']);
  const { dossier } = facts;
  const unowed = { ...facts, dossier: { ...dossier, status: { ...dossier.status, obligations: [] } } };
  expect(mayLackRemoval(unowed, mass, '2026-01-01')).toBe(true);
  expect(mayLackRemoval(unowed, { ...mass, changesSince: [change(-1, '2026-01-01')] }, '2026-01-01')).toBe(false);
});

it('asks when the aircraft was last to be released, not when anything else was owed', () => {
  const [facts, mass] = aircraft([], [], ['out'], '2025-05-01');
  const { dossier } = facts;
  const [release] = dossier.status.obligations;
  const owed = (date: string) => ({
    ...facts,
    dossier: {
      ...dossier,
      status: {
        ...dossier.status,
        obligations: [{ ...release!, id: 'release-entry:u0', since: { date, at: null } }, release!],
      },
    },
  });
  expect(mayLackRemoval(owed('2025-04-01'), mass, '2025-04-15')).toBe(true);
  expect(mayLackRemoval(owed('2025-06-01'), mass, '2025-05-15')).toBe(false);
});

it('names what is to be found out, and where it is recorded', () => {
  const facts = uncounted(...aircraft([], ['2024-02-01', '2024-02-02', null], ['out']));
  expect(facts).toEqual([
    'configuration.units.u1.massLb',
    'configuration.units.u2.fitted',
    'configuration.mass.changesSince',
  ]);
  expect(countRemedies(facts)).toEqual([
    {
      kind: 'find-out',
      change: 'mass.note',
      subject: 'aircraft',
      facts: ['configuration.units.u1.massLb', 'configuration.mass.changesSince'],
    },
    { kind: 'find-out', change: 'unit.amend', subject: 'u2', facts: ['configuration.units.u2.fitted'] },
  ]);
  expect(countRemedies([])).toEqual([]);
});
