import { expect, it } from 'vitest';
import { linkOf, unitOf } from '../../testing/builders.js';
import { added, after, catalogueOf } from '../../testing/changes.js';
import type { Change } from './changes.js';
import { admit } from './changes.js';

const performed = { date: '2026-03-02', at: null };
const install = (id: string, serial: string | null = null): Change => ({
  kind: 'unit.install',
  version: 1,
  unit: unitOf({ id, functions: ['audio'], serial }),
  performed,
  touched: [],
  mass: null,
});
const remove = (unitId: string): Change => ({
  kind: 'unit.remove',
  version: 1,
  unitId,
  performed: { date: '2026-04-01', at: null },
  reason: 'Sold',
  touched: [],
  mass: null,
});
const join = (from: string, to: string): Change => ({
  kind: 'link.connect',
  version: 1,
  link: linkOf(from, 'audio', to, 'audio', { id: `${from}-${to}` }),
  performed,
  touched: [],
});
const off = (unitId: string): Change => ({
  kind: 'unit.deactivate',
  version: 1,
  unitId,
  performed,
  placarded: true,
  recorded: true,
});
const refusals = (changes: readonly Change[], change: Change) =>
  admit(after([added, ...changes]), catalogueOf(), change);

it('a unit takes the joints of both its ends with it, and no others', () => {
  const { links } = after([
    added,
    ...['a', 'b', 'c'].map((id) => install(id)),
    join('a', 'b'),
    join('b', 'c'),
    join('c', 'a'),
    remove('b'),
  ]).configuration;
  expect(links.map(({ id }) => id)).toEqual(['c-a']);
});

it('units that were taken out one after the other are all remembered', () => {
  const { takenOut } = after([added, install('b', 'S-2'), install('a'), remove('b'), remove('a')]).configuration;
  expect(takenOut).toEqual([
    { id: 'a', serial: null },
    { id: 'b', serial: 'S-2' },
  ]);
});

it('a unit that is switched on again leaves the others off', () => {
  const on: Change = { kind: 'unit.reactivate', version: 1, unitId: 'a', performed, touched: ['nothing'] };
  const { units } = after([added, install('a'), install('b'), off('a'), off('b'), on]).configuration;
  expect(units.map(({ id, deactivated }) => [id, deactivated !== null])).toEqual([
    ['a', false],
    ['b', true],
  ]);
});

it('the name of a unit that was taken out is kept from another, with the serial number that it had', () => {
  const gone = [install('a', 'S-1'), remove('a')];
  const unnumbered = [install('a'), remove('a')];
  expect(refusals(gone, install('a', 'S-2'))).toEqual([
    { code: 'id-of-another-unit', field: 'unit.id', data: { id: 'a', was: 'S-1' } },
  ]);
  // Without a number nobody can say that it is the same one.
  expect(refusals(unnumbered, install('a'))).toEqual([
    { code: 'id-of-another-unit', field: 'unit.id', data: { id: 'a', was: 'not recorded' } },
  ]);
  expect(refusals(gone, install('a', 'S-1'))).toEqual([]);
  expect(refusals(gone, install('b', 'S-2'))).toEqual([]);
});

it('another serial number is refused with both', () => {
  const amend: Change = {
    kind: 'unit.amend',
    version: 1,
    unit: unitOf({ id: 'a', functions: ['audio'], serial: 'S-2' }),
    sameUnit: null,
    reason: 'Read off the plate',
  };
  expect(refusals([install('a', 'S-1')], amend)).toEqual([
    { code: 'another-serial', field: 'unit.serial', data: { id: 'a', was: 'S-1', serial: 'S-2' } },
  ]);
});
