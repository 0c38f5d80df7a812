import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { LifeLimit } from '../../dossier/upkeep.js';
import { lifeLimits } from './life-limits.js';

const stated = { asOf: '2026-01-10', by: 'R. Tamsin' };
const limit = (part: Partial<LifeLimit>): LifeLimit => ({
  id: 'hose',
  name: 'Fuel hose',
  serial: 'H1',
  subject: 'hose',
  mandatory: true,
  document: { title: 'Airworthiness limitations', revision: '2', date: null },
  life: null,
  retireBy: { by: 'first', date: '2026-05-31', meter: 'tach', at: 410_000 },
  ...part,
});
const of = (limits: readonly LifeLimit[], complete = true): Dossier =>
  dossierOf({
    status: { lifeLimits: limits, completeness: complete ? [{ list: 'life-limits', stated }] : [] },
    meters: {
      definitions: [
        { id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 },
        { id: 'landings', name: 'Landings', kind: 'landings', perFlightHour: 0, offset: 0 },
      ],
      readings: {
        tach: { value: 409_900, asOf: '2026-05-20T12:00Z', by: 'A. Lorne' },
        landings: { value: 11_999, asOf: '2026-05-20T12:00Z', by: 'A. Lorne' },
      },
      timeInService: 'tach',
    },
  });
const by = (retireBy: LifeLimit['retireBy'], part: Partial<LifeLimit> = {}) => of([limit({ retireBy, ...part })]);
const day = { by: 'date', date: '2026-05-31', meter: null, at: null } as const;
const hours = { by: 'meter', date: null, meter: 'tach', at: 410_000 } as const;
const parts = {
  years: { kind: 'anniversary-months', count: 120, meter: null, tolerance: null },
  hours: { kind: 'hours', count: 120_000, meter: 'tach', tolerance: null },
  landings: { kind: 'landings', count: 5_000, meter: 'landings', tolerance: null },
} as const;
const life = (
  names: readonly (keyof typeof parts)[],
  part: Partial<NonNullable<LifeLimit['life']>> = {},
  more: Partial<LifeLimit> = {},
): Dossier =>
  of([
    limit({
      retireBy: null,
      life: {
        parts: names.map((each) => parts[each]),
        combine: 'first',
        from: '2016-05-31',
        // Fitted at 3,500 h with 600 h behind it: 1,200 h of life end at 4,100 h.
        meters: [
          { meter: 'tach', at: 350_000, used: 60_000 },
          { meter: 'landings', at: 7_000, used: 0 },
        ],
        ...part,
      },
      ...more,
    }),
  ]);

