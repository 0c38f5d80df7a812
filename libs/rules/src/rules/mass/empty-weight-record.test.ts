import { approvalOf, unitOf } from '../../../testing/builders.js';
import { afterRemovals, dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { Mass, MassChange } from '../../dossier/installation.js';
import { emptyWeightRecord } from './empty-weight-record.js';

const at = '2026-03-02T14:00Z';
const change = (weightLb: number, armIn: number | null = 40, on = '2025-06-01'): MassChange => ({
  what: 'Something',
  weightLb,
  armIn,
  on,
  listed: true,
});
const record = (part: Partial<Mass>): Mass => ({
  emptyWeightLb: 1500,
  emptyArmIn: 40,
  revisedOn: '2024-02-01',
  weighed: true,
  macIn: 60,
  envelope: null,
  equipmentListRevisedOn: '2024-02-01',
  changesSince: [],
  ...part,
});
const aircraft = (
  part: Partial<Mass>,
  units: ReturnType<typeof unitOf>[] = [],
  kind: Dossier['configuration']['aircraft']['kind'] = 'airplane',
) => dossierOf({ configuration: { aircraft: { kind }, mass: record(part), units } });
const range: Mass['envelope'] = {
  points: [
    { weightLb: 1800, forwardIn: 96, aftIn: 105 },
    { weightLb: 2000, forwardIn: 95, aftIn: 105 },
  ],
  stations: [],
  leadingEdgeIn: null,
  document: { title: 'Flight manual', revision: null, date: null },
};
const fitted = (on: string | null, part: Partial<Parameters<typeof unitOf>[0]> = {}) =>
  unitOf({ id: 'gps1', functions: ['gnss'], fitted: on === null ? null : { date: on, at: null }, ...part });

const removed = (on: string, ids: readonly string[], changesSince: readonly MassChange[] = [], because?: string) =>
  dossierOf(
    { configuration: { aircraft: { kind: 'airplane' }, mass: record({ changesSince }) } },
    afterRemovals(on, ids, because),
  );
const swapped = (changesSince: readonly MassChange[]) =>
  dossierOf(
    { configuration: { mass: record({ changesSince }), units: [fitted('2025-06-01')] } },
    afterRemovals('2025-06-01', ['gps0']),
  );

// AC 43.13-1B 10-2c: at most 1 lb below 5,000 lb, 2 lb up to 50,000 lb; less than 0.05 % of the mean chord (60 in: 0.03 in).
testRule(emptyWeightRecord, [
  { name: 'no record', dossier: dossierOf(), at, expect: 'cannot-tell', message: 'unrecorded' },
  { name: 'no change since', dossier: aircraft({}), at, expect: 'met', message: 'negligible' },
  { name: 'a hundredth below 1 lb', dossier: aircraft({ changesSince: [change(0.99)] }), at, expect: 'met' },
  {
    name: '1 lb',
    dossier: aircraft({ changesSince: [change(1)] }),
    at,
    expect: 'met',
    data: { weightLb: 1, shiftIn: 0 },
  },
  {
    name: 'a hundredth above 1 lb',
    dossier: aircraft({ changesSince: [change(1.01)] }),
    at,
    expect: 'not-met',
    message: 'revise',
  },
  { name: '1.01 lb taken out', dossier: aircraft({ changesSince: [change(-1.01)] }), at, expect: 'not-met' },
  {
    name: 'two changes, each of them negligible, are not together',
    dossier: aircraft({ changesSince: [change(0.6), change(0.6, 40, '2025-07-01')] }),
    at,
    expect: 'not-met',
  },
  { name: 'a swap of equal weight', dossier: aircraft({ changesSince: [change(-5), change(5.4)] }), at, expect: 'met' },
  {
    name: '4,999 lb: still 1 lb',
    dossier: aircraft({ emptyWeightLb: 4999, changesSince: [change(1.5)] }),
    at,
    expect: 'not-met',
  },
  { name: '5,000 lb: 2 lb', dossier: aircraft({ emptyWeightLb: 5000, changesSince: [change(2)] }), at, expect: 'met' },
  {
    name: '5,000 lb: above 2 lb',
    dossier: aircraft({ emptyWeightLb: 5000, changesSince: [change(2.01)] }),
    at,
    expect: 'not-met',
  },
  // 1 lb at 84 in moves the centre of 1,500 lb at 40 in by 44/1501 = 0.029 in; at 85 in by 45/1501 = 0.030 in.
  {
    name: 'shift below 0.03 in',
    dossier: aircraft({ changesSince: [change(1, 84)] }),
    at,
    expect: 'met',
    data: { shiftIn: 0.029 },
  },
  {
    name: 'shift of 0.03 in is not less than 0.03 in',
    dossier: aircraft({ changesSince: [change(1, 85)] }),
    at,
    expect: 'not-met',
    data: { shiftIn: 0.03 },
  },
  {
    name: 'a swap that moves the centre',
    dossier: aircraft({ changesSince: [change(-5, 30), change(5, 60)] }),
    at,
    expect: 'not-met',
  },
  {
    name: 'chord unknown',
    dossier: aircraft({ macIn: null, changesSince: [change(0.5)] }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'chord unknown, weight too much by itself',
    dossier: aircraft({ macIn: null, changesSince: [change(3)] }),
    at,
    expect: 'not-met',
  },
  { name: 'arm unknown', dossier: aircraft({ changesSince: [change(0.5, null)] }), at, expect: 'cannot-tell' },
  {
    name: 'an arm that no aircraft has',
    dossier: aircraft({ changesSince: [change(0.5, 99_999)] }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'a weight that no aircraft has', dossier: aircraft({ emptyWeightLb: 0.5 }), at, expect: 'cannot-tell' },
  {
    name: 'helicopter: its range is not recorded',
    dossier: aircraft({ changesSince: [change(0.5)] }, [], 'helicopter'),
    at,
    expect: 'cannot-tell',
  },
  // 0.2 % of a range of 10 in: 0.02 in. 0.5 lb at 97 in moves 1,500 lb at 40 in by 28.5/1500.5 = 0.019 in, at 100 in by 0.020 in.
  {
    name: 'helicopter: shift below 0.2 % of its range',
    dossier: aircraft({ envelope: range, changesSince: [change(0.5, 97)] }, [], 'helicopter'),
    at,
    expect: 'met',
    data: { shiftIn: 0.019 },
  },
  {
    name: 'helicopter: shift of 0.2 % is not less than that',
    dossier: aircraft({ envelope: range, changesSince: [change(0.5, 100)] }, [], 'helicopter'),
    at,
    expect: 'not-met',
    data: { shiftIn: 0.02 },
  },
  {
    name: 'helicopter: the arm of a change is not recorded, its range is',
    dossier: aircraft({ envelope: range, changesSince: [change(0.5, null)] }, [], 'helicopter'),
    at,
    expect: 'cannot-tell',
  },
  { name: 'unit fitted on the day of the revision', dossier: aircraft({}, [fitted('2024-02-01')]), at, expect: 'met' },
  {
    name: 'unit fitted the day after, its weight nowhere',
    dossier: aircraft({}, [fitted('2024-02-02')]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'unit fitted later, its weight among the changes of that day',
    dossier: aircraft({ changesSince: [change(0.5, 40, '2025-06-01')] }, [fitted('2025-06-01')]),
    at,
    expect: 'met',
  },
  { name: 'unit fitted nobody knows when', dossier: aircraft({}, [fitted(null)]), at, expect: 'cannot-tell' },
  {
    name: 'unit known by its release alone',
    dossier: aircraft({}, [fitted(null, { approval: approvalOf({ releasedOn: '2023-05-05' }) })]),
    at,
    expect: 'met',
  },
  {
    name: 'a portable unit is no part of the empty weight',
    dossier: aircraft({}, [fitted('2025-06-01', { functions: ['gnss', 'portable-display'] })]),
    at,
    expect: 'met',
  },
  {
    name: 'unit fitted later, a change of another day does not answer for it',
    dossier: aircraft({ changesSince: [change(0.5, 40, '2025-06-02')] }, [fitted('2025-06-01')]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'two units of one day, one change: it speaks of one of them',
    dossier: aircraft({ changesSince: [change(0.5)] }, [fitted('2025-06-01'), fitted('2025-06-01', { id: 'gps2' })]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'two units of one day, a change for each',
    dossier: aircraft({ changesSince: [change(0.5), change(0.2)] }, [
      fitted('2025-06-01'),
      fitted('2025-06-01', { id: 'gps2' }),
    ]),
    at,
    expect: 'met',
  },
  {
    name: 'a change that takes weight out does not speak of a unit that went in',
    dossier: aircraft({ changesSince: [change(-0.5)] }, [fitted('2025-06-01')]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit taken out, its weight nowhere',
    dossier: removed('2025-06-01', ['gps1']),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'a unit taken out, its weight among the changes',
    dossier: removed('2025-06-01', ['gps1'], [change(-0.5)]),
    at,
    expect: 'met',
  },
  {
    name: 'two units taken out, one change: it speaks of one of them',
    dossier: removed('2025-06-01', ['gps1', 'gps2'], [change(-0.5)]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit taken out, a change that adds weight does not speak of it',
    dossier: removed('2025-06-01', ['gps1'], [change(0.5)]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit taken out on the day of the revision: it was weighed without it',
    dossier: removed('2024-02-01', ['gps1']),
    at,
    expect: 'met',
  },
  {
    name: 'a unit taken out the day after the revision',
    dossier: removed('2024-02-02', ['gps1']),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit taken out nobody knows when, other work on the aircraft since the revision',
    dossier: removed('2025-06-01', ['gps1'], [], 'work.done'),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit taken out, a change of a day after all work does not speak of it',
    dossier: removed('2025-06-01', ['gps1'], [change(-0.5, 40, '2025-06-02')]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit taken out, a change of the day before the revision does not speak of it',
    dossier: removed('2025-06-01', ['gps1'], [change(-0.5, 40, '2024-01-31')]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a swap: each way its change, whatever the one that went in weighs',
    dossier: swapped([change(-0.5), change(0)]),
    at,
    expect: 'met',
  },
  { name: 'a swap with one change for both', dossier: swapped([change(0)]), at, expect: 'cannot-tell' },
  { name: 'the least weight that is believed', dossier: aircraft({ emptyWeightLb: 1 }), at, expect: 'met' },
  {
    name: 'the least weight that is believed, moved at its place',
    dossier: aircraft({ emptyWeightLb: 1, emptyArmIn: 40, changesSince: [change(0, 40)] }),
    at,
    expect: 'met',
    data: { shiftIn: 0 },
  },
  { name: 'the greatest weight that is believed', dossier: aircraft({ emptyWeightLb: 1_000_000 }), at, expect: 'met' },
  {
    name: 'heavier than any aircraft',
    dossier: aircraft({ emptyWeightLb: 1_000_001 }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'the farthest arm that is believed',
    dossier: aircraft({ emptyArmIn: 10_000, changesSince: [change(0.5, 10_000)] }),
    at,
    expect: 'met',
    data: { shiftIn: 0 },
  },
  {
    name: 'glider: by its chord, as an airplane',
    dossier: aircraft({ changesSince: [change(1, 84)] }, [], 'glider'),
    at,
    expect: 'met',
  },
  {
    name: 'balloon: the circular has no figure, whatever its limits',
    dossier: aircraft({ envelope: range, changesSince: [change(0.5, 40)] }, [], 'balloon'),
    at,
    expect: 'cannot-tell',
  },
]);
