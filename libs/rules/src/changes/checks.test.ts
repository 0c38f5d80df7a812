import { expect, it } from 'vitest';
import { linkOf, typeOf, unitOf } from '../../testing/builders.js';
import { dossierOf } from '../../testing/dossiers.js';
import { busy } from '../../testing/every-change.js';
import type { FunctionCode } from '../catalogue/type.js';
import {
  afterManufacture,
  functionsOf,
  knownSubject,
  namedMeter,
  notInFuture,
  touchedBy,
  touchedByJoint,
  touchesStated,
} from './checks.js';

it.each<[readonly FunctionCode[], readonly string[]]>([
  [['transponder'], ['transponder']],
  [['altitude-reporting'], ['altitude-chain']],
  [['altimeter'], ['altitude-chain', 'static-system']],
  [['gnss'], ['gnss']],
  [['ads-b-out-1090'], ['ads-b']],
  [['ads-b-out-uat'], ['ads-b']],
  [['com', 'audio'], []],
  [
    ['transponder', 'altitude-reporting', 'ads-b-out-1090'],
    ['transponder', 'altitude-chain', 'ads-b'],
  ],
])('work on a unit for %j touches %j', (functions, touched) => {
  expect(touchedBy(functions)).toEqual(touched);
  expect(touchesStated([], touchedBy(functions), 'touched').map(({ data }) => data['touched'])).toEqual(touched);
  expect(touchesStated([...touchedBy(functions), 'electrical'], touchedBy(functions), 'touched')).toEqual([]);
});

it.each([
  ['aircraft', true],
  ['gps1', true],
  ['static-1', true],
  ['clock', true],
  ['filter', true],
  ['hose', true],
  ['directive', true],
  ['d1', false],
  ['', false],
])('an entry about %s: %s', (id, known) => {
  const directive = {
    id: 'directive',
    number: 'TW-1',
    subject: 'aircraft',
    state: 'open' as const,
    reason: null,
    partNumber: null,
    serial: null,
    method: null,
    recurs: false,
    interval: null,
    nextDue: null,
    recordId: null,
  };
  const dossier = { ...busy, status: { ...busy.status, directives: [directive] } };
  expect(knownSubject(id, 'subject', { dossier })).toEqual(
    known ? [] : [expect.objectContaining({ code: 'unknown-subject', field: 'subject' })],
  );
});

it('without a day, or without a clock, nothing is in the future', () => {
  expect(notInFuture(null, 'on', '2026-03-16T16:00Z')).toEqual([]);
  expect(notInFuture('2099-01-01', 'on', null)).toEqual([]);
  expect(notInFuture('2099-01-01', 'on', '2026-03-16T16:00Z')).toHaveLength(1);
});

it('an aircraft whose day of manufacture is not recorded may be worked on at any time', () => {
  expect(afterManufacture('1900-01-01', 'on', dossierOf())).toEqual([]);
  const made = dossierOf({ configuration: { aircraft: { manufactured: '1979-05-04' } } });
  expect(afterManufacture('1979-05-03', 'on', made)).toHaveLength(1);
  expect(afterManufacture('1979-05-04', 'on', made)).toEqual([]);
});

it('a unit does what its type says, or what is recorded of it where there is no type', () => {
  const types = { nx5: typeOf({ id: 'nx5', functions: ['gnss'] }) };
  expect(functionsOf(unitOf({ id: 'u', typeId: 'nx5' }), types)).toEqual(['gnss']);
  expect(functionsOf(unitOf({ id: 'u', functions: ['com'] }), types)).toEqual(['com']);
  expect(functionsOf(unitOf({ id: 'u', typeId: 'gone', functions: ['com'] }), types)).toEqual(['com']);
});

it.each<[string, readonly [string, string], readonly [string, string], readonly string[]]>([
  ['the altitude that a transponder reports', ['enc', 'A'], ['xp', 'ALT'], ['altitude-chain']],
  ['the same as serial data', ['enc', 'S'], ['xp', 'SER'], ['altitude-chain']],
  ['known by the port at one end alone', ['old', 'P9'], ['xp', 'ALT'], ['altitude-chain']],
  ['an altitude that nobody reports', ['enc', 'A'], ['old', 'P9'], []],
  ['another signal to a transponder', ['old', 'P9'], ['xp', 'CTL'], []],
  ['the position that ADS-B Out sends', ['gps', 'position'], ['xp', 'POS'], ['ads-b']],
  ['a position that is shown', ['gps', 'position'], ['old', 'P9'], []],
])('a joint touches what it carries: %s', (_name, [from, fromPort], [to, toPort], touched) => {
  const port = (name: string, signal: 'altitude-gray' | 'altitude-serial' | 'control' | 'position') =>
    ({ name, signal, direction: 'both', standard: 'discrete', speed: null, requiredFor: [] }) as const;
  const types = {
    en1: typeOf({
      id: 'en1',
      functions: ['altitude-reporting'],
      ports: [port('A', 'altitude-gray'), port('S', 'altitude-serial')],
    }),
    ms4: typeOf({
      id: 'ms4',
      functions: ['transponder', 'ads-b-out-1090'],
      ports: [
        port('CTL', 'control'),
        port('ALT', 'altitude-gray'),
        port('SER', 'altitude-serial'),
        port('POS', 'position'),
      ],
    }),
  };
  const units = [
    unitOf({ id: 'old', functions: ['audio'] }),
    unitOf({ id: 'gps', functions: ['gnss'] }),
    unitOf({ id: 'enc', typeId: 'en1' }),
    unitOf({ id: 'xp', typeId: 'ms4' }),
  ];
  expect(touchedByJoint(linkOf(from, fromPort, to, toPort), units, types)).toEqual(touched);
});

it('a meter is one of several by its name', () => {
  const definition = { name: 'Meter', kind: 'hour-meter', perFlightHour: 1000, offset: 0 } as const;
  const dossier = dossierOf({
    meters: { definitions: ['hobbs', 'tach'].map((id) => ({ ...definition, id })) },
  });
  expect(namedMeter('tach', 'meter', { dossier })).toEqual([]);
  expect(namedMeter('hobbs', 'meter', { dossier })).toEqual([]);
  for (const other of ['cycles', null])
    expect(namedMeter(other, 'meter', { dossier })).toEqual([
      { code: 'unknown-meter', field: 'meter', data: { id: other } },
    ]);
});
