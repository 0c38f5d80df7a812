import { mechanic, pilot, recordOf, unitOf } from '../../../testing/builders.js';
import type { Part } from '../../../testing/dossiers.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { Directive, RecordHead } from '../../dossier/status.js';
import { directives } from './directives.js';

const at = '2026-03-02T14:00Z';
const entry = (part: Partial<RecordHead> & { readonly on?: string } = {}) =>
  recordOf({ kind: 'directive-compliance', on: '2025-09-10', subjects: ['dir1'], agency: mechanic, ...part });
const directive = (part: Partial<Directive> = {}): Directive => ({
  id: 'dir1',
  number: '2019-03-07',
  subject: 'aircraft',
  state: 'complied',
  reason: null,
  method: 'Paragraph (g)(1)',
  partNumber: null,
  serial: null,
  recurs: false,
  interval: null,
  nextDue: null,
  recordId: entry().id,
  ...part,
});
const meters: Part<Dossier> = {
  meters: {
    definitions: [{ id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 }],
    timeInService: 'tach',
    readings: { tach: { value: 410_000, asOf: '2026-03-01T20:00Z', by: 'Desk' } },
  },
};
const aircraft = (list: readonly Directive[], records: readonly RecordHead[] = [entry()], more: Part<Dossier> = {}) =>
  dossierOf(meters, { status: { directives: list, records } }, more);
const due = (by: 'date' | 'meter' | 'first' | 'last', date: string | null, hours: number | null) => ({
  recurs: true,
  nextDue: { by, date, meter: 'tach', at: hours },
});
const parts = {
  months: { kind: 'calendar-months', count: 12, meter: null, tolerance: null },
  hours: { kind: 'hours', count: 10_000, meter: 'tach', tolerance: 1_000 },
} as const;
const every = (
  names: readonly (keyof typeof parts)[],
  part: Partial<NonNullable<Directive['interval']>> = {},
): Partial<Directive> => ({
  recurs: true,
  interval: {
    parts: names.map((each) => parts[each]),
    combine: 'first',
    countFrom: 'done',
    toleranceFor: 'none',
    ...part,
  },
});
// Twelve calendar months from March 2025 end with March 2026; a hundred hours from 4,050 with 4,150.
const inMarch = entry({ on: '2025-03-10', meters: [{ meter: 'tach', value: 405_000 }] });
const repeated = (part: Partial<Directive>, records: readonly RecordHead[] = [inMarch], more: Part<Dossier> = {}) =>
  aircraft([directive({ recordId: inMarch.id, ...part })], records, more);
const onUnit = (part: Partial<Directive>, serial: string | null = 'N-7'): Dossier =>
  aircraft([directive({ subject: 'gps1', ...part })], [entry()], {
    configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'], serial })] },
  });
const base = { at, subject: 'dir1' };
// The base lies in Chicago: its 31 March ends at 05:00 UTC on 1 April.
const lastMinute = '2026-04-01T04:59Z';
const nextMinute = '2026-04-01T05:00Z';
const readLate: Part<Dossier> = {
  meters: { readings: { tach: { value: 410_000, asOf: '2026-03-31T20:00Z', by: 'Desk' } } },
};
const stated = (asOf: string): Part<Dossier> => ({
  status: { completeness: [{ list: 'directives', stated: { asOf, by: 'R. Tamsin' } }] },
});

