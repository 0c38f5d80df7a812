import { describe, expect, it } from 'vitest';
import { recordOf, unitOf } from '../../testing/builders.js';
import { added } from '../../testing/changes.js';
import type { Change } from './changes.js';
import { replay } from './changes.js';
import { differencesOf } from './differences.js';
import { aboutOf, correctionsAmong, dayOf, knownNow } from './looking-back.js';

const zone = 'America/Chicago';
const annual = (on: string): Change => ({
  kind: 'record.add',
  version: 1,
  record: { ...recordOf({ kind: 'annual-inspection', on }), id: 'annual' },
});
const corrected = (on: string): Change => ({
  kind: 'record.correct',
  version: 1,
  record: { ...recordOf({ kind: 'annual-inspection', on }), id: 'annual' },
  reason: 'The day was misread',
});
const fit = (date: string): Change => ({
  kind: 'unit.install',
  version: 1,
  unit: unitOf({ id: 'gps1', functions: ['gnss'] }),
  performed: { date, at: null },
  touched: ['gnss'],
  mass: null,
});
const amend: Change = {
  kind: 'unit.amend',
  version: 1,
  unit: unitOf({ id: 'gps1', functions: ['gnss'], serial: 'S-9' }),
  sameUnit: null,
  reason: 'Serial read off the plate',
};
const read = (dial: number, asOf: string): Change => ({
  kind: 'meter.read',
  version: 1,
  meter: 'tach',
  dial,
  asOf,
  by: 'R. Fell',
});
const correctMeter = (value: number, asOf: string): Change => ({
  kind: 'meter.correct',
  version: 1,
  meter: 'tach',
  value,
  asOf,
  by: 'R. Fell',
  reason: 'Two digits swapped',
});
const placard: Change = {
  kind: 'placard.fit',
  version: 1,
  placard: { id: 'p1', kind: 'other', unitId: null, inView: true, text: 'Fly slowly' },
};

/** Entries, each written at noon of its day; those of one day are one piece of work. */
type Dated = readonly [string, Change];
const written = (...list: readonly Dated[]) =>
  list.map(([day, change], at) => ({ number: at + 1, together: day, writtenAt: `${day}T18:00Z`, change }));
const numbers = (at: string, ...list: readonly Dated[]) =>
  knownNow(written(...list), at, zone).entries.map(({ number }) => number);

describe('the day that an entry is about', () => {
  it('is when the work was done, the meter read, the thing found; a kind without one names none', () => {
    expect(dayOf(annual('2026-02-03'))).toEqual({ date: '2026-02-03', at: null });
    expect(dayOf(read(100, '2026-02-03T09:30Z'))).toEqual({ date: '2026-02-03', at: '2026-02-03T09:30Z' });
    expect(dayOf(fit('2026-02-04'))?.date).toBe('2026-02-04');
    expect(dayOf(placard)).toBeNull();
  });

  it('is the latest of several, and none where nobody looked', () => {
    const seen = (asOf: string) => ({ asOf, by: 'R. Fell' });
    const items = (...days: readonly (string | null)[]): Change => ({
      kind: 'equipment.state',
      version: 1,
      items: days.map((day) => ({
        item: 'clock',
        state: 'fitted',
        unitId: null,
        seen: day === null ? null : seen(day),
      })),
    });
    expect(dayOf(items('2026-02-03', null, '2026-03-04', '2026-01-02'))).toEqual({ date: '2026-03-04', at: null });
    expect(dayOf(items(null))).toBeNull();
    const lists = ['2026-02-03', '2026-03-04', '2026-01-02'].map((day) => ({
      list: 'links' as const,
      stated: seen(day),
    }));
    expect(dayOf({ kind: 'completeness.state', version: 1, lists })).toEqual({ date: '2026-03-04', at: null });
  });
});

describe('corrections', () => {
  it('point at the last entry before them that is about the same thing', () => {
    const list = [
      added,
      annual('2026-02-03'),
      read(100, '2026-02-03T09:00Z'),
      corrected('2026-02-04'),
      corrected('2026-02-05'),
    ];
    const entries = [...list, correctMeter(90, '2026-02-03T09:00Z')].map((change, at) => ({
      number: at + 1,
      kind: change.kind,
      about: aboutOf(change),
    }));
    expect([...correctionsAmong(entries)]).toEqual([
      [4, 2],
      [5, 4],
      [6, 3],
    ]);
  });

  it('tell entries, meters and units apart, whatever the order in which they are asked', () => {
    const entries = [
      ['record.add', 'annual'],
      ['record.add', 'swing'],
      ['meter.read', 'tach'],
      ['meter.read', 'hobbs'],
      ['record.correct', 'annual'],
      ['meter.correct', 'tach'],
      ['meter.correct', 'cycles'],
      ['record.add', null],
      ['record.correct', null],
    ].map(([kind, about], at) => ({ number: at + 1, kind: kind ?? '', about: about ?? null }));
    for (const list of [entries, entries.toReversed()])
      expect([...correctionsAmong(list)]).toEqual([
        [5, 1],
        [6, 3],
      ]);
  });

  it('are about the entry, the meter or the unit that the change names', () => {
    expect([annual('2026-02-03'), corrected('2026-02-03')].map(aboutOf)).toEqual(['annual', 'annual']);
    expect([read(1, '2026-02-03T09:00Z'), correctMeter(1, '2026-02-03T09:00Z')].map(aboutOf)).toEqual(['tach', 'tach']);
    expect([fit('2026-02-03'), amend].map(aboutOf)).toEqual(['gps1', 'gps1']);
    expect(aboutOf(placard)).toBeNull();
  });
});

