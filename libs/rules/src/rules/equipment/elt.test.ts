import { inspector, mechanic, pilot, recordOf, typeOf, unitOf } from '../../../testing/builders.js';
import type { Part } from '../../../testing/dossiers.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { Antenna, InstalledUnit } from '../../dossier/installation.js';
import type { RecordHead } from '../../dossier/status.js';
import type { Outcome } from '../../verdict/clause.js';
import type { FlightConditions } from '../../verdict/conditions.js';
import { elt } from './elt.js';

const c126 = typeOf({ id: 'el4', functions: ['elt'], authorisations: [{ tso: 'C126b', class: null }] });
const c91 = typeOf({ id: 'el0', functions: ['elt'], authorisations: [{ tso: 'C91', class: null }] });
const types = [c126, c91];

const inspection = (part: Partial<Parameters<typeof recordOf>[0]> = {}) =>
  recordOf({ kind: 'elt-inspection', on: '2026-03-03', subjects: ['elt1'], agency: mechanic, ...part });
const battery = (part: Partial<Parameters<typeof recordOf>[0]> = {}) =>
  recordOf({
    kind: 'elt-battery',
    on: '2025-06-10',
    subjects: ['elt1'],
    agency: mechanic,
    expires: '2028-06-30',
    ...part,
  });
const whip = (kind: Antenna['kind'], units: readonly string[] = ['elt1']): Antenna => ({
  id: `a-${kind}`,
  kind,
  units,
  approved: null,
  xIn: null,
  yIn: null,
});
const aircraft = (records: readonly RecordHead[], unit: Partial<InstalledUnit> | null = {}, more: Part<Dossier> = {}) =>
  dossierOf(
    {
      configuration: {
        aircraft: { certificate: 'standard', seats: 4 },
        units: unit === null ? [] : [unitOf({ id: 'elt1', typeId: 'el4', ...unit })],
        antennas: unit === null ? [] : [whip('elt')],
      },
      status: {
        records,
        completeness: [
          { list: 'equipment', stated: { asOf: '2025-06-10', by: 'R. Tamsin' } },
          { list: 'placards', stated: { asOf: '2025-06-10', by: 'R. Tamsin' } },
        ],
      },
      meters: {
        definitions: [
          { id: 'elt-use', name: 'Transmitter', kind: 'elt-transmitter', perFlightHour: 0, offset: 0 },
          { id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 },
        ],
      },
    },
    more,
  );

const counter = (value: number, asOf: string): Part<Dossier> => ({
  meters: { readings: { 'elt-use': { value, asOf, by: 'Desk' } } },
});

const removalEntry = (part: Partial<Parameters<typeof recordOf>[0]> = {}) =>
  recordOf({
    kind: 'elt-removal',
    on: '2026-01-01',
    outcome: null,
    agency: mechanic,
    note: 'EL4 serial 12 sent to the bench: no signal.',
    ...part,
  });
const placard = (inView: boolean | null): Part<Dossier> => ({
  configuration: {
    placards: [{ id: 'p1', kind: 'elt-removed', unitId: null, inView, text: 'ELT not installed' }],
  },
});
const removed = (part: Partial<Parameters<typeof recordOf>[0]> = {}, inView: boolean | null = true) =>
  aircraft([removalEntry(part)], null, placard(inView));

const plain = { purpose: 'private', localTrainingNm: null, crewOnly: false } as const;
const base = { types, at: '2026-06-01T12:00Z', flight: plain };

