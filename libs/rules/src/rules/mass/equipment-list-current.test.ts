import { unitOf } from '../../../testing/builders.js';
import { afterRemovals, dossierOf } from '../../../testing/dossiers.js';
import type { RuleCase } from '../../../testing/rule-tester.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { MassChange } from '../../dossier/installation.js';
import { equipmentListCurrent } from './equipment-list-current.js';

const at = '2026-03-02T14:00Z';
const change = (listed: boolean | null, on = '2025-06-01'): MassChange => ({
  what: 'Emergency transmitter swapped',
  weightLb: 0,
  armIn: 90,
  on,
  listed,
});
const aircraft = (
  revisedOn: string | null,
  changesSince: readonly MassChange[],
  fittedOn: string | null | undefined = undefined,
  functions: readonly ('gnss' | 'portable-display')[] = ['gnss'],
) =>
  dossierOf({
    configuration: {
      units:
        fittedOn === undefined
          ? []
          : [
              unitOf({
                id: 'gps1',
                functions,
                fitted: fittedOn === null ? null : { date: fittedOn, at: null },
              }),
            ],
      mass: {
        emptyWeightLb: 1500,
        emptyArmIn: 40,
        revisedOn: '2024-02-01',
        weighed: true,
        macIn: 60,
        equipmentListRevisedOn: revisedOn,
        changesSince,
      },
    },
  });

const two = (revisedOn: string, changesSince: readonly MassChange[]) =>
  dossierOf(aircraft(revisedOn, changesSince), {
    configuration: {
      units: ['gps1', 'gps2'].map((id) =>
        unitOf({ id, functions: ['gnss'], fitted: { date: '2025-06-01', at: null } }),
      ),
    },
  });
const removed = (revisedOn: string | null, on: string, changesSince: readonly MassChange[] = []) =>
  dossierOf(aircraft(revisedOn, changesSince), afterRemovals(on, ['gps0']));

const cases: readonly RuleCase[] = [
  { name: 'no record', dossier: dossierOf(), at, expect: 'cannot-tell', message: 'unclear' },
  { name: 'no change since', dossier: aircraft('2024-02-01', []), at, expect: 'met', message: 'current' },
  {
    name: 'the list is older than the weight record',
    alone: true,
    dossier: aircraft('2024-01-31', []),
    at,
    expect: 'not-met',
    message: 'older',
  },
  { name: 'revision of the list not recorded', dossier: aircraft(null, []), at, expect: 'cannot-tell' },
  {
    name: 'a swap at equal weight that nobody listed',
    dossier: aircraft('2024-02-01', [change(false)]),
    at,
    expect: 'not-met',
    message: 'revise',
    data: { change: 'Emergency transmitter swapped' },
  },
  { name: 'the same swap, listed', dossier: aircraft('2024-02-01', [change(true)]), at, expect: 'met' },
  { name: 'whether listed not recorded', dossier: aircraft('2024-02-01', [change(null)]), at, expect: 'cannot-tell' },
  {
    name: 'list revised the day before the change',
    dossier: aircraft('2025-05-31', [change(false)]),
    at,
    expect: 'not-met',
  },
  {
    name: 'list revised on the day of the change',
    dossier: aircraft('2025-06-01', [change(false)]),
    at,
    expect: 'met',
  },
  {
    name: 'list revised the day after the change',
    dossier: aircraft('2025-06-02', [change(false)]),
    at,
    expect: 'met',
  },
  {
    name: 'unit fitted after the list, among no change',
    dossier: aircraft('2024-02-01', [], '2024-02-02'),
    at,
    expect: 'not-met',
    message: 'revise',
    data: { change: 'gps1' },
  },
  {
    name: 'unit fitted on the day of the list',
    dossier: aircraft('2024-02-01', [], '2024-02-01'),
    at,
    expect: 'met',
  },
  {
    name: 'unit fitted later, its change listed',
    dossier: aircraft('2024-02-01', [change(true)], '2025-06-01'),
    at,
    expect: 'met',
  },
  {
    name: 'unit fitted later, its change not listed',
    dossier: aircraft('2024-02-01', [change(false)], '2025-06-01'),
    at,
    expect: 'not-met',
  },
  { name: 'unit fitted nobody knows when', dossier: aircraft('2024-02-01', [], null), at, expect: 'cannot-tell' },
  {
    name: 'unit fitted later, a change of another day does not answer for it',
    dossier: aircraft('2024-02-01', [change(true, '2025-06-02')], '2025-06-01'),
    at,
    expect: 'not-met',
  },
  {
    name: 'two changes, the list revised after the first: the second is the one that is named',
    dossier: aircraft('2025-06-01', [change(false), { ...change(false, '2025-07-01'), what: 'Seat taken out' }]),
    at,
    expect: 'not-met',
    data: { change: 'Seat taken out' },
  },
  {
    name: 'a change of which nobody said whether it is listed, and one that is not: that is the one that is named',
    dossier: aircraft('2024-02-01', [change(null), { ...change(false, '2025-07-01'), what: 'Seat taken out' }]),
    at,
    expect: 'not-met',
    data: { change: 'Seat taken out' },
  },
  {
    name: 'a unit fitted nobody knows when, and one fitted after the list: that is the one that is named',
    dossier: dossierOf(aircraft('2024-02-01', [], null), {
      configuration: {
        units: [
          unitOf({ id: 'gps1', functions: ['gnss'] }),
          unitOf({ id: 'gps2', functions: ['gnss'], fitted: { date: '2024-02-02', at: null } }),
        ],
      },
    }),
    at,
    expect: 'not-met',
    data: { change: 'gps2' },
  },
  {
    name: 'two units of one day, one change: the other stands nowhere',
    dossier: two('2024-02-01', [change(true)]),
    at,
    expect: 'not-met',
  },
  {
    name: 'two units of one day, a listed change for each',
    dossier: two('2024-02-01', [change(true), { ...change(true), weightLb: 2 }]),
    at,
    expect: 'met',
  },
  {
    name: 'two units of one day, a change that takes weight out speaks of none of them',
    dossier: two('2024-02-01', [change(true), { ...change(true), weightLb: -2 }]),
    at,
    expect: 'not-met',
  },
  { name: 'two units of one day, the list revised that day', dossier: two('2025-06-01', []), at, expect: 'met' },
  {
    name: 'a unit taken out after the list was revised, among no change',
    dossier: removed('2024-02-01', '2024-02-02'),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'a unit taken out on the day on which the list was revised',
    dossier: removed('2024-02-02', '2024-02-02'),
    at,
    expect: 'met',
  },
  {
    name: 'a unit taken out, its change listed',
    dossier: removed('2024-02-01', '2025-06-01', [change(true)]),
    at,
    expect: 'met',
  },
  {
    name: 'a unit taken out, its change not listed',
    dossier: removed('2024-02-01', '2025-06-01', [change(false)]),
    at,
    expect: 'not-met',
  },
  {
    name: 'a unit taken out, nobody knows when the list was revised',
    dossier: removed(null, '2025-06-01', [change(true)]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a portable unit stands on no list',
    dossier: aircraft('2024-02-01', [], '2025-06-01', ['gnss', 'portable-display']),
    at,
    expect: 'met',
  },
];

testRule(equipmentListCurrent, cases, { namesEveryUnit: true });
