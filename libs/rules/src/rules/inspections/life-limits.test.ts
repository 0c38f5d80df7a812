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
  retireBy: { by: 'first', date: '2026-05-31', meter: 'tach', at: 410_000 },
  ...part,
});
const of = (limits: readonly LifeLimit[], complete = true): Dossier =>
  dossierOf({
    status: { lifeLimits: limits, completeness: complete ? [{ list: 'life-limits', stated }] : [] },
    meters: {
      definitions: [{ id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 }],
      readings: { tach: { value: 409_900, asOf: '2026-05-20T12:00Z', by: 'A. Lorne' } },
      timeInService: 'tach',
    },
  });
const by = (retireBy: LifeLimit['retireBy'], part: Partial<LifeLimit> = {}) => of([limit({ retireBy, ...part })]);
const day = { by: 'date', date: '2026-05-31', meter: null, at: null } as const;
const hours = { by: 'meter', date: null, meter: 'tach', at: 410_000 } as const;

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