// 14 CFR 39.7: operating a product that misses a directive. No provision to overfly the stated time.
testRule(directives, [
  { ...base, name: 'one-time, complied with', dossier: aircraft([directive()]), expect: 'met', message: 'done' },
  {
    ...base,
    name: 'complied with, entry reported but not seen',
    dossier: aircraft([directive()], [entry({ evidence: 'reported' })]),
    expect: 'not-met',
    message: 'unproven',
  },
  {
    ...base,
    name: 'complied with, no entry named',
    dossier: aircraft([directive({ recordId: null })]),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'the entry of it' },
  },
  { ...base, name: 'complied with, entry gone', dossier: aircraft([directive()], []), expect: 'cannot-tell' },
  {
    ...base,
    name: 'complied with, method not recorded',
    dossier: aircraft([directive({ method: null })]),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'one entry may cover several directives',
    dossier: aircraft([directive({ id: 'dir1' }), directive({ id: 'dir2' })], [entry({ subjects: ['dir1', 'dir2'] })]),
    subject: 'dir2',
    expect: 'met',
  },
  // 14 CFR 43.3, 43.9(a)(4): whoever may maintain signs, with certificate number.
  {
    ...base,
    name: 'complied with, the entry says failed',
    dossier: aircraft([directive()], [entry({ outcome: 'failed' })]),
    expect: 'not-met',
    message: 'unproven',
  },
  {
    ...base,
    name: 'complied with, the entry says nothing of the outcome',
    dossier: aircraft([directive()], [entry({ outcome: null })]),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'complied with, signed by a pilot',
    dossier: aircraft([directive()], [entry({ agency: pilot })]),
    expect: 'not-met',
    message: 'unproven',
  },
  {
    ...base,
    name: 'complied with, signed by nobody',
    dossier: aircraft([directive()], [entry({ agency: null })]),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'who did it' },
  },
  {
    ...base,
    name: 'complied with, signed without a certificate number',
    dossier: aircraft([directive()], [entry({ agency: { ...mechanic, certificate: null } })]),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'complied with, the entry is a VOR check',
    dossier: aircraft([directive()], [entry({ id: entry().id, kind: 'vor-check' })]),
    expect: 'not-met',
    message: 'unproven',
  },
  {
    ...base,
    name: 'complied with, the entry is of another directive',
    dossier: aircraft([directive()], [entry({ subjects: ['dir2'] })]),
    expect: 'not-met',
    message: 'unproven',
  },
  {
    ...base,
    name: 'complied with, a newer entry of the directive failed',
    dossier: aircraft([directive()], [entry(), entry({ id: 'later', on: '2026-01-10', outcome: 'failed' })]),
    expect: 'not-met',
    message: 'unproven',
  },
  // By date: good through the stated day.
  {
    ...base,
    name: 'recurring by date, last minute of the day',
    dossier: aircraft([directive(due('date', '2026-03-31', null))]),
    at: lastMinute,
    expect: 'met',
    message: 'in-time',
    data: { next: '2026-03-31' },
  },
  {
    ...base,
    name: 'recurring by date, the next minute',
    dossier: aircraft([directive(due('date', '2026-03-31', null))]),
    at: nextMinute,
    expect: 'not-met',
    message: 'overdue',
  },
  {
    ...base,
    name: 'recurring by date, day not recorded',
    dossier: aircraft([directive(due('date', null, null))]),
    expect: 'cannot-tell',
  },
  // By hours: at the limit still good, one hundredth over it not; the tachometer stood at 4,100.00.
  {
    ...base,
    name: 'recurring by hours, at the limit',
    dossier: aircraft([directive(due('meter', null, 415_000))]),
    hoursAhead: 5_000,
    expect: 'met',
    data: { next: '4150 h' },
  },
  {
    ...base,
    name: 'recurring by hours, one hundredth of an hour over',
    dossier: aircraft([directive(due('meter', null, 415_000))]),
    hoursAhead: 5_001,
    expect: 'not-met',
  },
  {
    ...base,
    name: 'ten hours over on the way to the shop: no allowance',
    dossier: aircraft([directive(due('meter', null, 415_000))]),
    hoursAhead: 6_000,
    flight: { purpose: 'ferry', crewOnly: true },
    expect: 'not-met',
  },
  {
    ...base,
    name: 'recurring by hours, hours not recorded',
    dossier: aircraft([directive(due('meter', null, null))]),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'recurring by hours, meter not recorded',
    dossier: aircraft([directive({ recurs: true, nextDue: { by: 'meter', date: null, meter: null, at: 415_000 } })]),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'recurring by hours, meter read too long ago',
    dossier: aircraft([directive(due('meter', null, 415_000))]),
    at: '2026-05-01T12:00Z',
    expect: 'cannot-tell',
  },
  // Both: the earlier decides, or the later where the directive says so.
  {
    ...base,
    name: 'whichever first: hours left, day passed',
    dossier: aircraft([directive(due('first', '2026-03-31', 415_000))], [entry()], readLate),
    at: nextMinute,
    expect: 'not-met',
    data: { next: '2026-03-31 or 4150 h' },
  },
  {
    ...base,
    name: 'whichever first: day not come, hours passed',
    dossier: aircraft([directive(due('first', '2026-03-31', 415_000))]),
    hoursAhead: 5_001,
    expect: 'not-met',
  },
  {
    ...base,
    name: 'whichever first: neither passed',
    dossier: aircraft([directive(due('first', '2026-03-31', 415_000))], [entry()], readLate),
    at: lastMinute,
    hoursAhead: 5_000,
    expect: 'met',
  },
  {
    ...base,
    name: 'whichever last: day passed, hours left',
    dossier: aircraft([directive(due('last', '2026-03-31', 415_000))], [entry()], readLate),
    at: nextMinute,
    expect: 'met',
  },
  {
    ...base,
    name: 'whichever last: both passed',
    dossier: aircraft([directive(due('last', '2026-03-31', 415_000))], [entry()], readLate),
    at: nextMinute,
    hoursAhead: 5_001,
    expect: 'not-met',
  },
  {
    ...base,
    name: 'whichever first: day not recorded',
    dossier: aircraft([directive(due('first', null, 415_000))]),
    expect: 'cannot-tell',
  },
  // Whether it comes again must be read up: 14 CFR 91.417(a)(2)(v) asks time and date of the next action of a recurring one.
  {
    ...base,
    name: 'complied with, nobody read up whether it recurs',
    dossier: aircraft([directive({ recurs: null })]),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'whether it recurs' },
  },
  {
    ...base,
    name: 'recurring, neither interval nor next due recorded',
    dossier: aircraft([directive({ recurs: true })]),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'interval, when it is due next' },
  },
  // By the recurrence engine, from the entry.
  {
    ...base,
    name: 'every 12 calendar months, last minute',
    dossier: repeated(every(['months'])),
    at: lastMinute,
    expect: 'met',
    message: 'in-time',
    data: { next: '2026-03-31' },
  },
  {
    ...base,
    name: 'every 12 calendar months, the next minute',
    dossier: repeated(every(['months'])),
    at: nextMinute,
    expect: 'not-met',
    message: 'overdue',
  },
  {
    ...base,
    name: 'every 100 hours, at the hundredth hour',
    dossier: repeated(every(['hours'])),
    hoursAhead: 5_000,
    expect: 'met',
    data: { next: '4150 h' },
  },
  {
    ...base,
    name: 'every 100 hours, one hundredth of an hour over',
    dossier: repeated(every(['hours'])),
    hoursAhead: 5_001,
    expect: 'not-met',
    message: 'overdue',
  },
  {
    ...base,
    name: 'every 100 hours, a tolerance of its text makes nothing ready',
    dossier: repeated(every(['hours'], { toleranceFor: 'any' })),
    hoursAhead: 5_001,
    expect: 'not-met',
  },
  {
    ...base,
    name: 'every 100 hours, the reading is too old',
    dossier: repeated(every(['hours'])),
    at: '2026-04-01T20:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'a newer meter reading' },
  },
  {
    ...base,
    name: 'every 100 hours, the entry names no hours',
    dossier: repeated(every(['hours']), [{ ...inMarch, meters: [] }]),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'meter readings' },
  },
  {
    ...base,
    name: 'every 100 hours, the interval names no meter',
    dossier: repeated(every(['hours'], { parts: [{ ...parts.hours, meter: null }] })),
    expect: 'cannot-tell',
    data: { unrecorded: 'parts' },
  },
  {
    ...base,
    name: '12 months or 100 hours, whichever first: hours passed',
    dossier: repeated(every(['months', 'hours'])),
    hoursAhead: 5_001,
    expect: 'not-met',
    data: { next: '2026-03-31 or 4150 h' },
  },
  {
    ...base,
    name: '12 months or 100 hours, whichever last: hours passed',
    dossier: repeated(every(['months', 'hours'], { combine: 'last' })),
    hoursAhead: 5_001,
    expect: 'met',
  },
  {
    ...base,
    name: '12 months or 100 hours, whichever last: both passed',
    dossier: repeated(every(['months', 'hours'], { combine: 'last' }), [inMarch], readLate),
    at: nextMinute,
    hoursAhead: 5_001,
    expect: 'not-met',
  },
  // 405,000 was due at 404,000: the next counts from there.
  {
    ...base,
    name: 'counted from when it was due, at the limit',
    dossier: repeated(every(['hours'], { countFrom: 'due' }), [{ ...inMarch, dueAt: 404_000 }]),
    hoursAhead: 4_000,
    expect: 'met',
  },
  {
    ...base,
    name: 'counted from when it was due, one hundredth over',
    dossier: repeated(every(['hours'], { countFrom: 'due' }), [{ ...inMarch, dueAt: 404_000 }]),
    hoursAhead: 4_001,
    expect: 'not-met',
  },
  {
    ...base,
    name: 'done again: counted on from the newer entry, whatever was stated with the older',
    dossier: repeated({ ...every(['months']), nextDue: { by: 'date', date: '2026-03-31', meter: null, at: null } }, [
      inMarch,
      entry({ id: 'again', on: '2026-03-01' }),
    ]),
    at: nextMinute,
    expect: 'met',
    data: { next: '2027-03-31' },
  },
  {
    ...base,
    name: 'the point stated with the entry is earlier than its interval: the earlier decides',
    dossier: repeated({ ...every(['months']), nextDue: { by: 'date', date: '2026-02-28', meter: null, at: null } }),
    expect: 'not-met',
    message: 'overdue',
    data: { next: '2026-03-31 or 2026-02-28' },
  },
  {
    ...base,
    name: 'the point stated with the entry is later than its interval: the earlier decides',
    dossier: repeated({ ...every(['months']), nextDue: { by: 'date', date: '2026-04-30', meter: null, at: null } }),
    at: nextMinute,
    expect: 'not-met',
    states: ['status.directives.0.interval'],
  },
  {
    ...base,
    name: 'recurring, the newest entry says failed',
    dossier: repeated(every(['months']), [inMarch, entry({ id: 'again', on: '2026-02-01', outcome: 'failed' })]),
    expect: 'not-met',
    message: 'unproven',
  },
  {
    ...base,
    name: 'recurring, no entry at all',
    dossier: repeated(every(['months']), []),
    expect: 'cannot-tell',
  },
  // By unit, part and serial.
  {
    ...base,
    name: 'done on the serial number that is fitted',
    dossier: onUnit({ serial: 'N-7' }),
    expect: 'met',
    message: 'done',
  },
  {
    ...base,
    name: 'done on another serial number than the one fitted',
    dossier: onUnit({ serial: 'N-8' }),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'serial number' },
    states: ['status.directives.0.serial'],
  },
  {
    ...base,
    name: 'done on a serial number, the one fitted is not recorded',
    dossier: onUnit({ serial: 'N-7' }, null),
    expect: 'cannot-tell',
    states: ['status.directives.0.serial'],
  },
  {
    ...base,
    name: 'does not apply to a serial number that is not the one fitted',
    dossier: onUnit({ state: 'not-applicable', reason: 'Serial number below 100.', serial: 'N-8' }),
    expect: 'cannot-tell',
    message: 'unclear',
    states: ['status.directives.0.serial'],
  },
  {
    ...base,
    name: 'looked up for a part number, the unit is of no type',
    dossier: onUnit({ partNumber: '010-1' }),
    expect: 'cannot-tell',
    data: { unrecorded: 'part number' },
    states: ['status.directives.0.partNumber'],
  },
  // Open ones.
  {
    ...base,
    name: 'open, before further flight',
    dossier: aircraft([directive({ state: 'open', recordId: null })]),
    expect: 'not-met',
    message: 'open',
  },
  {
    ...base,
    name: 'open, though an entry is named: what the entry lacks is not the question',
    dossier: aircraft([directive({ state: 'open' })], [entry({ outcome: 'failed' })]),
    expect: 'not-met',
    message: 'open',
  },
  {
    ...base,
    name: 'open, its time has not come',
    dossier: aircraft([directive({ state: 'open', recordId: null, ...due('date', '2026-03-31', null) })]),
    at: lastMinute,
    expect: 'met',
  },
  {
    ...base,
    name: 'open, its time has come',
    dossier: aircraft([directive({ state: 'open', recordId: null, ...due('date', '2026-03-31', null) })]),
    at: nextMinute,
    expect: 'not-met',
  },
  {
    ...base,
    name: 'not applicable, with its reason',
    dossier: aircraft([directive({ state: 'not-applicable', reason: 'Serial number outside the range.' })]),
    expect: 'not-applicable',
    message: 'excepted',
    data: { reason: 'Serial number outside the range.' },
  },
  {
    ...base,
    name: 'not applicable, no reason',
    dossier: aircraft([directive({ state: 'not-applicable' })]),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'open, on a unit that is fitted',
    dossier: aircraft([directive({ state: 'open', subject: 'gps1' })], [], {
      configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'] })] },
    }),
    expect: 'not-met',
  },
  // What was taken out took its directives along, where its entries show that it was a unit.
  {
    ...base,
    name: 'open, on a unit that was taken out',
    dossier: aircraft(
      [directive({ state: 'open', subject: 'gps1' })],
      [recordOf({ kind: 'gnss-function-check', on: '2025-01-10', subjects: ['gps1'], agency: mechanic })],
    ),
    expect: 'not-applicable',
    message: 'excepted',
    data: { reason: 'the unit is not fitted.' },
  },
  {
    ...base,
    name: 'open, on something that is no longer recorded and left no trace',
    dossier: aircraft([directive({ state: 'open', subject: 'hoses' })], []),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'subject' },
  },
  {
    ...base,
    name: 'open, on a part with a life limit',
    dossier: aircraft([directive({ state: 'open', subject: 'hoses' })], [], {
      status: {
        lifeLimits: [
          {
            id: 'hoses',
            name: 'Fuel hoses',
            serial: 'H-4',
            subject: 'hoses',
            mandatory: true,
            document: null,
            life: null,
            retireBy: { by: 'date', date: '2030-01-31', meter: null, at: null },
          },
        ],
      },
    }),
    expect: 'not-met',
    message: 'open',
  },
  {
    ...base,
    name: 'open, on a recurring item',
    dossier: aircraft([directive({ state: 'open', subject: 'contacts' })], [], {
      status: {
        recurring: [
          {
            id: 'contacts',
            name: 'Contacts',
            subject: 'contacts',
            origin: 'own',
            document: null,
            parts: [{ kind: 'calendar-months', count: 24, meter: null, tolerance: null }],
            combine: 'first',
            countFrom: 'done',
            toleranceFor: 'any',
          },
        ],
      },
    }),
    expect: 'not-met',
    message: 'open',
  },
  // The list itself.
  {
    name: 'no directive recorded, list stated complete',
    dossier: aircraft([], [], stated('2025-03-31')),
    at: lastMinute,
    subject: 'directive-list',
    expect: 'met',
    message: 'complete',
    data: { asOf: '2025-03-31', by: 'R. Tamsin' },
  },
  {
    name: 'list stated complete longer than 12 calendar months ago',
    dossier: aircraft([], [], stated('2025-03-31')),
    at: nextMinute,
    subject: 'directive-list',
    expect: 'cannot-tell',
    message: 'unreviewed',
  },
  {
    name: 'no directive recorded, list never stated complete',
    dossier: aircraft([], []),
    at,
    subject: 'directive-list',
    expect: 'cannot-tell',
  },
  {
    name: 'a unit fitted the day after the list was stated complete',
    dossier: aircraft([], [], {
      ...stated('2026-02-01'),
      configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'], fitted: { date: '2026-02-02', at: null } })] },
    }),
    at,
    subject: 'unit:gps1',
    expect: 'cannot-tell',
    message: 'unit-unsearched',
  },
  {
    name: 'a unit fitted on the day the list was stated complete',
    dossier: aircraft([], [], {
      ...stated('2026-02-02'),
      configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'], fitted: { date: '2026-02-02', at: null } })] },
    }),
    at,
    subject: 'unit:gps1',
    expect: 'none',
  },
  {
    name: 'a unit of which nobody knows when it was fitted',
    dossier: aircraft([], [], {
      ...stated('2026-02-01'),
      configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'] })] },
    }),
    at,
    subject: 'unit:gps1',
    expect: 'none',
  },
]);
