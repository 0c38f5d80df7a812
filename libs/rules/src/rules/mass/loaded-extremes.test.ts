import { unitOf } from '../../../testing/builders.js';
import { afterRemovals, dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Envelope, Mass, Placard, Station } from '../../dossier/installation.js';
import { loadedExtremes } from './loaded-extremes.js';

const at = '2026-03-02T14:00Z';
const station = (name: string, armIn: number, leastLb: number, mostLb = leastLb): Station => ({
  name,
  armIn,
  leastLb,
  mostLb,
});
/** The aircraft of AC 43.13-1B chapter 10: 1169 lb at +10.6 in, 2100 lb at most, +8.5 to +21.9 in. */
const stations = [
  station('Oil', -49, 17),
  station('Front seats', 16, 170, 340),
  station('Fuel', 22, 83, 240),
  station('Rear seats', 48, 0, 340),
  station('Baggage', 75.5, 0, 100),
];
const limits = (forwardIn: number, aftIn: number): Envelope['points'] => [
  { weightLb: 1200, forwardIn, aftIn },
  { weightLb: 2100, forwardIn, aftIn },
];
const envelope = (part: Partial<Envelope> = {}): Envelope => ({
  points: limits(8.5, 21.9),
  stations,
  leadingEdgeIn: 0,
  document: { title: 'Flight manual', revision: null, date: null },
  ...part,
});
const aircraft = (part: Partial<Mass>, placards: readonly Placard[] = []) =>
  dossierOf({
    configuration: {
      placards,
      mass: {
        emptyWeightLb: 1169,
        emptyArmIn: 10.6,
        revisedOn: '2024-02-01',
        weighed: true,
        macIn: 50,
        envelope: envelope(),
        equipmentListRevisedOn: null,
        changesSince: [],
        ...part,
      },
    },
  });
const within = (points: Envelope['points']) => aircraft({ envelope: envelope({ points }) });
const placard = (inView: boolean | null): Placard => ({
  id: 'p1',
  kind: 'loading',
  unitId: null,
  inView,
  text: 'Baggage 40 lb',
});
const radio = (armIn: number | null, weightLb = 20) => ({
  what: 'Radio',
  weightLb,
  armIn,
  on: '2025-05-05',
  listed: true,
});

/** 2000 lb at 37.5 in with 400 lb of fuel at 48 in: 39.25 in when it is full, 38.455 in when it is half full. */
const fuelled = (midIn: number) =>
  aircraft({
    emptyWeightLb: 2000,
    emptyArmIn: 37.5,
    envelope: envelope({
      points: [
        { weightLb: 2000, forwardIn: 36, aftIn: 46 },
        { weightLb: 2200, forwardIn: midIn, aftIn: 46 },
        { weightLb: 2400, forwardIn: 39, aftIn: 46 },
      ],
      stations: [station('Fuel', 48, 0, 400)],
    }),
  });
const fitted = (on: string | null, changesSince: Mass['changesSince'] = []) =>
  dossierOf(aircraft({ changesSince }), {
    configuration: {
      units: [
        unitOf({ id: 'gps1', functions: ['gnss'], massLb: 40, fitted: on === null ? null : { date: on, at: null } }),
      ],
    },
  });

