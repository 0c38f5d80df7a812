import { inspector, mechanic, recordOf } from '../../../testing/builders.js';
import type { Part } from '../../../testing/dossiers.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { RecordHead } from '../../dossier/status.js';
import { hundredHourInspection } from './hundred-hour-inspection.js';

/** A meter read at `value` hundredths on the morning of the question. */
const hours = (value: number): Part<Dossier> => ({
  meters: {
    definitions: [{ id: 'air', name: 'Air time', kind: 'airframe', perFlightHour: 1000, offset: 0 }],
    timeInService: 'air',
    readings: { air: { value, asOf: '2026-03-02T08:00Z', by: 'A. Lorne' } },
  },
});
const certificate = (kind: Dossier['configuration']['aircraft']['certificate']): Part<Dossier> => ({
  configuration: { aircraft: { certificate: kind } },
});
const inspection = (at: number, part: Partial<RecordHead> = {}): Part<Dossier> => ({
  status: {
    records: [
      recordOf({
        kind: 'hundred-hour-inspection',
        on: '2025-11-03',
        outcome: 'approved',
        agency: mechanic,
        meters: [{ meter: 'air', value: at }],
        ...part,
      }),
    ],
  },
});
const standard = certificate('standard');
const at = '2026-03-02T14:00Z';
const lesson = { purpose: 'training-provided' } as const;