// 14 CFR 91.207. Worked examples of the text: inspected 3 March 2026, good through 31 March 2027; removed 1 January 2026, last day 1 April 2026.
testRule(elt, [
  {
    ...base,
    name: 'inspected and battery in date',
    dossier: aircraft([inspection(), battery()]),
    expect: 'met',
    message: 'ready',
    data: { inspectionGoodTo: '2027-03-31', batteryGoodTo: '2028-06-30' },
  },
  {
    ...base,
    name: 'inspected, but no antenna on a list stated complete',
    dossier: aircraft([inspection(), battery()], {}, { configuration: { antennas: [] } }),
    expect: 'not-met',
    message: 'mute',
  },
  {
    ...base,
    name: 'two, the one with an antenna lapsed: it is not for want of one',
    dossier: dossierOf(aircraft([inspection({ on: '2025-04-30' }), battery()]), {
      configuration: { units: [unitOf({ id: 'elt1', typeId: 'el4' }), unitOf({ id: 'elt2', typeId: 'el4' })] },
    }),
    expect: 'not-met',
    message: 'lapsed',
    data: { inspectionGoodTo: '2026-04-30' },
  },
  {
    ...base,
    name: 'two, the first lapsed: the days are those of the one in service',
    dossier: dossierOf(
      aircraft([
        inspection({ on: '2025-04-30' }),
        battery(),
        inspection({ id: 'i2', subjects: ['elt2'] }),
        battery({ id: 'b2', subjects: ['elt2'] }),
      ]),
      {
        configuration: {
          units: [unitOf({ id: 'elt1', typeId: 'el4' }), unitOf({ id: 'elt2', typeId: 'el4' })],
          antennas: [whip('elt'), whip('combined', ['elt2'])],
        },
      },
    ),
    expect: 'met',
    message: 'ready',
    data: { inspectionGoodTo: '2027-03-31' },
  },
  {
    ...base,
    name: 'two, the one without an antenna is good for longer: the days are those of the other',
    dossier: dossierOf(
      aircraft([
        inspection({ on: '2025-04-30' }),
        battery(),
        inspection({ id: 'i2', subjects: ['elt2'] }),
        battery({ id: 'b2', subjects: ['elt2'] }),
      ]),
      { configuration: { units: [unitOf({ id: 'elt1', typeId: 'el4' }), unitOf({ id: 'elt2', typeId: 'el4' })] } },
    ),
    expect: 'not-met',
    message: 'lapsed',
    data: { inspectionGoodTo: '2026-04-30' },
  },
  {
    ...base,
    name: 'inspected, no antenna recorded',
    dossier: aircraft([inspection(), battery()], {}, { configuration: { antennas: [] }, status: { completeness: [] } }),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'antennas, whether the list of equipment is complete' },
  },
  {
    ...base,
    name: 'the antenna of another radio, or of another transmitter, is not its own',
    dossier: aircraft(
      [inspection(), battery()],
      {},
      { configuration: { antennas: [whip('com'), whip('elt', ['x'])] } },
    ),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'an antenna for several bands serves it',
    dossier: aircraft([inspection(), battery()], {}, { configuration: { antennas: [whip('combined')] } }),
    expect: 'met',
  },
  {
    ...base,
    name: 'no antenna, but no transmitter needed for local training',
    dossier: aircraft([inspection(), battery()], {}, { configuration: { antennas: [] } }),
    flight: { ...plain, purpose: 'training-provided', localTrainingNm: 50 },
    expect: 'met',
  },
  {
    ...base,
    name: 'inspection good on its last minute',
    dossier: aircraft([inspection(), battery()]),
    at: '2027-04-01T04:59Z',
    expect: 'met',
  },
  {
    ...base,
    name: 'inspection lapsed with the next minute',
    dossier: aircraft([inspection(), battery()]),
    at: '2027-04-01T05:00Z',
    expect: 'not-met',
    message: 'lapsed',
  },
  {
    ...base,
    name: 'battery good on its last minute',
    dossier: aircraft([inspection(), battery({ expires: '2026-05-31' })]),
    at: '2026-06-01T04:59Z',
    expect: 'met',
  },
  {
    ...base,
    name: 'battery expired with the next minute',
    dossier: aircraft([inspection(), battery({ expires: '2026-05-31' })]),
    at: '2026-06-01T05:00Z',
    expect: 'not-met',
  },
  {
    ...base,
    name: 'battery expiry not recorded',
    dossier: aircraft([inspection(), battery({ expires: null })]),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'day of expiry' },
  },
  { ...base, name: 'no battery entry', dossier: aircraft([inspection()]), expect: 'cannot-tell' },
  { ...base, name: 'no inspection entry', dossier: aircraft([battery()]), expect: 'cannot-tell' },
  {
    ...base,
    name: 'an annual inspection says nothing of the transmitter',
    dossier: aircraft([
      battery(),
      recordOf({ kind: 'annual-inspection', on: '2026-05-01', outcome: 'approved', agency: inspector }),
    ]),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'annual in date, transmitter inspection lapsed',
    dossier: aircraft([
      inspection({ on: '2025-04-30' }),
      battery(),
      recordOf({ kind: 'annual-inspection', on: '2026-05-01', outcome: 'approved', agency: inspector }),
    ]),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'inspection reported, entry not seen',
    dossier: aircraft([inspection({ evidence: 'reported' }), battery()]),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'inspected by a pilot',
    dossier: aircraft([inspection({ agency: pilot }), battery()]),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'inspector not recorded',
    dossier: aircraft([inspection({ agency: null }), battery()]),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'battery entered, nobody signed',
    dossier: aircraft([inspection(), battery({ agency: null })]),
    expect: 'cannot-tell',
    data: { unrecorded: 'who did it' },
  },
  // Part 43 appendix A(c)(24): batteries are preventive maintenance, a pilot's own.
  {
    ...base,
    name: 'battery replaced by a private pilot',
    dossier: aircraft([inspection(), battery({ agency: pilot })]),
    expect: 'met',
  },
  {
    ...base,
    name: 'battery replaced by a sport pilot, standard certificate',
    dossier: aircraft([inspection(), battery({ agency: { ...pilot, ratings: ['sport-pilot'] } })]),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'battery replaced by a sport pilot, light-sport certificate',
    dossier: aircraft(
      [inspection(), battery({ agency: { ...pilot, ratings: ['sport-pilot'] } })],
      {},
      { configuration: { aircraft: { certificate: 'light-sport' } } },
    ),
    expect: 'met',
  },
  // The counter of transmitting read by itself, noon on the field's own days.
  {
    ...base,
    name: 'counter read since the battery: one hour',
    dossier: aircraft([inspection(), battery()], {}, counter(100, '2026-05-01T17:00Z')),
    expect: 'met',
  },
  {
    ...base,
    name: 'counter read since the battery: one hour and a hundredth',
    dossier: aircraft([inspection(), battery()], {}, counter(101, '2026-05-01T17:00Z')),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'counter read before the battery was replaced',
    dossier: aircraft([inspection(), battery()], {}, counter(150, '2025-06-09T17:00Z')),
    expect: 'met',
  },
  {
    ...base,
    name: 'counter read on the day of the battery, time of the entry not recorded',
    dossier: aircraft([inspection(), battery()], {}, counter(150, '2025-06-10T17:00Z')),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'counter read on the day of the battery, before its entry',
    dossier: aircraft(
      [inspection(), battery({ done: { date: '2025-06-10', at: '2025-06-10T17:00Z' } })],
      {},
      counter(150, '2025-06-10T16:59Z'),
    ),
    expect: 'met',
  },
  {
    ...base,
    name: 'counter read on the day of the battery, after its entry',
    dossier: aircraft(
      [inspection(), battery({ done: { date: '2025-06-10', at: '2025-06-10T17:00Z' } })],
      {},
      counter(150, '2025-06-10T17:01Z'),
    ),
    expect: 'not-met',
  },
  // (c)(1): "more than 1 cumulative hour".
  {
    ...base,
    name: 'exactly one hour of transmitting',
    dossier: aircraft([inspection({ meters: [{ meter: 'elt-use', value: 100 }] }), battery()]),
    expect: 'met',
  },
  {
    ...base,
    name: 'one hundredth of an hour over one hour of transmitting',
    dossier: aircraft([inspection({ meters: [{ meter: 'elt-use', value: 101 }] }), battery()]),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'other meters on the entry do not count as transmitting',
    dossier: aircraft([inspection({ meters: [{ meter: 'tach', value: 404_000 }] }), battery()]),
    expect: 'met',
  },
  {
    ...base,
    name: 'a new battery starts the hour again',
    dossier: aircraft([
      inspection({ meters: [{ meter: 'elt-use', value: 250 }] }),
      battery(),
      battery({ on: '2026-04-02' }),
    ]),
    expect: 'met',
  },
  {
    ...base,
    name: 'a newer battery with an earlier expiry is the one aboard',
    dossier: aircraft([inspection(), battery(), battery({ on: '2026-04-02', expires: '2026-05-31' })]),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'a newer battery only reported leaves the seen one standing',
    dossier: aircraft([inspection(), battery(), battery({ on: '2026-04-02', evidence: 'reported' })]),
    expect: 'met',
  },
  {
    ...base,
    name: 'only battery entry not seen',
    dossier: aircraft([inspection(), battery({ evidence: 'reported' })]),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'deactivated is not in service, and not removed',
    dossier: aircraft(
      [inspection(), battery(), removalEntry({ on: '2026-05-20' })],
      { deactivated: { since: { date: '2026-05-01', at: null }, placarded: true, recorded: true } },
      placard(true),
    ),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'inspected, but recorded as inoperative',
    dossier: aircraft(
      [inspection(), battery()],
      {},
      {
        status: {
          defects: [
            {
              id: 'd1',
              kind: 'inoperative-item',
              subject: 'elt1',
              text: 'No signal on test.',
              raised: { date: '2026-05-30', at: null },
              decidedBy: mechanic,
              deferral: null,
            },
          ],
        },
      },
    ),
    expect: 'not-met',
  },
  // (a): TSO-C91 newly installed until 21 June 1995 only.
  {
    ...base,
    name: 'TSO-C91 fitted on 21 June 1995',
    dossier: aircraft([inspection(), battery()], { typeId: 'el0', fitted: { date: '1995-06-21', at: null } }),
    expect: 'met',
  },
  {
    ...base,
    name: 'TSO-C91 fitted on 22 June 1995',
    dossier: aircraft([inspection(), battery()], { typeId: 'el0', fitted: { date: '1995-06-22', at: null } }),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'TSO-C91, day of fitting not recorded',
    dossier: aircraft([inspection(), battery()], { typeId: 'el0' }),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'not catalogued, installation not recorded as approved',
    dossier: aircraft([inspection(), battery()], { typeId: null, functions: ['elt'] }),
    expect: 'cannot-tell',
  },
  // (f)(10): 90 days after the initial removal, with entry and placard.
  {
    ...base,
    name: 'removed, the last minute of day 90',
    dossier: removed(),
    at: '2026-04-02T04:59Z',
    expect: 'met',
    message: 'away',
    data: { removed: '2026-01-01', lastDay: '2026-04-01' },
  },
  {
    ...base,
    name: 'removed, the first minute of day 91',
    dossier: removed(),
    at: '2026-04-02T05:00Z',
    expect: 'not-met',
    message: 'away-too-long',
  },
  {
    ...base,
    name: 'removed, placard recorded but whether it is in view is not',
    dossier: removed({}, null),
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'removed, placard out of view',
    dossier: removed({}, false),
    at: '2026-02-01T12:00Z',
    expect: 'not-met',
  },
  {
    ...base,
    name: 'removed, no placard, list of placards complete',
    dossier: aircraft([removalEntry()], null),
    at: '2026-02-01T12:00Z',
    expect: 'not-met',
  },
  {
    ...base,
    name: 'removed, no placard recorded, list of placards not complete',
    dossier: aircraft([removalEntry()], null, {
      status: { completeness: [{ list: 'equipment', stated: { asOf: '2025-06-10', by: 'R. Tamsin' } }] },
    }),
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'removed, entry not seen',
    dossier: removed({ evidence: 'reported' }),
    at: '2026-02-01T12:00Z',
    expect: 'not-met',
  },
  {
    ...base,
    name: 'removed, nobody signed the entry',
    dossier: removed({ agency: null }),
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'removed, signed by a pilot',
    dossier: removed({ agency: pilot }),
    at: '2026-02-01T12:00Z',
    expect: 'not-met',
  },
  {
    ...base,
    name: 'removed, an entry too short for make, model, serial number and reason',
    dossier: removed({ note: 'ok, no signal' }),
    at: '2026-02-01T12:00Z',
    expect: 'not-met',
  },
  {
    ...base,
    name: 'removed, make, serial and reason not entered',
    dossier: removed({ note: null }),
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'a second removal entry does not start the days again',
    dossier: aircraft([removalEntry(), removalEntry({ on: '2026-03-20' })], null, placard(true)),
    at: '2026-04-10T12:00Z',
    expect: 'not-met',
    data: { removed: '2026-01-01' },
  },
  {
    ...base,
    name: 'inspected in the airplane between two removals: the second is a new one',
    dossier: aircraft([removalEntry(), inspection(), removalEntry({ on: '2026-03-20' })], null, placard(true)),
    at: '2026-04-10T12:00Z',
    expect: 'met',
    data: { removed: '2026-03-20' },
  },
  {
    ...base,
    name: 'removed, but a unit of unknown function is fitted',
    dossier: aircraft([removalEntry()], { id: 'box', typeId: null }, placard(true)),
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'removal entry and placard left behind, transmitter fitted and lapsed',
    dossier: aircraft(
      [inspection({ on: '2025-04-30' }), battery(), removalEntry({ on: '2026-05-20' })],
      {},
      placard(true),
    ),
    expect: 'not-met',
  },
  { ...base, name: 'none fitted, list complete', dossier: aircraft([], null), expect: 'not-met', message: 'none' },
  {
    ...base,
    name: 'none recorded, list not complete',
    dossier: aircraft([], null, { status: { completeness: [] } }),
    expect: 'cannot-tell',
  },
  // (f)(3): training wholly within 50 NM.
  {
    ...base,
    name: 'none fitted, local training within 50 NM claimed',
    dossier: aircraft([], null),
    flight: { purpose: 'training-provided', localTrainingNm: 50, crewOnly: false },
    expect: 'met',
    message: 'none-needed',
  },
  {
    ...base,
    name: 'none fitted, local training within 51 NM claimed',
    dossier: aircraft([], null),
    flight: { purpose: 'training-provided', localTrainingNm: 51, crewOnly: false },
    expect: 'not-met',
  },
  {
    ...base,
    name: 'none fitted, training without a claimed radius',
    dossier: aircraft([], null),
    flight: { purpose: 'training-provided', localTrainingNm: null, crewOnly: false },
    expect: 'not-met',
  },
  {
    ...base,
    name: 'none fitted, training radius claimed for carriage',
    dossier: aircraft([], null),
    flight: { purpose: 'carriage-for-hire', localTrainingNm: 20, crewOnly: false },
    expect: 'not-met',
  },
  // (e): ferry with the required crew only.
  {
    ...base,
    name: 'none fitted, ferry with the required crew: for which of the two reasons nobody said',
    dossier: aircraft([], null),
    flight: { purpose: 'ferry', localTrainingNm: null, crewOnly: true },
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    ...base,
    name: 'none fitted, ferry with a passenger',
    dossier: aircraft([], null),
    flight: { purpose: 'ferry', localTrainingNm: null, crewOnly: false },
    expect: 'not-met',
  },
  ...(
    [
      // (e)(1), (e)(2): for one of two errands, with the required crew only.
      ['none fitted, newly acquired, ferried by the required crew', null, 'newly-acquired', {}, {}, 'met'],
      ['none fitted, newly acquired, with a passenger', null, 'newly-acquired', { crewOnly: false }, {}, 'not-met'],
      ['none fitted, newly acquired, on no ferry', null, 'newly-acquired', { purpose: 'private' }, {}, 'not-met'],
      ['inoperative, ferried to its repair', {}, 'to-repair-of-elt', {}, {}, 'met'],
      [
        'inoperative, ferried to its repair with a passenger',
        {},
        'to-repair-of-elt',
        { crewOnly: false },
        { status: { records: [inspection({ on: '2024-01-10' }), battery()] } },
        'not-met',
      ],
      ['none fitted, ferried to the repair of none', null, 'to-repair-of-elt', {}, {}, 'not-met'],
      [
        'none recorded, list not complete, ferried to its repair',
        null,
        'to-repair-of-elt',
        {},
        { status: { completeness: [] } },
        'cannot-tell',
      ],
      [
        'what is fitted not recorded, ferried to its repair',
        { typeId: null },
        'to-repair-of-elt',
        {},
        {},
        'cannot-tell',
      ],
      ['none fitted, ferried for none of these', null, 'none-of-these', {}, {}, 'not-met'],
      // (f): the other errands.
      ['none fitted, flight test', null, 'design-or-test', { purpose: 'private', crewOnly: false }, {}, 'met'],
      [
        'none fitted, flight test with paying passengers',
        null,
        'design-or-test',
        { purpose: 'carriage-for-hire' },
        {},
        'not-met',
      ],
      // Made in June 2025: no annual inspection can be missing before July 2026. Made the day before, one can.
      ...(
        [
          ['made twelve months ago', '2025-06-01', 'met'],
          ['made thirteen months ago, no inspection on record', '2025-05-31', 'cannot-tell'],
          ['made on a day that nobody recorded', null, 'cannot-tell'],
        ] as const
      ).map(
        ([made, manufactured, expect]) =>
          [
            `none fitted, delivery of an aircraft ${made}`,
            null,
            'manufacture-or-delivery',
            {},
            { configuration: { aircraft: { manufactured } } },
            expect,
          ] as const,
      ),
      [
        'none fitted, "delivery" of one that had an annual inspection',
        null,
        'manufacture-or-delivery',
        {},
        { status: { records: [recordOf({ kind: 'annual-inspection', on: '2025-09-10', outcome: 'approved' })] } },
        'not-met',
      ],
      [
        'none fitted, aerial application',
        null,
        'aerial-application',
        { purpose: 'aerial-work', crewOnly: false },
        {},
        'met',
      ],
      [
        'none fitted, aerial application on a private flight',
        null,
        'aerial-application',
        { purpose: 'private' },
        {},
        'not-met',
      ],
      [
        'none fitted, research and development, experimental',
        null,
        'research-and-development',
        { purpose: 'private' },
        { configuration: { aircraft: { certificate: 'experimental' } } },
        'met',
      ],
      [
        'none fitted, research and development, standard',
        null,
        'research-and-development',
        { purpose: 'private' },
        {},
        'not-met',
      ],
      [
        'none fitted, research and development, certificate not recorded',
        null,
        'research-and-development',
        { purpose: 'private' },
        { configuration: { aircraft: { certificate: null } } },
        'cannot-tell',
      ],
      ['none fitted, air racing', null, 'compliance-or-exhibition', { purpose: 'private', crewOnly: false }, {}, 'met'],
      ['none fitted, air racing for rent', null, 'compliance-or-exhibition', { purpose: 'rental' }, {}, 'not-met'],
    ] as const satisfies readonly (readonly [
      string,
      Partial<InstalledUnit> | null,
      FlightConditions['errand'],
      Partial<FlightConditions>,
      Part<Dossier>,
      Outcome,
    ])[]
  ).map(([name, unit, errand, flight, more, expect]) => ({
    ...base,
    name,
    dossier: aircraft([], unit, more),
    flight: { ...plain, purpose: 'ferry' as const, crewOnly: true, errand, ...flight },
    expect,
  })),
  {
    ...base,
    name: 'equipped for one person',
    dossier: aircraft([], null, { configuration: { aircraft: { seats: 1 } } }),
    expect: 'met',
  },
  {
    ...base,
    name: 'equipped for two',
    dossier: aircraft([], null, { configuration: { aircraft: { seats: 2 } } }),
    expect: 'not-met',
  },
  {
    ...base,
    name: 'seats not recorded',
    dossier: aircraft([], null, { configuration: { aircraft: { seats: null } } }),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'helicopter',
    dossier: aircraft([], null, { configuration: { aircraft: { kind: 'helicopter' } } }),
    expect: 'not-applicable',
    message: 'excepted',
  },
]);
