import { expect, it } from 'vitest';
import { circuitOf, linkOf, unitOf } from '../../testing/builders.js';
import { added, after, catalogueOf } from '../../testing/changes.js';
import type { FunctionCode } from '../catalogue/type.js';
import type { Change, ChangeOf } from './changes.js';
import { admit, parseChange } from './changes.js';

type Touched = ChangeOf<'unit.install'>['touched'][number];
const performed = { date: '2026-03-02', at: null };
const later = { date: '2026-04-02', at: null };
const install = (id: string, functions: readonly FunctionCode[], touched: readonly Touched[]): Change => ({
  kind: 'unit.install',
  version: 1,
  unit: unitOf({ id, functions: [...functions] }),
  performed,
  touched: [...touched],
  mass: null,
});
const join = (from: string, signal: string, to: string): Change => ({
  kind: 'link.connect',
  version: 1,
  link: linkOf(from, signal, to, signal, { id: `${from}-${to}` }),
  performed,
  touched: signal === 'altitude-gray' ? ['altitude-chain'] : [],
});
const part = (linkId: string, touched: readonly Touched[]): Change => ({
  kind: 'link.disconnect',
  version: 1,
  linkId,
  performed: later,
  touched: [...touched],
  reason: 'Moved',
});
const two = after([
  added,
  install('aud1', ['audio'], []),
  install('aud2', ['audio'], []),
  install('blind', ['altitude-reporting'], ['altitude-chain']),
  install('xp1', ['transponder'], ['transponder']),
  join('aud1', 'audio', 'aud2'),
  join('blind', 'altitude-gray', 'xp1'),
]);
const owedSince = (dossier: typeof two, date: string) =>
  dossier.status.obligations.filter(({ since }) => since.date === date).map(({ id }) => id);
const refusals = (change: Change, dossier = two) => admit(dossier, catalogueOf(), change);

it('what a joint touches is asked of the joint that is parted, and owed by its units', () => {
  expect(refusals(part('aud1-aud2', []))).toEqual([]);
  expect(refusals(part('blind-xp1', []))).toMatchObject([
    { code: 'touch-missing', data: { touched: 'altitude-chain' } },
  ]);
  expect(owedSince(after([part('blind-xp1', ['altitude-chain'])], catalogueOf(), two), '2026-04-02')).toEqual([
    'altitude-correspondence-test:aircraft',
    'release-entry:blind',
  ]);
});

it('a joint that is not there is refused for that alone', () => {
  expect(refusals(part('none', []))).toEqual([{ code: 'unknown-id', field: 'linkId', data: { id: 'none' } }]);
});

it('"nothing" is said alone of an antenna too', () => {
  const antenna = { id: 'a1', kind: 'com' as const, units: ['aud1'], approved: true, xIn: null, yIn: null };
  const fit: Change = { kind: 'antenna.fit', version: 1, antenna, performed: later, touched: ['nothing', 'ferrous'] };
  expect(refusals(fit)).toMatchObject([{ code: 'touched-contradicts', field: 'touched' }]);
  const fitted = after([{ ...fit, touched: ['ferrous'] }], catalogueOf(), two);
  const off: Change = {
    kind: 'antenna.remove',
    version: 1,
    antennaId: 'a1',
    performed: later,
    touched: ['nothing', 'ferrous'],
    reason: 'Cracked',
  };
  expect(refusals(off, fitted)).toMatchObject([{ code: 'touched-contradicts', field: 'touched' }]);
});

it('work on an antenna that serves nothing yet is owed by the aircraft', () => {
  const antenna = { id: 'a1', kind: 'com' as const, units: [], approved: null, xIn: null, yIn: null };
  const fit: Change = { kind: 'antenna.fit', version: 1, antenna, performed: later, touched: [] };
  expect(owedSince(after([fit], catalogueOf(), two), '2026-04-02')).toEqual([
    'release-entry:aircraft',
    'what-was-touched:aircraft',
  ]);
});

it('a small change of weight wants an empty-weight record to stand on', () => {
  const note: Change = {
    kind: 'mass.note',
    version: 1,
    item: { what: 'Swap', weightLb: 1, armIn: 40, on: '2026-03-02', listed: true },
  };
  expect(refusals(note)).toEqual([{ code: 'no-mass-record', field: 'item', data: {} }]);
});

it.each([
  [24, true],
  [25, false],
  [0, true],
  [-3, true],
  [-4, false],
])('a circuit of gauge %i, where 4/0 is -3, can be recorded: %s', (wireAwg, ok) => {
  const circuits = [circuitOf({ id: 'c1', name: 'Battery', wireAwg })];
  const electrical = { busV: 28, alternatorA: null, batteryAh: null, batteryShare: null, loadWatch: null, circuits };
  const parsed = parseChange({ kind: 'electrical.set', version: 1, electrical });
  expect(parsed.ok ? [] : parsed.refusals.map(({ field }) => field)).toEqual(
    ok ? [] : ['electrical.circuits.0.wireAwg'],
  );
});
