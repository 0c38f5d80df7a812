import { expect, test } from 'vitest';
import { aboutWords, effectWords, flightsMoved, togetherWords, whoWords } from './entry-view.js';
import type { EntryAnswer } from './query.js';

const entry = (part: Partial<EntryAnswer>) => part as EntryAnswer;
const when = (instant: string) => instant.slice(0, 10);
const certificate: EntryAnswer['certificate'] = { kind: 'MECHANIC', number: 'M-1', ratings: ['AIRFRAME'] };
const finding = { subject: 'aircraft', subjectName: 'aircraft', text: 'Held' };

test('who wrote it comes with the certificate of that day', () => {
  const written = { by: 'R. Fell', takenInFrom: null, body: {} };
  expect(whoWords({ ...written, certificate })).toBe('R. Fell, Mechanic M-1: airframe');
  expect(whoWords({ ...written, certificate: null })).toBe('R. Fell, no certificate on file then');
});

test.each([
  [['fleet.csv'], { record: { agency: { name: 'S. Quince' } } }, 'fleet.csv by R. Fell; the record names S. Quince'],
  [['a.csv', 'b.csv'], { by: 'Hangar log' }, 'a.csv and b.csv by R. Fell; the record names Hangar log'],
  [
    ['a.csv', 'b.csv', 'c.csv', 'd.csv'],
    { lists: [{ stated: { by: 'W. Tarrant' } }] },
    'a.csv, b.csv and 2 other files by R. Fell; the record names W. Tarrant',
  ],
  [[], { record: { agency: null } }, 'a file by R. Fell; the record names nobody'],
])('of %j taken in, whoever read it in is not who did it', (takenInFrom, body, words) => {
  expect(whoWords({ by: 'R. Fell', certificate, takenInFrom, body })).toBe(`Taken in from ${words}`);
});

test('the day an entry is about stands beside the day it was written', () => {
  const recordedAt = '2026-03-09T14:05Z';
  expect(aboutWords({ day: '2026-02-01', dayAt: null, recordedAt }, when)).toBe('as of 1 Feb 2026');
  expect(aboutWords({ day: '2026-02-01', dayAt: '2026-02-01T08:00Z', recordedAt }, when)).toBe('as of 2026-02-01');
  expect(aboutWords({ day: '2026-03-09', dayAt: recordedAt, recordedAt }, when)).toBe('of the same minute');
  expect(aboutWords({ day: null, dayAt: null, recordedAt }, when)).toBe('names no day of its own');
});

test('entries of one piece of work say where its effect stands', () => {
  expect(togetherWords(entry({ number: 3, firstTogether: 3, lastTogether: 3 }))).toBeNull();
  expect(togetherWords(entry({ number: 4, firstTogether: 3, lastTogether: 4 }))).toBe('one work, entries 3 to 4');
  expect(togetherWords(entry({ number: 3, firstTogether: 3, lastTogether: 4 }))).toContain('stands at entry 4');
});

test('flights are lost where a yes ended and won where one began; a first no is neither', () => {
  const effect: Parameters<typeof effectWords>[0] = {
    flights: [
      { flight: 'A', was: 'YES', is: 'CANNOT_TELL' },
      { flight: 'B', was: null, is: 'YES' },
      { flight: 'C', was: null, is: 'NO' },
      { flight: 'D', was: 'NO', is: 'CANNOT_TELL' },
    ],
    opened: [finding],
    closed: [],
    rules: '1',
  };
  expect(flightsMoved(effect)).toEqual({
    won: ['B'],
    lost: ['A'],
    other: [{ flight: 'D', was: 'no', is: 'cannot tell' }],
  });
  expect(effectWords(effect)).toBe(
    'It lost 1 flight, won 1 flight, changed the answer to 1 flight and opened 1 finding.',
  );
  expect(effectWords({ ...effect, flights: [], opened: [] })).toBeNull();
});
