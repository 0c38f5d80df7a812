import { describe, expect, it } from 'vitest';
import { busy, ifr, ils, lpv, vfr } from '../../testing/flights.js';
import { lostFlights, old, vfrOnly } from '../../testing/lost-flights.js';
import { entries, goodDay, trainer, trainerCatalogue, trainerRecords, trainerTypes } from '../../testing/trainer.js';
import { assess, widenMoment } from '../assess/assess.js';
import { systemOf } from '../assess/system.js';
import { admit, apply } from '../changes/changes.js';
import type { Dossier } from '../dossier/dossier.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import type { Action } from './action.js';
import { actionsFor } from './actions.js';
import { cheapest } from './cheapest.js';
import type { LabourTable } from './labour.js';
import { defaultLabour } from './labour.js';
import { problemOf, wayBack } from './way-back.js';

const moment = { instant: goodDay, hours: 1 };

const ask = (dossier: Dossier, flight: Partial<FlightConditions>, labour?: LabourTable) =>
  wayBack(dossier, trainerCatalogue, moment, flight, labour);
const steps = (dossier: Dossier, flight: Partial<FlightConditions>, at = 0) =>
  ask(dossier, flight).ways[at]?.steps.map((each) => [each.job, ...each.subjects].join(' '));

const base = trainer();

describe.each(lostFlights)('%s', (_, dossier, flight, expected) => {
  const found = ask(dossier, flight);

  it('is a no or a cannot-tell, and the cheapest way is the one a shop would name', () => {
    expect(found.now).not.toBe('yes');
    expect([...(steps(dossier, flight) ?? [])].sort()).toEqual([...expected].sort());
    expect(found.complete).toBe(true);
  });

  it('ends in a yes by a full assessment of the changes recorded one by one, each of them admitted', () => {
    for (const path of pathsOf(dossier, flight)) {
      let after = dossier;
      for (const change of path.flatMap((each) => each.changes)) {
        expect(admit(after, trainerCatalogue, change, null)).toEqual([]);
        after = apply(after, change);
      }
      if (path.every((each) => each.supposes.length === 0))
        expect(assess(after, trainerCatalogue, moment, flight).operations['flight']?.ready).toBe('yes');
    }
  });
});

function pathsOf(dossier: Dossier, flight: Partial<FlightConditions>): readonly (readonly Action[])[] {
  const problem = problemOf(dossier, trainerCatalogue, widenMoment(moment), widenConditions(flight));
  return cheapest(problem, { states: 500, paths: 3 }).paths.map((each) => each.state.deeds);
}

it('has nothing to do where the answer is yes', () => {
  expect(ask(base, lpv)).toEqual({ now: 'yes', ways: [], complete: true, looked: 1 });
});

it('finds no way where the certificate forbids it', () => {
  const experimental = trainer({
    configuration: {
      aircraft: { certificate: 'experimental' },
      authority: { ...base.configuration.authority, ifr: false, conditionInspectionMonths: 12 },
    },
  });
  expect(ask(experimental, ifr)).toMatchObject({ now: 'no', ways: [], complete: true });
});

it('counts what an action opens: a navigator that is fitted must be checked, joined and released, its directives looked up', () => {
  const without = trainer({
    configuration: {
      units: base.configuration.units.filter((unit) => unit.id !== 'gps1'),
      links: base.configuration.links.filter((link) => link.fromUnit !== 'gps1'),
      supplements: [],
      antennas: base.configuration.antennas.filter((each) => each.id !== 'a-gps'),
    },
    status: { loads: [] },
  });
  const found = steps(without, lpv);
  expect(found?.[0]).toBe('fit-navigator nx5');
  expect([...(found ?? [])].sort()).toEqual([
    'controls-check',
    'find-out directives|unit:new-navigator',
    'fit-navigator nx5',
    'gnss-function-check new-navigator',
    'join-ports new-navigator',
    'release-entry new-navigator',
    'vhf-interference-check new-navigator',
  ]);
});

it('makes a test once, after the work that would undo it', () => {
  const removed = trainer(
    {
      configuration: {
        units: base.configuration.units.filter((unit) => unit.id !== 'xpdr1'),
        links: base.configuration.links.filter((link) => link.toUnit !== 'xpdr1'),
      },
    },
    entries({ without: ['reporting'], and: [old('reporting')] }),
  );
  const found = steps(removed, busy) ?? [];
  const at = (job: string) => found.findIndex((each) => each.startsWith(job));
  expect(at('fit-transponder')).toBeGreaterThanOrEqual(0);
  expect(new Set(found).size).toBe(found.length);
  expect(at('altitude-correspondence-test')).toBeGreaterThan(at('fit-transponder'));
});

it('says what a way costs elsewhere: a navigator that sends no position ends the use of ADS-B Out', () => {
  const silent = {
    ...trainerTypes.navigator,
    id: 'nx6',
    family: 'nx6',
    ports: trainerTypes.navigator.ports.filter((port) => port.signal !== 'position'),
  };
  const catalogue = { version: 'test', types: { ...trainerCatalogue.types, nx6: silent } };
  const dear = {
    hourly: null,
    jobs: {
      ...defaultLabour.jobs,
      'approve-installation': { ...defaultLabour.jobs['approve-installation'], typical: 90 },
    },
  };
  const [way] = wayBack(vfrOnly, catalogue, moment, lpv, dear).ways;
  expect(way?.steps[0]).toMatchObject({ job: 'replace-navigator', subjects: ['nx6', 'gps1'] });
  expect(way?.loses).toEqual(['ads-b-out']);
});

