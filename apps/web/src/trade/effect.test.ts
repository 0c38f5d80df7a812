import { blankDossier, defaultConditions, replay, type Catalogue, type Change } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { alike, effectOf, judgeAll, type Profile } from './effect.js';

const catalogue: Catalogue = { version: 'none', types: {} };
const profiles: readonly Profile[] = [{ id: 'p', name: 'IFR lesson', conditions: defaultConditions }];
const now = '2026-11-25T12:00Z';
const aircraft = {
  kind: 'aircraft.add',
  version: 1,
  aircraft: { ...blankDossier('a').configuration.aircraft, registration: 'TW-07Q', make: 'Corvane', model: 'C2' },
} as Change;
const hold = {
  kind: 'hold.place',
  version: 1,
  hold: { id: 'h', reason: 'Panel open', by: 'A. Person', from: '2026-11-25T08:00Z', until: null },
} as Change;
const work = {
  kind: 'work.done',
  version: 1,
  what: 'Static line opened',
  unitId: null,
  touched: ['static-system'],
  performed: { date: '2026-11-25', at: now },
} as Change;

function effect(before: readonly Change[], after: readonly Change[]) {
  const judge = (changes: readonly Change[]) => judgeAll(replay(changes, 'a'), catalogue, profiles, now);
  return effectOf(judge(before), judge([...before, ...after]), profiles);
}

test('a hold is told apart from a plain no and opens its finding; lifting it closes it', () => {
  const placed = effect([aircraft], [hold]);
  expect(placed.profiles[0]).toMatchObject({ name: 'IFR lesson', after: 'held' });
  expect(placed.opened.map((each) => each.ruleId)).toContain('held');
  const lift = { kind: 'hold.lift', version: 1, holdId: 'h', at: '2026-11-25T11:00Z', reason: 'Closed' } as Change;
  const lifted = effect([aircraft, hold], [lift]);
  expect(lifted.closed.map((each) => each.ruleId)).toContain('held');
  expect(lifted.profiles[0]).toMatchObject({ before: 'held' });
});

test('what the work calls for is listed until the plan itself records it', () => {
  const owed = effect([aircraft], [work]).owed.map((each) => each.what);
  expect(owed).toContain('static-leak-test');
  expect(effect([aircraft, work], []).owed).toEqual([]);
});

test('an answer that is no yes names what still stands in the way', () => {
  const { profiles: judged } = effect([aircraft], [hold]);
  expect(judged[0]?.stops.map((each) => each.ruleId)).toContain('held');
});

test('a change of weight is summed, and an arm that is not recorded leaves the moment open', () => {
  const mass = {
    kind: 'mass.revise',
    version: 1,
    mass: {
      emptyWeightLb: 1500,
      emptyArmIn: 40,
      revisedOn: '2026-01-01',
      weighed: true,
      macIn: null,
      envelope: null,
      equipmentListRevisedOn: null,
      changesSince: [],
    },
  } as Change;
  const item = (weightLb: number, armIn: number | null) =>
    ({ kind: 'mass.note', version: 1, item: { what: 'x', weightLb, armIn, on: '2026-11-25', listed: null } }) as Change;
  expect(effect([aircraft, mass], [item(-2, 10), item(5, 20)]).mass).toEqual({ weightLb: 3, momentLbIn: 80 });
  expect(effect([aircraft, mass], [item(-2, null)]).mass).toEqual({ weightLb: -2, momentLbIn: null });
  expect(effect([aircraft, mass], []).mass).toBeNull();
});

test('profiles that change alike are one line, a different reason is another', () => {
  const each = (name: string, after: 'no' | 'yes') => ({ id: name, name, before: 'yes' as const, after, stops: [] });
  expect(
    alike([each('a', 'no'), each('b', 'yes'), each('c', 'no')]).map((group) => [group.names, group.after]),
  ).toEqual([
    [['a', 'c'], 'no'],
    [['b'], 'yes'],
  ]);
});
