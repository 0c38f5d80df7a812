import { mechanic, pilot, recordOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { RecordHead } from '../../dossier/status.js';
import type { RecurringItem } from '../../dossier/upkeep.js';
import { continuedAirworthinessItems } from './continued-airworthiness-items.js';

const stated = { asOf: '2026-01-10', by: 'R. Tamsin' };
const item = (part: Partial<RecurringItem> = {}): RecurringItem => ({
  id: 'drain',
  name: 'Drain holes of the rudder',
  subject: 'drain',
  origin: 'airworthiness-limitation',
  document: { title: 'Airworthiness limitations', revision: '2', date: null },
  parts: [{ kind: 'calendar-months', count: 12, meter: null, tolerance: null }],
  combine: 'first',
  countFrom: 'done',
  toleranceFor: 'none',
  ...part,
});
const done = (part: Partial<RecordHead> = {}) =>
  recordOf({
    kind: 'own-item',
    subjects: ['drain'],
    on: '2025-05-10',
    agency: mechanic,
    meters: [{ meter: 'tach', value: 400_000 }],
    ...part,
  });
const of = (items: readonly RecurringItem[], records: readonly RecordHead[] = [done()]): Dossier =>
  dossierOf({
    status: { recurring: items, records, completeness: [{ list: 'recurring', stated }] },
    meters: {
      definitions: [{ id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 }],
      readings: { tach: { value: 409_900, asOf: '2026-05-20T12:00Z', by: 'A. Lorne' } },
      timeInService: 'tach',
    },
  });
const hours = (count: number) => ({ kind: 'hours', count, meter: 'tach', tolerance: null }) as const;
const at = '2026-05-21T12:00Z';

// Done in May 2025: twelve calendar months run to the end of 31 May 2026, 0500 UTC in Chicago. 91.403(c), 43.16.
testRule(continuedAirworthinessItems, [
  { name: 'the last minute', dossier: of([item()]), at: '2026-06-01T04:59Z', expect: 'met', message: 'current' },
  {
    name: 'the minute after',
    dossier: of([item()]),
    at: '2026-06-01T05:00Z',
    expect: 'not-met',
    message: 'lapsed',
    data: { item: 'Drain holes of the rudder', done: '2025-05-10' },
  },
  {
    name: 'exactly its hours',
    dossier: of([item({ parts: [hours(10_000)] })]),
    at,
    hoursAhead: 100,
    expect: 'met',
  },
  { name: 'a hundredth over', dossier: of([item({ parts: [hours(10_000)] })]), at, hoursAhead: 101, expect: 'not-met' },
  {
    name: 'a tolerance makes nothing ready',
    dossier: of([
      item({ parts: [{ kind: 'days', count: 30, meter: null, tolerance: 400 }], toleranceFor: 'any', document: null }),
    ]),
    at,
    expect: 'not-met',
  },
  { name: 'nothing entered', dossier: of([item()], []), at, expect: 'cannot-tell', message: 'unclear' },
  { name: 'signed by a pilot', dossier: of([item()], [done({ agency: pilot })]), at, expect: 'not-met' },
  {
    name: 'hours that name no meter',
    dossier: of([item({ parts: [{ ...hours(10_000), meter: null }] })]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'hours at which it was done not recorded',
    dossier: of([item({ parts: [hours(10_000)] })], [done({ meters: [] })]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'of the instructions, not of the limitations',
    dossier: of([item({ origin: 'continued-airworthiness' })]),
    at: '2026-06-01T05:00Z',
    expect: 'not-met',
  },
  { name: 'an own item is another rule', dossier: of([item({ origin: 'own' })]), at, subject: 'drain', expect: 'none' },
  {
    name: 'the list stated complete',
    dossier: of([]),
    at,
    subject: 'recurring-list',
    expect: 'met',
    message: 'stated',
  },
  {
    name: 'nobody stated the list complete',
    dossier: dossierOf({}),
    at,
    subject: 'recurring-list',
    expect: 'cannot-tell',
    message: 'unstated',
  },
]);