// Figures 10-10 and 10-11: 1439 lb at 11.191 in and 2036 lb at 21.330 in.
testRule(loadedExtremes, [
  {
    name: 'the aircraft of the circular',
    dossier: aircraft({}),
    at,
    expect: 'met',
    message: 'within-chord',
    data: { forwardIn: 11.191, aftIn: 21.33, forwardPercent: 22.38, aftPercent: 42.66 },
  },
  { name: 'forward limit at the extreme', dossier: within(limits(11.191, 21.9)), at, expect: 'met' },
  {
    name: 'forward limit just behind it',
    dossier: within(limits(11.192, 21.9)),
    at,
    expect: 'not-met',
    message: 'beyond',
  },
  { name: 'aft limit at the extreme', dossier: within(limits(8.5, 21.33)), at, expect: 'met' },
  { name: 'aft limit just ahead of it', dossier: within(limits(8.5, 21.329)), at, expect: 'not-met' },
  {
    name: 'a forward limit that moves aft with weight',
    dossier: within([
      { weightLb: 1439, forwardIn: 11, aftIn: 21.9 },
      { weightLb: 1609, forwardIn: 11.699, aftIn: 21.9 },
      { weightLb: 2100, forwardIn: 11.699, aftIn: 21.9 },
    ]),
    at,
    expect: 'met',
  },
  {
    name: 'one that moves aft sooner: beyond it with both front seats taken',
    dossier: within([
      { weightLb: 1439, forwardIn: 11, aftIn: 21.9 },
      { weightLb: 1609, forwardIn: 11.7, aftIn: 21.9 },
      { weightLb: 2100, forwardIn: 11.7, aftIn: 21.9 },
    ]),
    at,
    expect: 'not-met',
  },
  {
    name: 'too heavy with what is always aboard',
    dossier: within([{ weightLb: 1400, forwardIn: 8.5, aftIn: 21.9 }]),
    at,
    expect: 'not-met',
  },
  {
    name: 'beyond the limit, with a loading placard in view',
    dossier: aircraft({ envelope: envelope({ points: limits(8.5, 20) }) }, [placard(true)]),
    at,
    expect: 'met',
  },
  {
    name: 'beyond the limit, its placard out of view',
    dossier: aircraft({ envelope: envelope({ points: limits(8.5, 20) }) }, [placard(false)]),
    at,
    expect: 'not-met',
  },
  {
    name: 'beyond the limit, placard not looked for',
    dossier: aircraft({ envelope: envelope({ points: limits(8.5, 20) }) }, [placard(null)]),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'a change since, far aft', dossier: aircraft({ changesSince: [radio(120)] }), at, expect: 'not-met' },
  { name: 'a change since, at the centre', dossier: aircraft({ changesSince: [radio(10.6)] }), at, expect: 'met' },
  {
    name: 'arm of a change not recorded',
    dossier: aircraft({ changesSince: [radio(null)] }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'chord not recorded',
    dossier: aircraft({ macIn: null }),
    at,
    expect: 'met',
    message: 'within',
    data: { forwardPercent: null },
  },
  { name: 'limits not recorded', dossier: aircraft({ envelope: null }), at, expect: 'cannot-tell' },
  {
    name: 'stations not recorded',
    dossier: aircraft({ envelope: envelope({ stations: [] }) }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'an arm that no aircraft has', dossier: aircraft({ emptyArmIn: 99_999 }), at, expect: 'cannot-tell' },
  { name: 'limits the wrong way round', dossier: within(limits(21.9, 8.5)), at, expect: 'cannot-tell' },
  {
    name: 'more removed than there was',
    dossier: aircraft({ changesSince: [radio(10, -1169)] }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'no empty-weight record', dossier: dossierOf(), at, expect: 'none' },
  {
    name: 'beyond the limit, a placard in view that says something else',
    dossier: aircraft({ envelope: envelope({ points: limits(8.5, 20) }) }, [
      { ...placard(true), kind: 'gnss-vfr-only' },
    ]),
    at,
    expect: 'not-met',
  },
  {
    name: 'limits the wrong way round at one weight',
    dossier: within([
      { weightLb: 1200, forwardIn: 21.9, aftIn: 8.5 },
      { weightLb: 2100, forwardIn: 8.5, aftIn: 21.9 },
    ]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'limits for a weight that no aircraft has',
    dossier: within([...limits(8.5, 21.9), { weightLb: 1_000_001, forwardIn: 8.5, aftIn: 21.9 }]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'one limit for both ways leaves no room',
    dossier: within([
      { weightLb: 1200, forwardIn: 15, aftIn: 15 },
      { weightLb: 2100, forwardIn: 15, aftIn: 15 },
    ]),
    at,
    expect: 'not-met',
  },
  {
    name: 'a station that takes less at most than at least',
    dossier: aircraft({ envelope: envelope({ stations: [...stations, station('Wing', 20, 30, 20)] }) }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a station where no aircraft has one',
    dossier: aircraft({ envelope: envelope({ stations: [...stations, station('Wing', 10_001, 0, 20)] }) }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a chord that no aircraft has',
    dossier: aircraft({ macIn: 10_001 }),
    at,
    expect: 'met',
    message: 'within',
    data: { forwardPercent: null },
  },
  {
    // 11.191 in and 21.330 in, from 5 in on a chord of 50 in.
    name: 'a leading edge aft of the datum',
    dossier: aircraft({ envelope: envelope({ leadingEdgeIn: 5 }) }),
    at,
    expect: 'met',
    message: 'within-chord',
    data: { forwardPercent: 12.38, aftPercent: 32.66 },
  },
  {
    name: 'a change of a weight that no aircraft has',
    dossier: aircraft({ changesSince: [radio(10.6, 1_000_001)] }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a leading edge where no aircraft has it',
    dossier: aircraft({ envelope: envelope({ leadingEdgeIn: -10_001 }) }),
    at,
    expect: 'met',
    message: 'within',
    data: { forwardPercent: null },
  },
  {
    name: 'one arm of two not recorded',
    dossier: aircraft({ changesSince: [radio(10.6), radio(null)] }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'half the fuel on the forward limit of its weight', dossier: fuelled(38.455), at, expect: 'met' },
  {
    name: 'half the fuel ahead of the forward limit of its weight, none and all of it behind',
    dossier: fuelled(38.456),
    at,
    expect: 'not-met',
    message: 'beyond',
    data: { forwardIn: 38.455 },
  },
  {
    name: 'half the fuel far ahead of the forward limit of its weight',
    dossier: fuelled(39),
    at,
    expect: 'not-met',
    data: { forwardIn: 38.455 },
  },
  { name: 'a unit fitted on the day of the revision', dossier: fitted('2024-02-01'), at, expect: 'met' },
  {
    name: 'a unit of 40 lb fitted the day after, its weight nowhere',
    dossier: fitted('2024-02-02'),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'a unit fitted nobody knows when', dossier: fitted(null), at, expect: 'cannot-tell' },
  {
    name: 'a unit fitted later, its weight among the changes',
    dossier: fitted('2025-05-05', [radio(10.6)]),
    at,
    expect: 'met',
  },
  {
    name: 'a unit of unknown weight, a placard in view: what it says was worked out without it',
    dossier: dossierOf(fitted('2024-02-02'), { configuration: { placards: [placard(true)] } }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit taken out since the revision, its weight nowhere',
    dossier: dossierOf(aircraft({}), afterRemovals('2025-05-05', ['gps1'])),
    at,
    expect: 'cannot-tell',
  },
]);
