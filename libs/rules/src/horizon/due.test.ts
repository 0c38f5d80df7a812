import { describe, expect, it } from 'vitest';
import { trainer, trainerCatalogue } from '../../testing/trainer.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Part } from '../../testing/dossiers.js';
import { dueItemsOf } from './due.js';

const itemOf = (ruleId: string, part: Part<Dossier> = {}) =>
  dueItemsOf(trainer(part), trainerCatalogue).find((each) => each.ruleId === ruleId);
const used = (perMonth: number | null): Part<Dossier> => ({
  meters: { utilisation: { perMonth, readingGoodForDays: 31 } },
});

describe('what falls due', () => {
  it('by a day is certain', () => {
    expect(itemOf('vor-check')).toEqual({
      ruleId: 'vor-check',
      topic: 'inspections',
      subject: 'nav1',
      what: 'vor-check',
      effect: 'stops-operation',
      lastGoodDay: '2026-03-31',
      lapses: '2026-04-01T05:00Z',
      meter: null,
      at: null,
      hoursLeft: null,
      projected: null,
      expected: '2026-04-01T05:00Z',
      combine: 'first',
      readingEnds: null,
    });
  });

  it('by hours is expected when the use since the latest reading has flown them', () => {
    // 70 h left at 50 h a month: 1.4 months of 43,830 minutes are 61,362 minutes from 15 March, 20:00.
    expect(itemOf('hundred-hour-inspection')).toMatchObject({
      effect: 'stops-operation',
      lastGoodDay: null,
      lapses: null,
      meter: 'tach',
      at: 414_000,
      hoursLeft: 7000,
      projected: '2026-04-27T10:42Z',
      expected: '2026-04-27T10:42Z',
      // The reading of 15 March counts for 31 days.
      readingEnds: '2026-04-15T20:00Z',
    });
  });

  it.each([null, 0])('by hours is expected at no time with a use of %s', (perMonth) => {
    expect(itemOf('hundred-hour-inspection', used(perMonth))).toMatchObject({
      hoursLeft: 7000,
      projected: null,
      expected: null,
    });
  });

  it('of a use that ends beyond all calendars is expected at no time', () => {
    expect(itemOf('hundred-hour-inspection', used(9))?.projected).toBe('2091-01-07T10:40Z');
    expect(itemOf('hundred-hour-inspection', used(8))?.projected).toBeNull();
  });

  it('what was overflown was due at the latest reading', () => {
    const tach = { value: 415_000, asOf: '2026-03-15T20:00Z', by: 'Desk' };
    expect(itemOf('hundred-hour-inspection', { meters: { readings: { tach } } })).toMatchObject({
      hoursLeft: -1000,
      projected: '2026-03-15T20:00Z',
    });
  });
});

describe('by a day and by hours', () => {
  const both = (combine: 'first' | 'last', date: string, perMonth: number | null = 5000) =>
    dueItemsOf(
      trainer(used(perMonth), {
        status: {
          directives: [
            {
              id: 'ad',
              number: 'TW-1',
              subject: 'aircraft',
              state: 'complied',
              reason: null,
              method: 'Paragraph (a)',
              partNumber: null,
              serial: null,
              recurs: true,
              interval: null,
              nextDue: { by: combine, date, meter: 'tach', at: 414_000 },
              recordId: null,
            },
          ],
        },
      }),
      trainerCatalogue,
    ).find((each) => each.ruleId === 'directives' && each.meter === 'tach');

  it.each([
    ['first', '2026-04-01', '2026-04-02T05:00Z'],
    ['first', '2026-06-01', '2026-04-27T10:42Z'],
    ['last', '2026-04-01', '2026-04-27T10:42Z'],
    ['last', '2026-06-01', '2026-06-02T05:00Z'],
  ] as const)('whichever is %s, with %s, is expected at %s', (combine, date, expected) => {
    expect(both(combine, date)).toMatchObject({ expected, combine });
  });

  it('with no use recorded the day alone is expected, also where the last counts', () => {
    for (const combine of ['first', 'last'] as const)
      expect(both(combine, '2026-04-01', null)).toMatchObject({ projected: null, expected: '2026-04-02T05:00Z' });
  });
});

it('nothing falls due of a statement that has no due point', () => {
  for (const each of dueItemsOf(trainer(), trainerCatalogue)) {
    expect(each.what).toMatch(/^[a-z][a-z-]+$/);
    expect([each.lapses, each.at]).not.toEqual([null, null]);
  }
});
