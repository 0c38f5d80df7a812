import { expect, test } from 'vitest';
import { changedValues, deedWords } from './entry-words.js';

const subject = { kind: 'person', id: 'p', name: 'Jory Pellam' };

test('a deed names its subject, one without words of its own too', () => {
  expect(deedWords({ kind: 'person.amend', subject })).toBe('Changed the person Jory Pellam');
  expect(deedWords({ kind: 'person.something-new', subject })).toBe('Person something new Jory Pellam');
});

test('a deed without a subject is said alone, with what it was', () => {
  expect(deedWords({ kind: 'sign-in.failed', subject: null })).toBe('A sign-in failed');
  expect(changedValues({ before: null, after: { action: 'people.write', door: 'addPerson' } })).toEqual([
    { label: 'Right that it takes', was: null, is: 'people.write' },
    { label: 'Asked for', was: null, is: 'addPerson' },
  ]);
});

test('what changed stands with what it was', () => {
  const before = { role: 'technician', operatorId: null, certificate: null };
  const after = {
    role: 'dispatcher',
    operatorId: 'north',
    certificate: { kind: 'mechanic', number: 'TW-1', ratings: ['airframe', 'radio-1'] },
  };
  expect(changedValues({ before, after })).toEqual([
    { label: 'Role', was: 'Technician', is: 'Dispatcher' },
    { label: 'Operator', was: 'none', is: 'north' },
    { label: 'Certificate', was: 'none', is: 'kind Mechanic; number TW-1; ratings Airframe and Radio 1' },
  ]);
});

test('something new has no before; days are written out, yes and no in words', () => {
  expect(changedValues({ before: null, after: { goodUntil: '2027-01-31', wanted: true, airspace: [] } })).toEqual([
    { label: 'Good until', was: null, is: '31 Jan 2027' },
    { label: 'On the board', was: null, is: 'yes' },
    { label: 'Airspace', was: null, is: 'none' },
  ]);
  expect(changedValues({ before: null, after: null })).toEqual([]);
});