it('asks for what is missing, and says that it takes it to turn out well', () => {
  const unsigned = trainer(entries({ without: ['annual'], and: [{ ...trainerRecords.annual, agency: null }] }));
  const way = ask(unsigned, vfr).ways[0];
  expect(way?.steps).toEqual([
    expect.objectContaining({
      job: 'find-out',
      change: null,
      facts: [`status.records.${trainerRecords.annual.id}.agency`],
      assumes: ['turns-out-well'],
    }),
  ]);
  expect(way?.then.ready).toBe('yes');
});

it('finds out about a joint that nobody recorded, or makes it; one that is none can only be made', () => {
  const unwired = { configuration: { links: base.configuration.links.filter((each) => each.fromPort !== 'P1-VERT') } };
  const unstated = { status: { completeness: base.status.completeness.filter((each) => each.list !== 'links') } };
  const first = (dossier: Dossier) => ask(dossier, lpv).ways.map(({ steps: [step] }) => [step?.job, step?.facts]);
  const made = expect.arrayContaining([['join-ports', []]]) as unknown;
  expect(first(trainer(unwired, unstated))[0]).toEqual(['find-out', ['status.completeness.links']]);
  expect(first(trainer(unwired, unstated))).toEqual(made);
  expect(first(trainer(unwired))).toEqual(made);
  expect(first(trainer(unwired)).map(([job]) => job)).not.toContain('find-out');
});

it('says how long it lasts and what its hours rest on', () => {
  const way = ask(trainer({ status: { loads: [] } }), lpv).ways[0];
  // 2026-03-16 is in the cycle that ends on 2026-03-19 at 0901 UTC.
  expect(way?.then.changesAt).toBe('2026-03-19T09:01Z');
  expect(way).toMatchObject({
    hours: { low: 0.2, typical: 0.4, high: 1 },
    money: null,
    hoursRestOn: 'common-practice',
  });
});

it('goes by the price where the house has set one', () => {
  const lapsed = trainer(
    entries({
      without: ['transponder', 'reporting'],
      and: [old('transponder'), old('reporting')],
    }),
  );
  const dear = {
    hourly: 100,
    jobs: { ...defaultLabour.jobs, 'transponder-test': { ...defaultLabour.jobs['transponder-test'], parts: 900 } },
  };
  expect([...(steps(lapsed, busy) ?? [])].sort()).toEqual(['altitude-reporting-test enc1', 'transponder-test xpdr1']);
  expect(ask(lapsed, busy, dear).ways[0]).toMatchObject({
    steps: [{ job: 'altitude-suite' }],
    money: { low: 200, typical: 300, high: 400 },
  });
});

it('gives other ways after the cheapest', () => {
  const lapsed = trainer(entries({ without: ['transponder'], and: [old('transponder')] }));
  const found = ask(lapsed, ils);
  expect(found.ways.length).toBeGreaterThan(1);
  expect(found.ways.map((each) => each.hours.typical)).toEqual(
    found.ways.map((each) => each.hours.typical).sort((a, b) => a - b),
  );
});

describe('a revision of the weight record', () => {
  const of = (armIn: number | null) =>
    trainer({
      configuration: {
        mass: {
          emptyWeightLb: 1400,
          emptyArmIn: 38,
          revisedOn: '2024-02-01',
          weighed: true,
          macIn: null,
          equipmentListRevisedOn: null,
          changesSince: [{ what: 'Navigator', weightLb: 5, armIn, on: '2026-01-01', listed: true }],
        },
      },
    });
  const revised = (dossier: Dossier) => {
    const situation = {
      dossier,
      catalogue: trainerCatalogue,
      facts: systemOf(dossier, trainerCatalogue).facts,
      at: goodDay,
      flight: widenConditions(vfr),
    };
    const [action] = actionsFor({ kind: 'do', change: 'mass.revise', subject: 'aircraft', facts: [] }, situation);
    return {
      job: action?.job,
      assumes: action?.assumes,
      mass: action?.changes.reduce(apply, dossier).configuration.mass,
    };
  };

  it('takes the changes in where each has its arm', () => {
    const { job, assumes, mass } = revised(of(12));
    expect([job, assumes]).toEqual(['revise-weight-record', []]);
    // (1400 x 38 + 5 x 12) / 1405
    expect(mass).toMatchObject({ emptyWeightLb: 1405, emptyArmIn: 37.907, weighed: false, changesSince: [] });
  });

  it('is a weighing where one has none: nobody knows what the scales will show, and it is taken to be as before', () => {
    expect(revised(of(null))).toMatchObject({
      job: 'weigh',
      assumes: ['turns-out-well'],
      mass: { emptyWeightLb: 1400, emptyArmIn: 38, weighed: true, changesSince: [] },
    });
  });

  it('is a weighing where a unit went in since and its weight is nowhere', () => {
    const dossier = of(12);
    const units = dossier.configuration.units.map((each) =>
      each.id === 'gps1' ? { ...each, fitted: { date: '2025-06-01', at: null } } : each,
    );
    const fitted = { ...dossier, configuration: { ...dossier.configuration, units } };
    expect(revised(fitted)).toMatchObject({ job: 'weigh', assumes: ['turns-out-well'] });
  });
});