// 14 CFR 91.409(b). Published example of the hours: due 650.0, done 658.0 en route: next 750.0; done early at 640.0: next 740.0.
testRule(hundredHourInspection, [
  {
    name: 'one hundredth before the limit at the end of the flight',
    dossier: dossierOf(standard, hours(73_000), inspection(64_000)),
    at,
    flight: lesson,
    hoursAhead: 999,
    expect: 'met',
    message: 'current',
    data: { next: 740, nextByLaterReading: null },
  },
  {
    name: 'the limit itself',
    dossier: dossierOf(standard, hours(73_000), inspection(64_000)),
    at,
    flight: lesson,
    hoursAhead: 1000,
    expect: 'met',
  },
  {
    name: 'one hundredth past it: ten hours en route are never part of ready for hire',
    dossier: dossierOf(standard, hours(73_000), inspection(64_000)),
    at,
    flight: lesson,
    hoursAhead: 1001,
    expect: 'not-met',
    message: 'lapsed',
  },
  {
    name: 'past it, rented without an instructor',
    dossier: dossierOf(standard, hours(75_000), inspection(64_000)),
    at,
    flight: { purpose: 'rental' },
    expect: 'not-applicable',
    message: 'not-asked',
  },
  {
    name: 'past it, training in the trainee’s own aircraft',
    dossier: dossierOf(standard, hours(75_000), inspection(64_000)),
    at,
    flight: { purpose: 'training-own-aircraft' },
    expect: 'not-applicable',
  },
  {
    name: 'past it, carrying persons for hire',
    dossier: dossierOf(standard, hours(75_000), inspection(64_000)),
    at,
    flight: { purpose: 'carriage-for-hire' },
    expect: 'not-met',
  },
  {
    name: 'late under the allowance: counted from the due point',
    dossier: dossierOf(standard, hours(75_000), inspection(65_800, { dueAt: 65_000, enRoute: true })),
    at,
    flight: lesson,
    expect: 'met',
    data: { next: 750, nextByLaterReading: 758 },
  },
  {
    name: 'late under the allowance: past the due point plus 100',
    dossier: dossierOf(standard, hours(75_001), inspection(65_800, { dueAt: 65_000, enRoute: true })),
    at,
    flight: lesson,
    expect: 'not-met',
  },
  {
    name: 'late without the allowance: the stricter count all the same',
    dossier: dossierOf(standard, hours(75_001), inspection(66_100, { dueAt: 65_000, enRoute: false })),
    at,
    flight: lesson,
    expect: 'not-met',
    data: { next: 750, nextByLaterReading: 761 },
  },
  {
    name: '28.3 to 128.3 is exactly 100 hours',
    dossier: dossierOf(standard, hours(12_830), inspection(2830)),
    at,
    flight: lesson,
    expect: 'met',
  },
  {
    name: 'an annual inspection restarts it',
    dossier: dossierOf(standard, hours(73_000), inspection(64_000, { kind: 'annual-inspection', agency: inspector })),
    at,
    flight: lesson,
    expect: 'met',
  },
  {
    name: 'an inspection for the airworthiness certificate restarts it',
    dossier: dossierOf(standard, hours(73_000), inspection(64_000, { kind: 'airworthiness-certificate-inspection' })),
    at,
    flight: lesson,
    expect: 'met',
  },
  {
    name: 'disapproved',
    dossier: dossierOf(standard, hours(65_000), inspection(64_000, { outcome: 'disapproved' })),
    at,
    flight: lesson,
    expect: 'not-met',
  },
  {
    name: 'signed by a mechanic with an airframe rating alone',
    dossier: dossierOf(standard, hours(65_000), inspection(64_000, { agency: { ...mechanic, ratings: ['airframe'] } })),
    at,
    flight: lesson,
    expect: 'not-met',
  },
  {
    name: 'no meter stands for time in service',
    dossier: dossierOf(standard, hours(65_000), inspection(64_000), { meters: { timeInService: null } }),
    at,
    flight: lesson,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'hours at the inspection not recorded',
    dossier: dossierOf(standard, hours(65_000), inspection(64_000, { meters: [] })),
    at,
    flight: lesson,
    expect: 'cannot-tell',
  },
  {
    name: 'meter read too long ago',
    dossier: dossierOf(standard, hours(65_000), inspection(64_000)),
    at: '2026-06-02T14:00Z',
    flight: lesson,
    expect: 'cannot-tell',
  },
  {
    name: 'meter never read',
    dossier: dossierOf(standard, inspection(64_000), { meters: { timeInService: 'air' } }),
    at,
    flight: lesson,
    expect: 'cannot-tell',
  },
  { name: 'nothing recorded', dossier: dossierOf(standard, hours(65_000)), at, flight: lesson, expect: 'cannot-tell' },
  {
    name: 'progressive program',
    dossier: dossierOf(standard, hours(75_000), inspection(64_000), {
      configuration: { aircraft: { program: { kind: 'progressive', document: null } } },
    }),
    at,
    flight: lesson,
    expect: 'not-applicable',
  },
  // 91.409(e) does not name it, so its selected program takes the place of nothing.
  {
    name: 'one reciprocating engine under a selected program, past its 100 hours',
    dossier: dossierOf(standard, hours(75_000), inspection(64_000), {
      configuration: {
        aircraft: { engine: 'reciprocating', engineCount: 1, program: { kind: 'selected-program', document: null } },
      },
    }),
    at,
    flight: lesson,
    expect: 'not-met',
  },
  {
    name: 'two turboprop engines under a selected program',
    dossier: dossierOf(standard, hours(75_000), inspection(64_000), {
      configuration: {
        aircraft: { engine: 'turboprop', engineCount: 2, program: { kind: 'selected-program', document: null } },
      },
    }),
    at,
    flight: lesson,
    expect: 'not-applicable',
  },
  // 91.409(d)(1): the supervisor of a progressive program holds an inspection authorization.
  {
    name: 'a complete progressive inspection by a mechanic does not restart the hours',
    dossier: dossierOf(standard, hours(73_000), inspection(64_000, { kind: 'progressive-complete' })),
    at,
    flight: lesson,
    expect: 'not-met',
  },
  {
    name: 'a complete progressive inspection by its supervisor does',
    dossier: dossierOf(
      standard,
      hours(73_000),
      inspection(64_000, { kind: 'progressive-complete', agency: inspector }),
    ),
    at,
    flight: lesson,
    expect: 'met',
  },
  {
    name: 'an annual by a mechanic without inspection authorization does not restart the hours',
    dossier: dossierOf(standard, hours(73_000), inspection(64_000, { kind: 'annual-inspection' })),
    at,
    flight: lesson,
    expect: 'not-met',
  },
  {
    name: 'light-sport, lesson, condition inspection within 100 hours',
    dossier: dossierOf(certificate('light-sport'), hours(74_000), inspection(64_000, { kind: 'condition-inspection' })),
    at,
    flight: lesson,
    expect: 'met',
  },
  {
    name: 'light-sport, towing for hire, past it',
    dossier: dossierOf(certificate('light-sport'), hours(74_001), inspection(64_000, { kind: 'condition-inspection' })),
    at,
    flight: { purpose: 'tow-for-hire' },
    expect: 'not-met',
  },
  {
    name: 'light-sport knows no allowance: late en route is the stricter reading',
    dossier: dossierOf(
      certificate('light-sport'),
      hours(75_001),
      inspection(65_800, { kind: 'condition-inspection', dueAt: 65_000, enRoute: true }),
    ),
    at,
    flight: lesson,
    expect: 'not-met',
  },
  {
    name: 'experimental, towing for hire, past it',
    dossier: dossierOf(certificate('experimental'), hours(74_001), inspection(64_000)),
    at,
    flight: { purpose: 'tow-for-hire' },
    expect: 'not-met',
  },
  {
    name: 'standard, towing: 91.409(b) does not name it',
    dossier: dossierOf(standard, hours(75_000), inspection(64_000)),
    at,
    flight: { purpose: 'tow-for-hire' },
    expect: 'not-applicable',
  },
  {
    name: 'provisional: 91.409(c)(1) excepts it, and nothing falls due',
    dossier: dossierOf(certificate('provisional'), hours(75_000), inspection(64_000)),
    at,
    flight: lesson,
    expect: 'not-applicable',
    due: [],
  },
  {
    name: 'what falls due of a standard aircraft',
    dossier: dossierOf(standard, hours(73_000), inspection(64_000)),
    at,
    flight: { purpose: 'rental' },
    expect: 'not-applicable',
    due: [{ what: 'hundred-hour-inspection', meter: 'air', at: 74_000 }],
  },
  {
    name: 'late without the allowance, the hours of another meter entered first',
    dossier: dossierOf(
      standard,
      hours(75_000),
      inspection(67_100, {
        dueAt: 66_000,
        enRoute: false,
        meters: [
          { meter: 'hobbs', value: 10 },
          { meter: 'air', value: 67_100 },
        ],
      }),
    ),
    at,
    flight: lesson,
    expect: 'met',
    data: { next: 760, nextByLaterReading: 771 },
  },
  {
    name: 'late by less than ten hours, and not on the way to the shop',
    dossier: dossierOf(standard, hours(75_000), inspection(66_700, { dueAt: 66_200, enRoute: false })),
    at,
    flight: lesson,
    expect: 'met',
    data: { next: 762, nextByLaterReading: 767 },
  },
  {
    name: 'late by its due point, its own hours not recorded',
    dossier: dossierOf(standard, hours(75_000), inspection(65_500, { dueAt: 65_500, meters: [] })),
    at,
    flight: lesson,
    expect: 'cannot-tell',
    data: { nextByLaterReading: null },
  },
  {
    name: 'done when it was due: both counts are one',
    dossier: dossierOf(standard, hours(74_000), inspection(65_100, { dueAt: 65_100 })),
    at,
    flight: lesson,
    expect: 'met',
    data: { next: 751, nextByLaterReading: null },
  },
  {
    name: 'done before the due point that was written down: counted from when it was done',
    dossier: dossierOf(standard, hours(74_001), inspection(64_000, { dueAt: 65_000 })),
    at,
    flight: lesson,
    expect: 'not-met',
    data: { next: 740, nextByLaterReading: null },
  },
  {
    name: 'an annual whose signer is not recorded restarts nothing for sure',
    dossier: dossierOf(standard, hours(73_000), inspection(64_000, { kind: 'annual-inspection', agency: null })),
    at,
    flight: lesson,
    expect: 'cannot-tell',
  },
  {
    name: 'no meter stands for time in service, and nothing falls due',
    dossier: dossierOf(standard, hours(75_000), { meters: { timeInService: null } }),
    at,
    flight: lesson,
    expect: 'cannot-tell',
    due: [],
  },
  {
    name: 'certificate not recorded, within 100 hours',
    dossier: dossierOf(hours(65_000), inspection(64_000)),
    at,
    flight: lesson,
    expect: 'met',
  },
  {
    name: 'certificate not recorded, past them',
    dossier: dossierOf(hours(75_000), inspection(64_000)),
    at,
    flight: lesson,
    expect: 'cannot-tell',
  },
]);
