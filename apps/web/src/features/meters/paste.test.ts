import { expect, test } from 'vitest';
import { fillIn } from './paste.js';
import type { SheetRow } from './query.js';
import { blankEntry } from './sheet.js';

const now = '2026-03-10T12:00Z';
const meter = (id: string, name: string, timeInService = false) => ({ id, name, kind: id, timeInService });
const aircraft = (registration: string, meters: readonly object[]) =>
  ({
    aircraft: { id: registration.toLowerCase(), registration, base: { id: 'f', name: 'F', zone: 'America/Chicago' } },
    meters,
  }) as unknown as SheetRow;

const rows = [
  aircraft('TW-01Q', [meter('hour-meter', 'Hour meter'), meter('tach', 'Tachometer', true)]),
  aircraft('TW-02Q', [meter('tach', 'Tachometer')]),
  aircraft('TW-03Q', []),
  aircraft('TW-04Q', [meter('tach', 'Left tachometer'), meter('tach2', 'Right tachometer')]),
];
const paste = (text: string, whole = true) => fillIn(text, rows, {}, now, whole);
const dials = (text: string) => Object.entries(paste(text).entries).map(([key, { dial }]) => `${key}=${dial}`);
const why = (text: string, whole = true) => paste(text, whole).left.map((each) => `${each.line}: ${each.why}`);

test('lines of a spreadsheet, of a CSV and of one with decimal commas fill the same fields', () => {
  const expected = ['tw-01q hour-meter=1412.5', 'tw-02q tach=88'];
  expect(dials('TW-01Q\tHour meter\t1412.5\nTW-02Q\tTachometer\t88\n')).toEqual(expected);
  expect(dials('Registration,Meter,Reading\r\nTW-01Q,"Hour meter",1412.5\r\n\r\nTW-02Q,tach,88')).toEqual(expected);
  expect(dials('\uFEFFtw 01q;HOUR METER;1412,5\ntw02q;;88 h')).toEqual(expected);
});

test('a cell in quotes may hold the separator and quotes', () => {
  expect(why('TW-02Q,"Meter, ""old""",88')).toEqual(['1: TW-02Q has no meter "Meter, "old"". It has: Tachometer.']);
});

test('an empty meter is the one that stands for time in service, or the only one', () => {
  expect(dials('TW-01Q,,1400\nTW-02Q,,88')).toEqual(['tw-01q tach=1400', 'tw-02q tach=88']);
  expect(why('TW-04Q,,1400')).toEqual(['1: Which meter? TW-04Q has 2 meters: Left tachometer and Right tachometer.']);
});

test('each line that found no place is named with the reason', () => {
  const text = [
    'TW-99Q,Tachometer,5',
    'TW-02Q,Hour meter,5',
    'TW-02Q,Tachometer,1.250,3',
    'TW-02Q,Tachometer,',
    'TW-02Q,Tachometer,88,9/3/2026',
    'TW-02Q,Tachometer,88,2026-13-40',
    'TW-03Q,Tachometer,88',
    ',Tachometer,88',
    'TW-02Q,Tachometer,88',
    'TW-02Q,Tachometer,89',
  ].join('\n');
  const pasted = paste(text);
  expect(pasted.filled).toBe(1);
  expect(pasted.entries['tw-02q tach']?.dial).toBe('88');
  expect(pasted.left.map((each) => [each.line, each.why])).toEqual([
    [1, 'No TW-99Q on this sheet. Check the registration.'],
    [2, 'TW-02Q has no meter "Hour meter". It has: Tachometer.'],
    [3, '"1.250" is not a reading. Write hours with at most two decimals, and no separator of thousands.'],
    [4, 'The reading is missing: it is the third column.'],
    [5, '"9/3/2026" is not a date that is known here. Write 2026-03-09, with 14:05 after it if the time matters.'],
    [6, '"2026-13-40" is not a date that is known here. Write 2026-03-09, with 14:05 after it if the time matters.'],
    [7, 'TW-03Q has no meter. Define one on its job screen.'],
    [8, 'The registration is missing.'],
    [10, 'The same meter is in line 9 already. Keep one of the two.'],
  ]);
  expect(why('TW-99Q,,5', false)[0]).toMatch(/Show all aircraft/);
});

test('a date is the end of that day at the base, a time is that time, and today is now', () => {
  const at = (date: string) => paste(`TW-02Q\t\t88\t${date}`).entries['tw-02q tach']?.asOf;
  expect(at('')).toBeNull();
  // Chicago is five hours behind UTC from 8 March 2026 on, six before.
  expect(at('2026-03-09')).toBe('2026-03-10T04:59Z');
  expect(at('2026-03-07')).toBe('2026-03-08T05:59Z');
  expect(at('2026-03-09 14:05')).toBe('2026-03-09T19:05Z');
  expect(at('2026-03-09T9:05')).toBe('2026-03-09T14:05Z');
  expect(at('2026-03-10')).toBe(now);
  // What has not come yet is left for the sheet to refuse.
  expect(at('2026-03-11')).toBe('2026-03-12T04:59Z');
});

test('what was typed in other fields stays', () => {
  const typed = {
    'tw-01q tach': { ...blankEntry, dial: '7' },
    'tw-02q tach': { ...blankEntry, dial: '8', sure: true },
  };
  expect(fillIn('TW-02Q,,88', rows, typed, now, true).entries).toEqual({
    'tw-01q tach': { ...blankEntry, dial: '7' },
    'tw-02q tach': { ...blankEntry, dial: '88' },
  });
});
