import { describe, expect, it, test } from 'vitest';
import { judgeWork, startWork, type WorkForm, type WorkKind } from './meter-work.js';
import type { SheetMeter, SheetRow } from './query.js';

const now = '2026-03-10T12:00Z';
const tach = {
  id: 'tach',
  name: 'Tachometer',
  kind: 'tachometer',
  timeInService: true,
  perFlightHour: 0.8,
  offset: 600.5,
  hours: 1250.3,
  asOf: '2026-03-09T12:00Z',
} as SheetMeter;
const row = {
  aircraft: { id: 'a', registration: 'TW-A', base: { id: 'field', name: 'Field', zone: 'America/Chicago' } },
  revision: 7,
  hoursPerMonth: 30,
  readingGoodForDays: 31,
  ownReadingAge: null,
  meters: [tach],
} as SheetRow;

const judge = (work: WorkKind, typed: Partial<WorkForm>, meter: SheetMeter | null = tach) =>
  judgeWork(work, { ...startWork(row, meter, '2026-03-10T07:00'), ...typed }, { row, meter, now, by: 'A. Tester' });

describe('a new dial', () => {
  it('takes what both dials show, and when', () => {
    // The old dial showed 649.8 at its last reading: 1250.3 in all, 600.5 of it from the dial before.
    expect(judge('replace', { oldDial: '650', newDial: '0.2' }).change).toEqual({
      meterReplace: { meter: 'tach', oldDial: 65_000, newDial: 20, at: '2026-03-10T12:00Z', by: 'A. Tester' },
    });
    expect(judge('replace', { oldDial: '649.8' }).problems).toEqual({});
  });

  it('cannot have shown less than was read, nor be put in later than now', () => {
    expect(judge('replace', { oldDial: '649.79' })).toMatchObject({
      change: null,
      problems: { oldDial: expect.stringContaining('649.8') as string },
    });
    expect(judge('replace', { oldDial: '650', at: '2026-03-10T07:01' }).problems).toHaveProperty('at');
    expect(judge('replace', { oldDial: '' }).problems).toHaveProperty('oldDial');
  });
});

describe('a wrong reading', () => {
  it('is corrected by what the dial really showed, with the reason', () => {
    expect(judge('correct', { dial: '640,5', at: '2026-03-09T07:00', reason: ' Misread ' }).change).toEqual({
      meterCorrect: { meter: 'tach', value: 124_100, asOf: '2026-03-09T12:00Z', by: 'A. Tester', reason: 'Misread' },
    });
    expect(judge('correct', { dial: '640', reason: '  ' })).toMatchObject({
      change: null,
      problems: { reason: expect.any(String) as string },
    });
  });
});

describe('a definition', () => {
  it('keeps id and offset of the meter it is of', () => {
    expect(judge('define', { name: 'Recording tachometer' }).change).toEqual({
      meterDefine: {
        definition: {
          id: 'tach',
          name: 'Recording tachometer',
          kind: 'TACHOMETER',
          perFlightHour: 800,
          offset: 60_050,
        },
        standsForTimeInService: true,
      },
    });
  });

  it('of a new meter makes up an id that no other has, and stands for time in service only where none does', () => {
    expect(judge('another', { ...startWork(row, null, ''), name: 'Tach', kind: 'hour-meter' }).change).toEqual({
      meterDefine: {
        definition: { id: 'tach-2', name: 'Tach', kind: 'HOUR_METER', perFlightHour: 1000, offset: 0 },
        standsForTimeInService: false,
      },
    });
    expect(startWork({ ...row, meters: [] }, null, '').standsFor).toBe(true);
    expect(judge('define', { name: 'Recorder' }, null).change).toMatchObject({
      meterDefine: { definition: { id: 'recorder' } },
    });
  });

  it('needs a name and a pace from 0 to 5', () => {
    expect(judge('define', { name: '', pace: '5.1' }).problems).toEqual({
      name: expect.any(String) as string,
      pace: expect.any(String) as string,
    });
    expect(judge('define', { pace: '5' }).problems).toEqual({});
  });
});

test('the use of the aircraft and the age of readings are set together; empty is not recorded, or as the house says', () => {
  expect(judge('use', {}).change).toEqual({
    utilisationSet: { utilisation: { perMonth: 3000, readingGoodForDays: null } },
  });
  expect(judge('use', { perMonth: '', goodForDays: '10' }).change).toEqual({
    utilisationSet: { utilisation: { perMonth: null, readingGoodForDays: 10 } },
  });
  expect(judge('use', { perMonth: 'much', goodForDays: '0' })).toMatchObject({
    change: null,
    problems: { perMonth: expect.any(String) as string, goodForDays: expect.any(String) as string },
  });
});