describe('what is known now about then', () => {
  it('counts what was done until then, whenever it was written down', () => {
    const list = [
      ['2026-01-01', added],
      ['2026-03-10', annual('2026-02-03')],
    ] as const;
    expect(numbers('2026-02-02T18:00Z', ...list)).toEqual([1]);
    // The day of the work counts from its beginning at the base: 06:00Z in Chicago.
    expect(numbers('2026-02-03T05:59Z', ...list)).toEqual([1]);
    expect(numbers('2026-02-03T06:00Z', ...list)).toEqual([1, 2]);
  });

  it('takes a correction in place of the mistaken entry, also where it moves the day', () => {
    const list = [
      ['2026-01-01', added],
      ['2026-02-04', annual('2026-02-03')],
      ['2026-05-02', corrected('2026-05-01')],
    ] as const;
    expect(numbers('2026-03-01T12:00Z', ...list)).toEqual([1]);
    expect(numbers('2026-05-01T12:00Z', ...list)).toEqual([1, 3]);
  });

  it('takes a corrected reading in place of the misread one, but leaves a replaced meter replaced', () => {
    const list = [
      ['2026-01-01', added],
      ['2026-02-01', read(900, '2026-02-01T12:00Z')],
      ['2026-03-01', correctMeter(90, '2026-02-01T12:00Z')],
      [
        '2026-03-05',
        {
          kind: 'meter.replace',
          version: 1,
          meter: 'tach',
          oldDial: 100,
          newDial: 0,
          at: '2026-03-05T12:00Z',
          by: 'R. Fell',
        },
      ],
      ['2026-03-06', correctMeter(99, '2026-03-05T12:00Z')],
    ] as const;
    expect(numbers('2026-02-01T11:59Z', ...list)).toEqual([1]);
    expect(numbers('2026-02-01T12:00Z', ...list)).toEqual([1, 3]);
    expect(numbers('2026-03-05T12:00Z', ...list)).toEqual([1, 3, 4, 5]);
  });

  it('gives what names no day that of its work, else the day it was written, and never an earlier one', () => {
    const list = [
      ['2026-01-01', added],
      ['2026-03-10', fit('2026-02-03')],
      ['2026-04-01', placard],
      ['2026-05-01', amend],
    ] as const;
    expect(numbers('2026-02-03T12:00Z', ...list)).toEqual([1, 2, 4]);
    expect(knownNow(written(...list), '2026-02-03T12:00Z', zone).undated).toBe(1);
    expect(knownNow(written(...list), '2026-04-01T18:00Z', zone).undated).toBe(0);
    expect(numbers('2026-04-01T17:59Z', ...list)).toEqual([1, 2, 4]);
    expect(numbers('2026-04-01T18:00Z', ...list)).toEqual([1, 2, 3, 4]);
    const together = list.map(([, change]) => ['2026-03-10', change] as const);
    expect(numbers('2026-02-03T12:00Z', ...together)).toEqual([1, 2, 3, 4]);
  });

  it('takes what names no day to be of the latest day of the work that it was recorded with', () => {
    const list = [
      ['2026-03-10', added],
      ['2026-03-10', read(100, '2026-01-20T12:00Z')],
      ['2026-03-10', fit('2026-02-05')],
      ['2026-03-10', annual('2026-02-03')],
      ['2026-03-10', placard],
    ] as const;
    expect(numbers('2026-02-03T12:00Z', ...list)).toEqual([1, 2, 4]);
    expect(knownNow(written(...list), '2026-02-03T12:00Z', zone).undated).toBe(0);
    expect(numbers('2026-02-05T12:00Z', ...list)).toEqual([1, 2, 3, 4, 5]);
  });

  it('knows the aircraft itself at any time', () => {
    expect(numbers('2025-12-01T12:00Z', ['2026-01-01', added], ['2026-01-02', placard])).toEqual([1]);
  });
});

describe('what differs between two dossiers', () => {
  it('is named by place and thing, with how it was and how it is', () => {
    const before = replay([added, fit('2026-02-03')]);
    const after = replay([added, fit('2026-02-03'), amend, placard]);
    const found = differencesOf(before, after);
    expect(found.map(({ place, id }) => [place, id])).toEqual([
      ['units', 'gps1'],
      ['placards', 'p1'],
    ]);
    expect(found[0]).toMatchObject({ was: { serial: null }, is: { serial: 'S-9' } });
    expect(found[1]).toMatchObject({ was: null, is: { text: 'Fly slowly' } });
    expect(differencesOf(after, after)).toEqual([]);
  });

  it('tells readings by their meter, and lists that name their members otherwise', () => {
    const meter: Change = {
      kind: 'meter.define',
      version: 1,
      definition: { id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 },
      standsForTimeInService: true,
    };
    const items: Change = {
      kind: 'equipment.state',
      version: 1,
      items: [{ item: 'clock', state: 'fitted', unitId: null, seen: null }],
    };
    const found = differencesOf(replay([added]), replay([added, meter, read(100, '2026-02-03T09:00Z'), items]));
    expect(found.map(({ place, id }) => [place, id])).toEqual([
      ['equipment', 'clock'],
      ['definitions', 'tach'],
      ['timeInService', null],
      ['readings', 'tach'],
    ]);
  });
});