// Chicago is on UTC-5 in May: the last day ends on 1 June at 0500 UTC. 91.403(c).
testRule(lifeLimits, [
  {
    name: 'the last minute of the last day',
    dossier: by(day),
    at: '2026-06-01T04:59Z',
    expect: 'met',
    message: 'within',
  },
  {
    name: 'the first minute after it',
    dossier: by(day),
    at: '2026-06-01T05:00Z',
    expect: 'not-met',
    message: 'beyond',
  },
  { name: 'exactly its hours', dossier: by(hours), at: '2026-05-21T12:00Z', hoursAhead: 100, expect: 'met' },
  { name: 'a hundredth over', dossier: by(hours), at: '2026-05-21T12:00Z', hoursAhead: 101, expect: 'not-met' },
  {
    name: 'both given, the day past: the earlier ends it',
    dossier: of([limit({})]),
    at: '2026-06-01T05:00Z',
    expect: 'not-met',
    data: { part: 'Fuel hose', retire: '2026-05-31 or 4100 h' },
  },
  {
    name: 'both given, the hours past',
    dossier: of([limit({})]),
    at: '2026-05-21T12:00Z',
    hoursAhead: 101,
    expect: 'not-met',
  },
  {
    name: 'neither day nor hours recorded',
    dossier: by({ by: 'first', date: null, meter: null, at: null }),
    at: '2026-05-21T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'hours without a meter',
    dossier: by({ by: 'meter', date: null, meter: null, at: 410_000 }),
    at: '2026-05-21T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'a meter without hours',
    dossier: by({ by: 'meter', date: null, meter: 'tach', at: null }),
    at: '2026-05-21T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'nobody knows whether it binds, within',
    dossier: by(day, { mandatory: null }),
    at: '2026-06-01T04:59Z',
    expect: 'met',
  },
  {
    name: 'nobody knows whether it binds, beyond',
    dossier: by(day, { mandatory: null }),
    at: '2026-06-01T05:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'advice only, beyond',
    dossier: by(day, { mandatory: false, document: null }),
    at: '2026-06-01T05:00Z',
    expect: 'not-met',
  },
  // The life itself, counted by the recurrence engine from where it began.
  {
    name: 'ten years to the day, the last minute',
    dossier: life(['years']),
    at: '2026-06-01T04:59Z',
    expect: 'met',
    message: 'within',
    data: { retire: '2026-05-31' },
  },
  {
    name: 'ten years to the day, the next minute',
    dossier: life(['years']),
    at: '2026-06-01T05:00Z',
    expect: 'not-met',
  },
  {
    name: 'ten years from a day that nobody recorded',
    dossier: life(['years'], { from: null }),
    at: '2026-05-21T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
    data: { retire: 'day not recorded' },
  },
  {
    name: 'hours behind it when it was fitted, to the hour',
    dossier: life(['hours']),
    at: '2026-05-21T12:00Z',
    hoursAhead: 100,
    expect: 'met',
    data: { retire: '4100 h' },
  },
  {
    name: 'hours behind it when it was fitted, a hundredth over',
    dossier: life(['hours']),
    at: '2026-05-21T12:00Z',
    hoursAhead: 101,
    expect: 'not-met',
    message: 'beyond',
  },
  {
    name: 'nobody recorded what it had behind it',
    dossier: life(['hours'], { meters: [{ meter: 'tach', at: 350_000, used: null }] }),
    at: '2026-05-21T12:00Z',
    expect: 'cannot-tell',
    data: { retire: 'hours not recorded' },
  },
  {
    name: 'nobody recorded where the meter stood when it was fitted',
    dossier: life(['hours'], { meters: [{ meter: 'tach', at: null, used: 0 }] }),
    at: '2026-05-21T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'used up before it was fitted: more behind it than its life',
    dossier: life(['hours'], { meters: [{ meter: 'tach', at: 10_000, used: 130_000 }] }),
    at: '2026-05-21T12:00Z',
    expect: 'not-met',
    data: { retire: '0 h' },
  },
  {
    name: 'landings left',
    dossier: life(['landings'], { meters: [{ meter: 'landings', at: 7_000, used: 1 }] }),
    at: '2026-05-21T12:00Z',
    expect: 'met',
  },
  {
    name: 'landings used up',
    dossier: life(['landings'], { meters: [{ meter: 'landings', at: 7_000, used: 2 }] }),
    at: '2026-05-21T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'an interval in hours that names no meter',
    dossier: life([], { parts: [{ ...parts.hours, meter: null }] }),
    at: '2026-05-21T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'ten years or 1,200 h, whichever comes first',
    dossier: life(['years', 'hours']),
    at: '2026-05-21T12:00Z',
    hoursAhead: 101,
    expect: 'not-met',
    data: { retire: '2026-05-31 or 4100 h' },
  },
  {
    name: 'a point stated beside the life ends it earlier',
    dossier: life(['hours'], {}, { retireBy: { by: 'meter', date: null, meter: 'tach', at: 409_900 } }),
    at: '2026-05-21T12:00Z',
    hoursAhead: 1,
    expect: 'not-met',
    states: ['status.lifeLimits.0.retireBy'],
  },
  {
    name: 'the life ends before the point stated beside it',
    dossier: life(['hours'], {}, { retireBy: { by: 'meter', date: null, meter: 'tach', at: 420_000 } }),
    at: '2026-05-21T12:00Z',
    hoursAhead: 101,
    expect: 'not-met',
    states: ['status.lifeLimits.0.life'],
  },
  {
    name: 'neither a life nor a point recorded',
    dossier: life([], {}, { life: null }),
    at: '2026-05-21T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
    data: { retire: 'not recorded' },
  },
  {
    name: 'the list stated complete, and empty',
    dossier: of([]),
    at: '2026-05-21T12:00Z',
    subject: 'life-limits-list',
    expect: 'met',
    message: 'stated',
  },
  {
    name: 'nobody stated the list complete',
    dossier: of([], false),
    at: '2026-05-21T12:00Z',
    subject: 'life-limits-list',
    expect: 'cannot-tell',
    message: 'unstated',
  },
]);
