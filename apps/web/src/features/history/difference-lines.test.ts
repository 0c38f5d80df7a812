import { dossierSchema } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { differenceLines, wordedPlaces } from './difference-lines.js';

const when = (instant: string) => `at ${instant.slice(11, 16)}`;
const names = { 'id-gps': 'QN 52 navigator', 'id-cdi': 'Course indicator', 'id-tach': 'Tachometer' };
const lines = (place: string, was: unknown, is: unknown) => differenceLines([{ place, was, is }], names, when);

test('every place of the record has words', () => {
  const { configuration, status, meters } = dossierSchema.shape;
  const all = [configuration, status, meters].flatMap((part) => Object.keys(part.shape));
  expect([...wordedPlaces].sort()).toEqual(all.sort());
});

test('a changed thing is named with each field that differs, and no other', () => {
  const was = { id: 'id-gps', typeId: 'qn52@1', serial: null, software: '1.0', options: [] };
  expect(lines('units', was, { ...was, typeId: 'qn52@2', serial: 'S-9' })).toEqual([
    {
      what: 'Unit QN 52 navigator',
      how: 'changed',
      fields: [
        { label: 'Equipment type', was: 'another, or another version', is: 'as recorded with this entry' },
        { label: 'Serial', was: 'not recorded', is: 'S-9' },
      ],
    },
  ]);
});

test('what was added or is gone says so; ids are names everywhere', () => {
  const link = { id: 'id-link', fromUnit: 'id-gps', toUnit: 'id-cdi' };
  const said = [
    ...lines('links', null, link),
    ...lines('loads', { unitId: 'id-gps', database: 'navigation', slot: 'this' }, null),
    ...lines('obligations', null, { id: 'compass-swing:aircraft', what: 'compass-swing', subject: 'aircraft' }),
    ...lines('timeInService', null, 'id-tach'),
    ...lines('antennas', { id: 'id-ant', units: ['id-gps'] }, { id: 'id-ant', units: ['id-gps', 'id-cdi'] }),
  ];
  expect(said.map(({ what, how }) => `${what}: ${how}`)).toEqual([
    'Joint something that has no name here: added',
    'Database Navigation in QN 52 navigator: removed',
    'Owed compass swing of the aircraft: added',
    'Meter that stands for time in service Tachometer: added',
    'Antenna something that has no name here: changed',
  ]);
  expect(said.at(-1)?.fields).toEqual([
    { label: 'Units', was: 'QN 52 navigator', is: 'QN 52 navigator, Course indicator' },
  ]);
  expect(JSON.stringify(said)).not.toContain('id-');
});

test('hours, days, minutes and answers are written as such', () => {
  const was = { value: 100_000, asOf: '2026-03-09T14:05Z', by: 'Log' };
  expect(lines('readings', was, { ...was, value: 100_250, asOf: '2026-03-10T08:00Z' })[0]?.fields).toEqual([
    { label: 'Value', was: '1000.0 h', is: '1002.5 h' },
    { label: 'As of', was: 'at 14:05', is: 'at 08:00' },
  ]);
  const owed = { id: 'x', what: 'compass-swing', subject: 'aircraft', closedBy: null };
  expect(lines('obligations', owed, { ...owed, closedBy: 'id-record' })[0]?.fields).toEqual([
    { label: 'Answered by an entry', was: 'no', is: 'yes' },
  ]);
});
