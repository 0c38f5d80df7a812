import { describe, expect, it } from 'vitest';
import { assess } from '../../libs/rules/src/assess/assess.js';
import { openAtRelease } from '../../libs/rules/src/assess/release.js';
import type { Change } from '../../libs/rules/src/changes/changes.js';
import { apply } from '../../libs/rules/src/changes/changes.js';
import type { Dossier } from '../../libs/rules/src/dossier/dossier.js';
import type { InstalledUnit, Link } from '../../libs/rules/src/dossier/installation.js';
import type { StaticLeakReadings, VorReadings } from '../../libs/rules/src/dossier/readings.js';
import type { DatabaseLoad, Defect, Directive, Obligation, RecordHead } from '../../libs/rules/src/dossier/status.js';
import { instantOf, minutesOf } from '../../libs/rules/src/time/instant.js';
import { zoneDataVersion } from '../../libs/rules/src/time/zones.js';
import type { FlightConditions } from '../../libs/rules/src/verdict/conditions.js';
import type { Ready } from '../../libs/rules/src/verdict/result.js';
import {
  approvalOf,
  circuitOf,
  deferralOf,
  linkOf,
  mechanic,
  pilot,
  radioStation,
  readingsOf,
  recordOf,
  typeOf,
  unitOf,
} from '../../libs/rules/testing/builders.js';
import { catalogueOf } from '../../libs/rules/testing/changes.js';
import type { Part } from '../../libs/rules/testing/dossiers.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import { dualVorCheck, goodAtcrbs, goodModeS, perfectAltimeter } from '../../libs/rules/testing/sample-readings.js';
import {
  entries,
  goodDay,
  trainer,
  trainerCatalogue,
  trainerRecords,
  trainerTypes,
} from '../../libs/rules/testing/trainer.js';

/**
 * Plausible ways to misread a rule, each with a flight on which it would answer otherwise than it must. The well-kept trainer
 * but for one thing; figures and sources stand in the tests of the rules.
 */

const vfr: FlightConditions = {
  rules: 'vfr',
  light: 'day',
  purpose: 'private',
  airspace: [],
  topFt: 6000,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
};
const ifr: FlightConditions = { ...vfr, rules: 'ifr', airspace: ['controlled'], topFt: 9_000 };
const classC: FlightConditions = { ...vfr, airspace: ['controlled', 'class-b-c'] };
const lesson: FlightConditions = { ...vfr, purpose: 'training-provided' };
const vor: FlightConditions = { ...ifr, approaches: ['vor'] };
const ils: FlightConditions = { ...ifr, approaches: ['ils'] };
const lpv: FlightConditions = { ...ifr, approaches: ['lpv'] };

interface Wrong {
  /** What somebody might think. */
  readonly thought: string;
  readonly dossier?: Dossier;
  readonly change?: readonly Part<Dossier>[];
  readonly flight: FlightConditions;
  readonly at?: string;
  /** Flight hours to its end. */
  readonly hours?: number;
  readonly ready: Ready;
  /** A rule that must be among the reasons. */
  readonly because?: string;
}

const base = trainer();
/** An altimeter whose maker names its TSO. */
const newAltimeter = typeOf({
  id: 'al3-tso',
  functions: ['altimeter'],
  authorisations: [{ tso: 'C10b', class: null }],
  drawA: { at14V: 0, at28V: 0 },
});
const weakTransmitter = {
  ...trainerTypes.transponder,
  id: 'ms4-weak',
  authorisations: [
    { tso: 'C112e', class: '1' },
    { tso: 'C166b', class: 'A0' },
  ],
};
/** A navigator whose manual states neither what it draws nor what it may be fed with. */
const silentNavigator = { ...trainerTypes.navigator, id: 'nx5-silent', drawA: null, supplyV: null };
/** A transponder that sends ADS-B Out by universal access, so through an antenna of its own. */
const withUniversalAccess = {
  ...trainerTypes.transponder,
  id: 'ms4-uat',
  functions: ['transponder', 'ads-b-out-uat'] as const,
  authorisations: [
    { tso: 'C112e', class: '1' },
    { tso: 'C154c', class: null },
  ],
  ports: trainerTypes.transponder.ports.map((each) => ({ ...each, requiredFor: [] })),
};
/** Annunciators for either voltage. */
const lampType = typeOf({
  id: 'lx2',
  functions: ['integrity-annunciation', 'approach-annunciation', 'source-annunciation'],
  supplyV: { least: 11, most: 33 },
  view: { approvedPlaces: ['glareshield'], maxHorizontalDeg: null, maxOffsetIn: null, document: 'Manual lx2' },
  ports: [
    { name: 'INTEG', signal: 'integrity-flag', direction: 'in', standard: 'discrete', speed: null, requiredFor: [] },
    { name: 'SOURCE', signal: 'source-status', direction: 'in', standard: 'discrete', speed: null, requiredFor: [] },
  ],
});
const lampFor28V = typeOf({ ...lampType, id: 'lx3', supplyV: { least: 22, most: 30 } });
const lamps = [lampType, lampFor28V];
const catalogue = catalogueOf(
  ...Object.values(trainerTypes),
  newAltimeter,
  weakTransmitter,
  silentNavigator,
  withUniversalAccess,
  ...lamps,
);
type Name = keyof typeof trainerRecords;
/** One entry of the trainer with something changed. */
const entry = (name: Name, part: Partial<RecordHead>): Part<Dossier> =>
  entries({ without: [name], and: [{ ...(trainerRecords[name] as RecordHead), ...part }] });
const done = (name: Name, date: string): Part<Dossier> => entry(name, { done: { date, at: null } });
const unit = (id: string, part: Partial<InstalledUnit>): Part<Dossier> => ({
  configuration: { units: base.configuration.units.map((each) => (each.id === id ? { ...each, ...part } : each)) },
});
const tach = (value: number, asOf = '2026-03-15T20:00Z'): Part<Dossier> => ({
  meters: { readings: { tach: { value, asOf, by: 'Desk' } } },
});
const based = (zone: string): Part<Dossier> => ({
  configuration: { aircraft: { base: { id: 'b', name: 'B', zone } } },
});
const load = (part: Partial<DatabaseLoad>): DatabaseLoad => ({ ...(base.status.loads[0] as DatabaseLoad), ...part });
const supplement = (currentDataRequired: boolean | null): Part<Dossier> => ({
  configuration: { supplements: base.configuration.supplements.map((each) => ({ ...each, currentDataRequired })) },
});
const owed = (what: Obligation['what'], subject: string, at: string | null = null): Part<Dossier> => ({
  status: {
    obligations: [
      {
        id: 'o1',
        what,
        subject,
        since: { date: '2026-03-12', at },
        becauseOf: 'work.done',
        touched: null,
        closedBy: null,
      },
    ],
  },
});
const defect = (part: Partial<Defect>): Part<Dossier> => ({
  status: {
    defects: [
      {
        id: 'd1',
        kind: 'inoperative-item',
        subject: 'nav1',
        text: 'Flag stays in view.',
        raised: { date: '2026-03-10', at: null },
        decidedBy: mechanic,
        deferral: deferralOf({ on: '2026-03-11' }),
        ...part,
      },
    ],
  },
});
const directive = (part: Partial<Directive>): Part<Dossier> => ({
  status: {
    directives: [
      {
        id: 'dir1',
        number: '2019-03-07',
        subject: 'aircraft',
        state: 'open',
        reason: null,
        method: null,
        partNumber: null,
        serial: null,
        recurs: false,
        interval: null,
        nextDue: null,
        recordId: null,
        ...part,
      },
    ],
  },
});
const sixMonths: Directive['interval'] = {
  parts: [{ kind: 'calendar-months', count: 6, meter: null, tolerance: null }],
  combine: 'first',
  countFrom: 'done',
  toleranceFor: 'none',
};
/** The list of directives stated complete as of a day. */
const listed = (asOf: string): Part<Dossier> => ({
  status: {
    completeness: base.status.completeness.map((each) =>
      each.list === 'directives' ? { ...each, stated: { ...each.stated, asOf } } : each,
    ),
  },
});
/** The directive complied with by an entry with something changed. */
const complied = (part: Partial<RecordHead> & { readonly on?: string }, of: Partial<Directive> = {}): Part<Dossier> => {
  const record = recordOf({
    kind: 'directive-compliance',
    on: '2025-09-10',
    subjects: ['dir1'],
    agency: mechanic,
    ...part,
  });
  const { status } = directive({ state: 'complied', method: 'Paragraph (c)', recordId: record.id, ...of });
  return { status: { ...status, ...entries({ and: [record] }).status } };
};
const transmitted = (value: number): Part<Dossier> => ({
  meters: {
    definitions: [
      ...base.meters.definitions,
      { id: 'elt-use', name: 'Transmitter', kind: 'elt-transmitter', perFlightHour: 0, offset: 0 },
    ],
    readings: { 'elt-use': { value, asOf: '2026-03-15T20:00Z', by: 'Desk' } },
  },
});
/** Taken out on 12 March, with placard and entry; the entry with something changed. */
const eltOut = (part: Partial<RecordHead>): Part<Dossier> => ({
  configuration: {
    units: base.configuration.units.filter((each) => each.id !== 'elt1'),
    antennas: base.configuration.antennas.filter((each) => each.id !== 'a-elt'),
    placards: [{ id: 'p', kind: 'elt-removed', unitId: null, inView: true, text: 'ELT not installed' }],
  },
  ...entries({
    and: [
      recordOf({
        kind: 'elt-removal',
        on: '2026-03-12',
        agency: mechanic,
        note: 'Quillon el4, serial E1, no signal on the bench',
        ...part,
      }),
    ],
  }),
});
const deactivated = (placarded: boolean | null, recorded: boolean | null): Partial<InstalledUnit> => ({
  deactivated: { since: { date: '2026-03-12', at: null }, placarded, recorded },
});
const inProgram: Part<Dossier> = {
  configuration: {
    aircraft: {
      program: { kind: 'selected-program', document: { title: 'Program', revision: '1', date: '2022-03-01' } },
    },
  },
};
const programEntry = recordOf({
  kind: 'program-inspection',
  on: '2025-09-10',
  outcome: 'approved',
  agency: mechanic,
  expires: '2030-01-31',
});
/** A test that work of 12 March called for, with its entry. */
const tested = (kind: RecordHead['kind'], subject: string, date: string, at: string | null = null) =>
  entries({
    and: [
      recordOf({
        ...trainerRecords.static,
        id: 'after',
        kind,
        subjects: [subject],
        on: date,
        done: { date, at },
      }),
    ],
  });
const vorRead = (part: Partial<VorReadings>): Part<Dossier> => {
  const { readings } = trainerRecords.vor;
  if (!readings?.vor) throw new Error('the trainer has a VOR check with readings');
  return entry('vor', { readings: readingsOf({ vor: { ...readings.vor, ...part } }) });
};

const time: readonly Wrong[] = [
  {
    thought: 'data that lapse stay lapsed, though the next cycle is loaded',
    change: [{ status: { loads: [load({}), load({ slot: 'next', cycle: '2603', effective: null, expires: null })] } }],
    flight: lpv,
    at: '2026-03-19T09:01Z',
    ready: 'yes',
  },
  {
    thought: 'a cycle ends with its day',
    flight: lpv,
    at: '2026-03-19T09:01Z',
    ready: 'no',
    because: 'navigation-data-current',
  },
  { thought: 'a cycle ends at midnight before its day', flight: lpv, at: '2026-03-19T09:00Z', ready: 'yes' },
  {
    thought: 'the effective date is meant where the aircraft lives: in Hawaii the old cycle ends the evening before',
    change: [based('Pacific/Honolulu')],
    flight: lpv,
    at: '2026-03-19T09:01Z',
    ready: 'no',
    because: 'navigation-data-current',
  },
  {
    thought: 'the computed end of a cycle wins over what its provider printed',
    change: [{ status: { loads: [load({ expires: '2026-03-12T09:01Z' })] } }],
    flight: lpv,
    ready: 'no',
    because: 'navigation-data-current',
  },
  {
    thought: 'data need be current at the start of the flight',
    flight: lpv,
    at: '2026-03-19T08:00Z',
    hours: 1.5,
    ready: 'no',
    because: 'navigation-data-current',
  },
  {
    thought: 'a unit that holds one cycle changes over by itself',
    change: [
      unit('gps1', { typeId: null, functions: ['gnss', 'integrity-annunciation', 'approach-annunciation'] }),
      { status: { loads: [load({}), load({ slot: 'next', cycle: '2603', effective: null, expires: null })] } },
    ],
    flight: lpv,
    at: '2026-03-19T09:01Z',
    ready: 'cannot-tell',
    because: 'navigation-data-current',
  },
  {
    thought: 'expired data are no matter where the supplement was never read',
    change: [supplement(null)],
    flight: lpv,
    at: '2026-03-19T09:01Z',
    ready: 'cannot-tell',
    because: 'navigation-data-current',
  },
  {
    thought: 'expired data that were verified once are verified for good',
    change: [
      supplement(false),
      entries({ and: [recordOf({ kind: 'data-verification', subjects: ['gps1'], on: '2026-03-19', agency: pilot })] }),
    ],
    flight: lpv,
    at: '2026-03-20T15:00Z',
    ready: 'no',
    because: 'navigation-data-current',
  },
  {
    thought: 'twelve calendar months end on the day of the month',
    change: [done('annual', '2025-03-02')],
    flight: vfr,
    at: '2026-03-31T20:00Z',
    ready: 'yes',
  },
  {
    thought: 'the last day of the month is already too late, or the first of the next still good',
    change: [done('annual', '2025-03-02'), tach(407_000, '2026-03-31T20:00Z')],
    flight: vfr,
    at: '2026-04-01T05:00Z',
    ready: 'no',
    because: 'annual-inspection',
  },
  {
    thought: 'a month ends at the same moment everywhere',
    change: [done('annual', '2025-03-02'), based('Pacific/Auckland')],
    flight: vfr,
    at: '2026-03-31T11:00Z',
    ready: 'no',
    because: 'annual-inspection',
  },
  { thought: 'thirty days count the day of the check', change: [done('vor', '2026-02-14')], flight: vor, ready: 'yes' },
  {
    thought: 'thirty days are a month',
    change: [done('vor', '2026-02-13')],
    flight: vor,
    ready: 'no',
    because: 'vor-check',
  },
  {
    thought: 'a verdict can improve only by work: a hold with an end ends',
    change: [
      {
        status: {
          holds: [{ id: 'h', reason: 'Inquiry', by: 'Desk', from: '2026-03-10T00:00Z', until: '2026-03-16T16:00Z' }],
        },
      },
    ],
    flight: vfr,
    ready: 'yes',
  },
  {
    thought: 'a hold that ends later is over',
    change: [
      {
        status: {
          holds: [{ id: 'h', reason: 'Inquiry', by: 'Desk', from: '2026-03-10T00:00Z', until: '2026-03-16T16:01Z' }],
        },
      },
    ],
    flight: vfr,
    ready: 'no',
    because: 'held',
  },
];

const hours: readonly Wrong[] = [
  { thought: 'at exactly a hundred hours it is overflown', flight: lesson, hours: 70, ready: 'yes' },
  {
    thought: 'ten hours more are part of ready for hire',
    flight: lesson,
    hours: 70.01,
    ready: 'no',
    because: 'hundred-hour-inspection',
  },
  { thought: 'it binds whoever flies', flight: vfr, hours: 70.01, ready: 'yes' },
  {
    thought: 'an annual does not restart it',
    change: [entry('annual', { done: { date: '2026-03-01', at: null }, meters: [{ meter: 'tach', value: 406_000 }] })],
    flight: lesson,
    hours: 90,
    ready: 'yes',
  },
  {
    thought: 'done late on the way, it counts from when it was done where nobody wrote down when it was due',
    change: [
      entries({
        without: ['annual', 'hundred'],
        and: [
          { ...trainerRecords.annual, meters: [{ meter: 'tach', value: 300_000 }] },
          {
            ...trainerRecords.hundred,
            id: 'before',
            done: { date: '2025-12-01', at: null },
            meters: [{ meter: 'tach', value: 394_000 }],
          },
          { ...trainerRecords.hundred, enRoute: true, meters: [{ meter: 'tach', value: 404_700 }] },
        ],
      }),
    ],
    flight: lesson,
    hours: 70.01,
    ready: 'no',
    because: 'hundred-hour-inspection',
  },
  {
    thought: 'an old reading is as good as a new one',
    change: [tach(407_000, '2026-01-02T20:00Z')],
    flight: lesson,
    ready: 'cannot-tell',
    because: 'hundred-hour-inspection',
  },
  {
    thought: 'a directive due at the same hours shares the ten hours of grace',
    change: [directive({ state: 'open', nextDue: { by: 'meter', date: null, meter: 'tach', at: 407_000 } })],
    flight: vfr,
    hours: 0.01,
    ready: 'no',
    because: 'directives',
  },
];

const inspections: readonly Wrong[] = [
  {
    thought: 'an annual whose entry gives no total time in service is entered',
    change: [entry('annual', { meters: [] })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'annual-inspection',
  },
  {
    thought: 'a date on the board is an inspection',
    change: [entry('annual', { evidence: 'reported' })],
    flight: vfr,
    ready: 'no',
    because: 'annual-inspection',
  },
  {
    thought: 'an inspection that ended in disapproval was an inspection',
    change: [entry('annual', { outcome: 'disapproved' })],
    flight: vfr,
    ready: 'no',
    because: 'annual-inspection',
  },
  {
    thought: 'any mechanic signs an annual',
    change: [entry('annual', { agency: mechanic })],
    flight: vfr,
    ready: 'no',
    because: 'annual-inspection',
  },
  {
    thought: 'the annual of a progressive program that was left counts from the day it was left',
    change: [
      entries({
        without: ['annual'],
        and: [
          recordOf({
            kind: 'progressive-complete',
            on: '2025-02-10',
            outcome: 'approved',
            agency: trainerRecords.annual.agency,
          }),
        ],
      }),
    ],
    flight: vfr,
    ready: 'no',
    because: 'annual-inspection',
  },
  {
    thought: 'whoever selects a program needs no annual',
    change: [inProgram, entries({ without: ['annual', 'hundred'], and: [programEntry] })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'annual-inspection',
  },
  {
    thought: 'whoever selects a program needs no 100 hours',
    change: [inProgram, entries({ and: [programEntry] })],
    flight: lesson,
    hours: 70.01,
    ready: 'no',
    because: 'hundred-hour-inspection',
  },
  {
    thought: 'a turbine engine is a turbine airplane: a single-engine turboprop selects a program too',
    change: [
      inProgram,
      { configuration: { aircraft: { engine: 'turboprop', engineCount: 1 } } },
      entries({
        without: ['annual'],
        and: [programEntry, { ...trainerRecords.annual, done: { date: '2025-02-10', at: null } }],
      }),
    ],
    flight: vfr,
    ready: 'no',
    because: 'annual-inspection',
  },
  {
    thought: 'a complete progressive inspection restarts the hours whoever signs it',
    change: [
      entries({
        and: [
          recordOf({
            kind: 'progressive-complete',
            on: '2026-03-01',
            outcome: 'approved',
            agency: mechanic,
            meters: [{ meter: 'tach', value: 406_000 }],
          }),
        ],
      }),
    ],
    flight: lesson,
    hours: 70.01,
    ready: 'no',
    because: 'hundred-hour-inspection',
  },
  {
    thought: 'an experimental aircraft without recorded limitations has the usual twelve months',
    change: [
      { configuration: { aircraft: { certificate: 'experimental' } } },
      entries({
        without: ['annual', 'hundred'],
        and: [
          recordOf({
            kind: 'condition-inspection',
            on: '2025-09-10',
            outcome: 'approved',
            agency: trainerRecords.annual.agency,
          }),
        ],
      }),
    ],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'condition-inspection',
  },
  {
    thought: 'the annual covers the emergency transmitter',
    change: [entries({ without: ['locator'] })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'elt',
  },
  {
    thought: 'a battery is a battery: nobody signed for it',
    change: [entry('battery', { agency: null })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'elt',
  },
  {
    thought: 'transmitting counts only where an entry shows it: the counter was read by itself',
    change: [transmitted(150)],
    flight: vfr,
    ready: 'no',
    because: 'elt',
  },
  { thought: 'an hour of transmitting is too much', change: [transmitted(100)], flight: vfr, ready: 'yes' },
  {
    thought: 'a transmitter that is out needs no signature',
    change: [eltOut({ agency: null })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'elt',
  },
  {
    thought: 'any note tells make, model, serial number and reason',
    change: [eltOut({ note: 'ok' })],
    flight: vfr,
    ready: 'no',
    because: 'elt',
  },
  { thought: 'a transmitter that is out grounds', change: [eltOut({})], flight: vfr, ready: 'yes' },
  {
    thought: 'whoever looks at the data has verified them',
    change: [
      supplement(false),
      entries({
        and: [
          recordOf({ kind: 'data-verification', subjects: ['gps1'], on: '2026-03-20', note: 'RNAV 18', agency: null }),
        ],
      }),
    ],
    flight: lpv,
    at: '2026-03-20T15:00Z',
    ready: 'cannot-tell',
    because: 'navigation-data-current',
  },
  {
    thought: 'no directive recorded means none outstanding',
    change: [{ status: { completeness: base.status.completeness.filter((each) => each.list !== 'directives') } }],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'directives',
  },
  {
    thought: 'not applicable needs no reason',
    change: [directive({ state: 'not-applicable', reason: null })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'directives',
  },
  {
    thought: 'due first of date and hours is due last',
    change: [directive({ nextDue: { by: 'first', date: '2026-03-01', meter: 'tach', at: 500_000 } })],
    flight: vfr,
    ready: 'no',
    because: 'directives',
  },
  {
    thought: 'a directive without a due date has time',
    change: [directive({ nextDue: null })],
    flight: vfr,
    ready: 'no',
    because: 'directives',
  },
  {
    thought: 'what was complied with once is done for good, though nobody read up whether it recurs',
    change: [complied({}, { recurs: null })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'directives',
  },
  {
    thought:
      'a directive done again in six calendar months runs on while its point is not stated: done in August, it ended with February',
    change: [complied({ on: '2025-08-10' }, { recurs: true, interval: sixMonths })],
    flight: vfr,
    ready: 'no',
    because: 'directives',
  },
  {
    thought: 'a later point that somebody wrote down stretches the interval of a directive',
    change: [
      complied(
        { on: '2025-08-10' },
        {
          recurs: true,
          interval: sixMonths,
          nextDue: { by: 'date', date: '2026-12-31', meter: null, at: null },
        },
      ),
    ],
    flight: vfr,
    ready: 'no',
    because: 'directives',
  },
  {
    thought: 'what was done on the unit that came out covers the serial number that came in',
    change: [complied({}, { subject: 'nav1', serial: 'another' })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'directives',
  },
  {
    thought: 'a part is as old as its stay in this aircraft: it had 3,000 h behind it',
    change: [
      {
        status: {
          lifeLimits: [
            {
              id: 'hoses',
              name: 'Fuel hoses',
              serial: 'H-4',
              subject: 'hoses',
              mandatory: true,
              document: null,
              life: {
                parts: [{ kind: 'hours', count: 350_000, meter: 'tach', tolerance: null }],
                combine: 'first',
                from: null,
                meters: [{ meter: 'tach', at: 300_000, used: 300_000 }],
              },
              retireBy: null,
            },
          ],
        },
      },
    ],
    flight: vfr,
    ready: 'no',
    because: 'life-limits',
  },
  {
    thought: 'a directive is complied with because it says so: its entry failed',
    change: [complied({ outcome: 'failed' })],
    flight: vfr,
    ready: 'no',
    because: 'directives',
  },
  {
    thought: 'whoever flies may sign for a directive',
    change: [complied({ agency: pilot })],
    flight: vfr,
    ready: 'no',
    because: 'directives',
  },
  {
    thought: 'an entry that nobody signed complies',
    change: [complied({ agency: null })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'directives',
  },
  {
    thought: 'any entry proves any directive: the one named is the VOR check',
    change: [directive({ state: 'complied', method: 'Paragraph (c)', recordId: trainerRecords.vor.id })],
    flight: vfr,
    ready: 'no',
    because: 'directives',
  },
  {
    thought: 'what is no unit of the panel is not fitted: the directive is on a part with a life limit',
    change: [
      directive({ subject: 'hoses' }),
      {
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
      },
    ],
    flight: vfr,
    ready: 'no',
    because: 'directives',
  },
  {
    thought: 'the altimeter test alone clears IFR: appendix F is asked too',
    change: [done('transponder', '2024-02-28')],
    flight: ifr,
    ready: 'no',
    because: 'static-altimeter-test',
  },
  {
    thought: 'good weather saves IFR in controlled airspace',
    change: [done('static', '2024-02-28')],
    flight: { ...ifr, topFt: 3_000 },
    ready: 'no',
    because: 'static-altimeter-test',
  },
  {
    thought: 'a lapsed static test costs visual flight too',
    change: [done('static', '2024-02-28')],
    flight: classC,
    ready: 'yes',
  },
  {
    thought: 'an altimeter new under its TSO is tested to any altitude',
    change: [unit('alt1', { manufactured: '2025-06-01', typeId: 'al3-tso' }), entries({ without: ['altimeter'] })],
    flight: ifr,
    ready: 'cannot-tell',
    because: 'ifr-altitude-limit',
  },
  {
    thought: 'a lapsed transponder test with ADS-B in the box grounds, or costs nothing: two texts collide',
    change: [done('transponder', '2024-02-28')],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'transponder-test',
  },
  {
    thought: 'the ILS falls with the VOR check',
    change: [done('vor', '2026-01-01')],
    flight: ils,
    ready: 'yes',
  },
  {
    thought: 'an airborne check is as good as one on the ground',
    change: [vorRead({ method: 'airborne-checkpoint', earlierMethodsUnavailable: false })],
    flight: vor,
    ready: 'no',
    because: 'vor-check',
  },
  {
    thought: 'two sets on one antenna switch may check each other whatever they share',
    change: [vorRead({ method: 'dual', otherIndicatedDeg: 271, independentUnits: false, sameStation: true })],
    flight: vor,
    ready: 'no',
    because: 'vor-check',
  },
  {
    thought: 'a receiver may check itself against its aircraft',
    change: [
      entry('vor', {
        subjects: ['nav1', 'aircraft'],
        readings: readingsOf({ vor: dualVorCheck(118, 119) }),
      }),
    ],
    flight: vor,
    ready: 'no',
    because: 'vor-check',
  },
  {
    thought: 'a test signal may stand for any bearing',
    change: [vorRead({ method: 'test-signal', expectedDeg: 90, indicatedDeg: 90 })],
    flight: vor,
    ready: 'no',
    because: 'vor-check',
  },
  {
    thought: 'a test signal reads 0 degrees only',
    change: [vorRead({ method: 'test-signal', expectedDeg: 180, indicatedDeg: 182 })],
    flight: vor,
    ready: 'yes',
  },
  {
    thought: 'whoever ferries with the crew alone needs no emergency transmitter',
    change: [entry('locator', { done: { date: '2024-09-10', at: null } })],
    flight: { ...vfr, purpose: 'ferry', crewOnly: true },
    ready: 'cannot-tell',
    because: 'elt',
  },
  {
    thought: 'an inspection counts before it was done',
    change: [entry('annual', { done: { date: '2026-03-20', at: null } })],
    flight: vfr,
    ready: 'no',
    because: 'annual-inspection',
  },
  {
    thought: 'a unit that came after the list of directives has none',
    change: [unit('nav1', { fitted: { date: '2025-09-11', at: null } })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'directives',
  },
  {
    thought: 'the list of directives is good for twelve months to the day',
    change: [listed('2025-03-02')],
    flight: vfr,
    at: '2026-03-31T20:00Z',
    ready: 'yes',
  },
  {
    thought: 'the list of directives stated once is stated for good',
    change: [listed('2025-03-02'), tach(407_000, '2026-03-31T20:00Z')],
    flight: vfr,
    at: '2026-04-01T05:00Z',
    ready: 'cannot-tell',
    because: 'directives',
  },
  {
    thought: 'the signal of a repair station needs no entry of its own',
    change: [vorRead({ method: 'repair-station-signal', stationEntryMade: false })],
    flight: vor,
    ready: 'no',
    because: 'vor-check',
  },
];

const off = { deactivated: { since: { date: '2026-03-10', at: null }, placarded: true, recorded: true } };
const fedUnits: readonly Wrong[] = [
  {
    thought: 'a manual that states no current says that the unit draws none',
    change: [
      unit('gps1', { typeId: 'nx5-silent', approval: null }),
      {
        configuration: {
          electrical: {
            circuits: (base.configuration.electrical?.circuits ?? []).filter(({ id }) => id !== 'c-gps1'),
          },
        },
      },
    ],
    flight: lpv,
    ready: 'cannot-tell',
    because: 'power-supplied',
  },
  {
    thought: 'a transponder whose encoder is out of use reports altitude',
    change: [unit('enc1', off)],
    flight: classC,
    ready: 'no',
    because: 'transmitter-fed',
  },
  {
    thought: 'ADS-B whose position source is out of use transmits what is asked',
    change: [unit('gps1', off)],
    flight: classC,
    ready: 'no',
    because: 'transmitter-fed',
  },
  {
    thought: 'a transponder without an encoder grounds visual flight away from such airspace',
    change: [unit('enc1', off)],
    flight: { ...vfr, topFt: 3_000 },
    ready: 'yes',
  },
];

const noTransponder = unit('xpdr1', off);
const altitude: readonly Wrong[] = [
  {
    thought: 'airspace must be named: at 10,000 ft the altitude itself asks for a transponder',
    change: [noTransponder],
    flight: { ...vfr, topFt: 10_000 },
    ready: 'no',
  },
  { thought: 'just below it does too', change: [noTransponder], flight: { ...vfr, topFt: 9_999 }, ready: 'yes' },
];

const staticLeak = (part: Partial<StaticLeakReadings>): Part<Dossier> =>
  entry('static', {
    readings: readingsOf({
      staticLeak: { ...(trainerRecords.static.readings?.staticLeak as StaticLeakReadings), ...part },
    }),
  });

const readings: readonly Wrong[] = [
  {
    thought: 'a static system that does not leak has passed, whatever stands in its lines',
    change: [staticLeak({ lossFt: 0, linesClear: false })],
    flight: ifr,
    ready: 'no',
    because: 'static-leak-reading',
  },
  {
    thought: 'a heater of the static ports that nobody tried is one that is not fitted',
    change: [staticLeak({ portHeater: null })],
    flight: ifr,
    ready: 'cannot-tell',
    because: 'static-leak-reading',
  },
  {
    thought: 'a test that was entered as passed needs no look at its readings',
    change: [
      entry('altimeter', {
        readings: readingsOf({ altimeter: { ...perfectAltimeter(), caseLeakFt: 101 } }),
      }),
    ],
    flight: ifr,
    ready: 'no',
    because: 'altimeter-readings',
  },
  {
    thought: 'a table point that was not read passes',
    change: [
      entry('altimeter', {
        readings: readingsOf({
          altimeter: { ...perfectAltimeter(), scaleError: perfectAltimeter().scaleError.slice(1) },
        }),
      }),
    ],
    flight: ifr,
    ready: 'cannot-tell',
    because: 'altimeter-readings',
  },
  {
    thought: 'a signer’s word outweighs a test set out of calibration',
    change: [entry('altimeter', { instrument: { serial: 'TS-17', calibratedUntil: '2025-05-05' } })],
    flight: ifr,
    ready: 'no',
    because: 'static-altimeter-test',
  },
  {
    thought: 'a mechanic may test a transponder',
    change: [entry('transponder', { agency: mechanic })],
    flight: classC,
    ready: 'no',
    because: 'transponder-test',
  },
  {
    thought: '125.4 watts is enough where the limit is 21.0 dBW',
    change: [
      entry('transponder', {
        readings: readingsOf({ transponder: { ...goodAtcrbs(), peakPowerW: 125.4 } }),
      }),
    ],
    flight: classC,
    ready: 'no',
    because: 'transponder-readings',
  },
  {
    thought: 'a portable set takes 3 dB off in whichever direction helps',
    change: [
      entry('transponder', {
        readings: readingsOf({ transponder: { ...goodModeS(), testSet: 'portable', mtlModeSDbm: -70 } }),
      }),
    ],
    flight: classC,
    ready: 'cannot-tell',
    because: 'transponder-readings',
  },
  {
    thought: 'an old test is judged by today’s text: the combined all-call was asked until 16 October 2023',
    change: [
      entry('transponder', {
        done: { date: '2023-10-16', at: null },
        readings: readingsOf({ transponder: goodModeS() }),
      }),
    ],
    flight: classC,
    at: '2025-10-20T16:00Z',
    ready: 'cannot-tell',
    because: 'transponder-readings',
  },
  {
    thought: 'correspondence is a matter of IFR alone',
    change: [
      entry('correspondence', {
        readings: readingsOf({ correspondence: { points: [{ altimeterFt: 9_974, reportedFt: 10_100 }] } }),
      }),
    ],
    flight: classC,
    ready: 'no',
    because: 'altitude-correspondence',
  },
  {
    thought: 'how high the test went is a note',
    change: [entry('reporting', { testedToFt: 8_999 })],
    flight: ifr,
    ready: 'no',
    because: 'ifr-altitude-limit',
  },
  {
    thought: 'the entry says how high the test went, though its readings stop lower',
    change: [entry('altimeter', { readings: readingsOf({ altimeter: perfectAltimeter(10_000) }) })],
    flight: { ...ifr, topFt: 18_000 },
    ready: 'no',
    because: 'ifr-altitude-limit',
  },
  {
    thought: 'the class typed with the readings is the class of the unit',
    change: [entry('transponder', { readings: readingsOf({ transponder: goodAtcrbs() }) })],
    flight: classC,
    ready: 'cannot-tell',
    because: 'transponder-readings',
  },
  {
    thought: 'an altimeter that is new under its TSO may fail its test',
    change: [
      unit('alt1', { manufactured: '2025-06-01', typeId: 'al3-tso' }),
      entry('altimeter', { done: { date: '2026-03-01', at: null }, outcome: 'failed' }),
    ],
    flight: ifr,
    ready: 'no',
    because: 'static-altimeter-test',
  },
  {
    thought: 'a compass out of its limits grounds',
    change: [
      entries({
        and: [
          recordOf({
            kind: 'compass-swing',
            on: '2026-03-01',
            agency: mechanic,
            readings: readingsOf({
              compass: {
                points: [{ headingDeg: 0, compassDeg: 20 }],
                enginesRunning: true,
                radiosStated: true,
                electricLoadsPlacarded: false,
              },
            }),
          }),
        ],
      }),
    ],
    flight: ifr,
    ready: 'yes',
  },
];

const afterWork: readonly Wrong[] = [
  {
    thought: 'a leak test from before the opening closes it',
    change: [owed('static-leak-test', 'static-1'), tested('static-leak-test', 'static-1', '2026-03-11')],
    flight: ifr,
    ready: 'no',
    because: 'tests-after-change',
  },
  {
    thought: 'a leak test of the same day came after the opening',
    change: [owed('static-leak-test', 'static-1'), tested('static-leak-test', 'static-1', '2026-03-12')],
    flight: ifr,
    ready: 'cannot-tell',
    because: 'tests-after-change',
  },
  {
    thought: 'on one day the clock does not matter',
    change: [
      owed('static-leak-test', 'static-1', '2026-03-12T15:00Z'),
      tested('static-leak-test', 'static-1', '2026-03-12', '2026-03-12T14:59Z'),
    ],
    flight: ifr,
    ready: 'no',
    because: 'tests-after-change',
  },
  {
    thought: 'a later leak test leaves it open',
    change: [owed('static-leak-test', 'static-1'), tested('static-leak-test', 'static-1', '2026-03-13')],
    flight: ifr,
    ready: 'yes',
  },
  {
    thought: 'an opened static system costs visual flight',
    change: [owed('static-leak-test', 'static-1')],
    flight: vfr,
    ready: 'yes',
  },
  { thought: 'an owed compass swing grounds', change: [owed('compass-swing', 'aircraft')], flight: ifr, ready: 'yes' },
  {
    thought: 'one signature is enough for the controls after work behind the panel',
    change: [
      owed('controls-check', 'aircraft'),
      entries({
        and: [recordOf({ kind: 'controls-check', on: '2026-03-13', agency: mechanic, secondPerson: mechanic.name })],
      }),
    ],
    flight: vfr,
    ready: 'no',
    because: 'controls-free-and-secured',
  },
];

/** The trainer after work of 12 March, and what was entered the day after it. */
const worked = (...changes: readonly Change[]): Dossier => changes.reduce(apply, base);
const work = { version: 1 as const, performed: { date: '2026-03-12', at: null } };
const enter = (kind: RecordHead['kind'], subject: string): Change => ({
  kind: 'record.add',
  version: 1,
  record: recordOf({
    kind,
    subjects: [subject],
    on: '2026-03-13',
    outcome: 'approved',
    agency: radioStation,
    note: 'Done.',
  }),
});
const feedOfGps = base.configuration.links.find(
  (each) => each.fromUnit === 'gps1',
) as Dossier['configuration']['links'][number];
const part = (touched: Extract<Change, { kind: 'link.disconnect' }>['touched']): Change => ({
  ...work,
  kind: 'link.disconnect',
  linkId: feedOfGps.id,
  touched,
  reason: 'Rewired',
});
const darkNav = trainer(defect({ deferral: null }));
const closed = (how: Extract<Change, { kind: 'defect.close' }>['how']): Dossier =>
  apply(darkNav, {
    ...work,
    kind: 'defect.close',
    defectId: 'd1',
    how,
    by: mechanic,
    touched: ['nothing'],
    entry: 'p. 4',
  });
const kinds: readonly Wrong[] = [
  {
    thought: 'a joint of which nobody said what it touched has touched nothing',
    dossier: worked(part([]), enter('release-entry', 'gps1')),
    flight: vfr,
    ready: 'cannot-tell',
    because: 'tests-after-change',
  },
  {
    thought: 'a joint wants no approval for return to service',
    dossier: worked(part(['nothing'])),
    flight: vfr,
    ready: 'no',
    because: 'tests-after-change',
  },
  {
    thought: 'a joint that touched nothing, said so and was released, leaves something open',
    dossier: worked(part(['nothing']), enter('release-entry', 'gps1')),
    flight: vfr,
    ready: 'yes',
  },
  {
    thought: 'a unit that is switched on again without a word has touched nothing',
    dossier: worked({ ...work, kind: 'unit.reactivate', unitId: 'nav1', touched: [] }, enter('release-entry', 'nav1')),
    flight: vfr,
    ready: 'cannot-tell',
    because: 'tests-after-change',
  },
  {
    thought: 'a repair ends with the repair',
    dossier: closed('repaired'),
    flight: vfr,
    ready: 'no',
    because: 'tests-after-change',
  },
  {
    thought: 'looking at an item and finding nothing is a repair',
    dossier: closed('no-fault-found'),
    flight: vfr,
    ready: 'yes',
  },
];

const antennas = (list: Dossier['configuration']['antennas']): Part<Dossier> => ({ configuration: { antennas: list } });
const universalAccess: Part<Dossier> = unit('xpdr1', { typeId: 'ms4-uat' });
const fitted: readonly Wrong[] = [
  {
    thought: 'what sends by universal access needs no antenna that anybody must record',
    change: [universalAccess],
    flight: classC,
    ready: 'no',
    because: 'antenna-fitted',
  },
  {
    thought: 'universal access is no ADS-B Out in Class C, though it has its antenna',
    change: [
      universalAccess,
      antennas([
        ...base.configuration.antennas,
        { id: 'a-uat', kind: 'uat', units: ['xpdr1'], approved: true, xIn: null, yIn: null },
      ]),
    ],
    flight: classC,
    ready: 'yes',
  },
  {
    thought: 'what was made after 11 March 1996 was certificated after it, so that it needs anticollision lights',
    change: [
      {
        configuration: {
          aircraft: { basis: { code: 'part-23', amendment: 3 }, manufactured: '1998-05-04' },
          equipment: base.configuration.equipment.map((each) =>
            each.item === 'anticollision-lights' ? { ...each, state: 'absent' as const } : each,
          ),
        },
      },
    ],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'day-equipment',
  },
  {
    thought: 'an emergency transmitter that was inspected is heard without an antenna',
    change: [antennas(base.configuration.antennas.filter(({ id }) => id !== 'a-elt'))],
    flight: vfr,
    ready: 'no',
    because: 'elt',
  },
  {
    thought: 'an aircraft of which nothing is recorded has nothing wrong',
    dossier: dossierOf({}),
    flight: vfr,
    ready: 'cannot-tell',
    because: 'kind-of-operation',
  },
  {
    thought: 'a VFR unit that works gives no doubt: the placard stayed after the approval for IFR',
    change: [
      {
        configuration: {
          placards: [{ id: 'p', kind: 'gnss-vfr-only', unitId: 'gps1', inView: true, text: 'VFR only' }],
        },
      },
    ],
    flight: lpv,
    ready: 'cannot-tell',
    because: 'vfr-limited-placard',
  },
  {
    thought: 'ADS-B Out with the letter that the rule names serves, whatever its class of power',
    change: [unit('xpdr1', { typeId: 'ms4-weak' })],
    flight: classC,
    ready: 'no',
    because: 'ads-b-out-fitted',
  },
  {
    thought: 'an inoperative item may be flown with once somebody put up a placard',
    change: [defect({ subject: 'clock', deferral: deferralOf({ on: '2026-03-11', noHazardBy: null }) })],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'open-defects',
  },
  {
    thought: 'what is deactivated is dealt with: no placard, no entry',
    change: [unit('xpdr1', deactivated(false, false))],
    flight: vfr,
    ready: 'no',
    because: 'deactivated-units',
  },
  {
    thought: 'what is deactivated is placarded, though nobody looked',
    change: [unit('xpdr1', deactivated(null, true))],
    flight: vfr,
    ready: 'cannot-tell',
    because: 'deactivated-units',
  },
  {
    thought: 'a unit that is deactivated as it must be grounds',
    change: [unit('xpdr1', deactivated(true, true))],
    flight: vfr,
    ready: 'yes',
  },
  {
    thought: 'a deferred item costs nothing more: what needs it is lost',
    change: [defect({})],
    flight: vor,
    ready: 'no',
    because: 'open-defects',
  },
  { thought: 'a deferred item grounds all the same', change: [defect({})], flight: vfr, ready: 'yes' },
  {
    thought: 'every defect grounds: wear is wear',
    change: [defect({ kind: 'wear', deferral: null })],
    flight: vor,
    ready: 'yes',
  },
  {
    thought: 'a discrepancy that makes unairworthy can be deferred',
    change: [defect({ kind: 'discrepancy' })],
    flight: vfr,
    ready: 'no',
    because: 'open-defects',
  },
  {
    thought: 'a deferral lasts: nobody looked again at the next inspection',
    change: [
      defect({
        subject: 'nav1',
        raised: { date: '2025-09-01', at: null },
        deferral: deferralOf({ on: '2025-09-01' }),
      }),
    ],
    flight: vfr,
    ready: 'no',
    because: 'deferral-due',
  },
  {
    thought: 'a deferral must be repaired at the next inspection: it must be looked at again',
    change: [
      defect({
        raised: { date: '2025-09-01', at: null },
        deferral: deferralOf({ on: '2025-09-01', reinspectedOn: '2026-02-20' }),
      }),
    ],
    flight: vfr,
    ready: 'yes',
  },
  {
    thought: 'ADS-B that does not work is ADS-B not fitted: equipped aircraft transmit everywhere',
    change: [defect({ subject: 'xpdr1', deferral: null })],
    flight: vfr,
    ready: 'no',
    because: 'open-defects',
  },
  {
    thought: 'the missing sizes of an old unit cost IFR',
    change: [{ configuration: { openings: [] } }, unit('nav1', { openingId: null, offsetIn: null })],
    flight: ils,
    ready: 'yes',
  },
  {
    thought: 'figures of a certification basis that nobody recorded ground',
    change: [{ configuration: { aircraft: { basis: null } } }],
    flight: ifr,
    ready: 'yes',
  },
  {
    thought: 'an experimental aircraft flies at night like any other',
    change: [
      {
        configuration: {
          aircraft: { certificate: 'experimental' },
          authority: { ...base.configuration.authority, nightVfr: false, conditionInspectionMonths: 12 },
        },
      },
    ],
    flight: { ...vfr, light: 'night' },
    ready: 'no',
    because: 'kind-of-operation',
  },
];

const withoutElt: Part<Dossier> = {
  configuration: { units: base.configuration.units.filter((each) => each.id !== 'elt1') },
};
const ferry: FlightConditions = { ...vfr, purpose: 'ferry', crewOnly: true };
const errandsOfFlights: readonly Wrong[] = [
  {
    thought: 'any ferry flight with the crew alone goes without a transmitter',
    change: [withoutElt],
    flight: { ...ferry, errand: 'none-of-these' },
    ready: 'no',
    because: 'elt',
  },
  {
    thought: 'a ferry flight whose errand nobody said is one of those excepted',
    change: [withoutElt],
    flight: ferry,
    ready: 'cannot-tell',
    because: 'elt',
  },
  {
    thought: 'a newly acquired airplane may take somebody along to where its transmitter is fitted',
    change: [withoutElt],
    flight: { ...ferry, crewOnly: false, errand: 'newly-acquired' },
    ready: 'no',
    because: 'elt',
  },
  {
    thought: 'an airplane without a transmitter is on its way to the repair of one',
    change: [withoutElt],
    flight: { ...ferry, errand: 'to-repair-of-elt' },
    ready: 'no',
    because: 'elt',
  },
  {
    thought: 'every handing over of an old airplane is a delivery',
    change: [withoutElt],
    flight: { ...ferry, errand: 'manufacture-or-delivery' },
    ready: 'no',
    because: 'elt',
  },
];

const asFound = approvalOf({ basis: 'as-found', acceptedBy: { asOf: '2025-01-10', by: 'R. Tamsin' } });
const neverTested = entries({ without: ['correspondence', 'reporting'] });
const correspondences: readonly Wrong[] = [
  {
    thought: 'what was never tested is not asked: reported and displayed altitude were fitted together once',
    change: [neverTested],
    flight: classC,
    ready: 'cannot-tell',
    because: 'altitude-correspondence',
  },
  {
    thought: 'a test of the transponder says that the altitude it reports is that of the altimeter',
    change: [
      entries({ without: ['correspondence', 'reporting'], and: [{ ...trainerRecords.transponder, id: 'newer' }] }),
    ],
    flight: classC,
    ready: 'cannot-tell',
    because: 'altitude-correspondence',
  },
  {
    thought: 'what a named person accepted as found is asked again',
    change: [
      neverTested,
      {
        configuration: {
          units: base.configuration.units.map((each) =>
            ['enc1', 'xpdr1'].includes(each.id) ? { ...each, approval: asFound } : each,
          ),
        },
      },
    ],
    flight: classC,
    ready: 'yes',
  },
];

const islands: FlightConditions = { ...lpv, region: 'Islands' };
const loaded = (part: Partial<DatabaseLoad>): Part<Dossier> => ({ status: { loads: [load(part)] } });
const gpsAlone: Part<Dossier> = entries({ without: ['vor'] });
const data: readonly Wrong[] = [
  {
    thought: 'data in force are good everywhere',
    change: [loaded({ coverage: ['Mainland'] })],
    flight: islands,
    ready: 'no',
    because: 'data-fits-flight',
  },
  {
    thought: 'a region that nobody recorded is the one of the flight',
    change: [loaded({ coverage: null })],
    flight: islands,
    ready: 'cannot-tell',
    because: 'data-fits-flight',
  },
  {
    thought: 'data in force may be flown whatever their provider warns of',
    change: [loaded({ notices: [{ on: 'procedure', against: 'RNAV 18' }] })],
    flight: lpv,
    ready: 'cannot-tell',
    because: 'data-fits-flight',
  },
  {
    thought: 'a notice against a procedure costs the route',
    change: [gpsAlone, loaded({ notices: [{ on: 'procedure', against: 'RNAV 18' }] })],
    flight: ifr,
    ready: 'yes',
  },
  {
    thought: 'an update is no maintenance, however it was made',
    dossier: apply(base, { kind: 'database.load', version: 1, load: load({ fromFlightDeck: false }) }),
    flight: vfr,
    ready: 'no',
    because: 'tests-after-change',
  },
];

const covered: Partial<Link> = {
  cover: {
    by: 'installation-approval',
    document: { title: 'Approved data', revision: 'A', date: null },
    acceptedBy: null,
  },
};
const lamp = (id: string, part: Partial<InstalledUnit> = {}) =>
  unitOf({ id, typeId: 'lx2', place: 'glareshield', approval: approvalOf(), massLb: 0.2, ...part });
const flagTo = (id: string) => linkOf('gps1', 'integrity-flag', id, 'INTEG', covered);
const placed = (id: string, part: Partial<InstalledUnit>) =>
  base.configuration.units.map((each) => (each.id === id ? { ...each, ...part } : each));
/** The navigator out of the pilot's view, with annunciators that repeat what it says. */
const farNavigator = (told: readonly InstalledUnit[]): Part<Dossier> => ({
  configuration: {
    units: [...told, ...placed('gps1', { place: 'copilot-panel' })].sort((a, b) => (a.id < b.id ? -1 : 1)),
    links: [...base.configuration.links, ...told.map(({ id }) => flagTo(id))],
    electrical: {
      circuits: [
        ...(base.configuration.electrical?.circuits ?? []),
        circuitOf({ id: 'c-lamps', units: told.map(({ id }) => id) }),
      ],
    },
  },
});
/** Both sources on the indicator that does not label itself, through a selector whose position a lamp shows. */
const sharedThroughSelector: Part<Dossier> = {
  configuration: {
    units: [
      lamp('ann1'),
      ...base.configuration.units,
      unitOf({ id: 'sel1', functions: ['source-selector'], approval: approvalOf() }),
    ],
    links: [
      ...base.configuration.links.filter((each) => !['cdi1', 'cdi2'].includes(each.toUnit)),
      linkOf('gps1', 'P1-LAT', 'sel1', 'A', covered),
      linkOf('gps1', 'P1-VERT', 'sel1', 'B', covered),
      linkOf('nav1', 'LAT', 'sel1', 'C', covered),
      linkOf('nav1', 'VERT', 'sel1', 'D', covered),
      linkOf('sel1', 'lateral-deviation', 'cdi2', 'LAT', covered),
      linkOf('sel1', 'vertical-deviation', 'cdi2', 'VERT', covered),
      linkOf('sel1', 'source-status', 'ann1', 'SOURCE', covered),
    ],
    electrical: {
      circuits: [...(base.configuration.electrical?.circuits ?? []), circuitOf({ id: 'c-lamps', units: ['ann1'] })],
    },
  },
};
const unstated = (list: 'links'): Part<Dossier> => ({
  status: { completeness: base.status.completeness.filter((each) => each.list !== list) },
});

const annunciators: readonly Wrong[] = [
  {
    thought: 'a navigator out of view is lost, whatever repeats it',
    change: [farNavigator([lamp('ann1')])],
    flight: lpv,
    ready: 'yes',
  },
  {
    thought: 'a deferred annunciator costs nothing, as no source and no indicator is inoperative',
    change: [farNavigator([lamp('ann1')]), defect({ subject: 'ann1' })],
    flight: lpv,
    ready: 'no',
    because: 'open-defects',
  },
  {
    thought: 'a deferred annunciator costs the approach, though another in view repeats it',
    change: [farNavigator([lamp('ann1'), lamp('ann2')]), defect({ subject: 'ann1' })],
    flight: lpv,
    ready: 'yes',
  },
  {
    thought: 'a deferred annunciator costs what never leaned on it',
    change: [farNavigator([lamp('ann1')]), defect({ subject: 'ann1' })],
    flight: ils,
    ready: 'yes',
  },
  {
    thought: 'a deactivated annunciator still annunciates',
    change: [farNavigator([lamp('ann1', deactivated(true, true))])],
    flight: lpv,
    ready: 'no',
    because: 'integrity-annunciation',
  },
  {
    thought: 'an annunciator fed at a voltage that is not its own is a matter of the plan alone',
    change: [farNavigator([lamp('ann1', { typeId: 'lx3' })])],
    flight: lpv,
    ready: 'no',
    because: 'power-supplied',
  },
  {
    thought: 'an annunciator counts wherever it sits',
    change: [farNavigator([lamp('ann1', { place: 'remote' })])],
    flight: lpv,
    ready: 'no',
    because: 'integrity-annunciation',
  },
  {
    thought: 'an annunciator counts though nobody recorded where it sits',
    change: [farNavigator([lamp('ann1', { place: null })])],
    flight: lpv,
    ready: 'cannot-tell',
    because: 'integrity-annunciation',
  },
  {
    thought: 'the screen of another navigator annunciates, as it hears the data',
    change: [
      {
        configuration: {
          units: [
            ...placed('gps1', { place: 'copilot-panel' }),
            unitOf({
              id: 'gps2',
              functions: ['gnss', 'integrity-annunciation', 'approach-annunciation'],
              place: 'centre-stack',
            }),
          ],
          links: [
            ...base.configuration.links,
            linkOf('gps1', 'data', 'gps2', 'data', covered),
            linkOf('gps2', 'data', 'gps1', 'data', covered),
          ],
        },
      },
    ],
    flight: lpv,
    ready: 'no',
    because: 'integrity-annunciation',
  },
  {
    thought: 'one indicator for two sources is lost, though a lamp shows which it follows',
    change: [sharedThroughSelector],
    flight: lpv,
    ready: 'yes',
  },
  {
    thought: 'the lamp that shows which source is followed costs nothing when it is deferred',
    change: [sharedThroughSelector, defect({ subject: 'ann1' })],
    flight: ifr,
    ready: 'no',
    because: 'open-defects',
  },
];

const joints: readonly Wrong[] = [
  {
    thought: 'a joint that nobody recorded is none',
    change: [{ configuration: { links: [] } }, unstated('links')],
    flight: ifr,
    ready: 'cannot-tell',
    because: 'lateral-indicator',
  },
  {
    thought: 'a joint that is none may be there all the same',
    change: [{ configuration: { links: [] } }],
    flight: ifr,
    ready: 'no',
    because: 'lateral-indicator',
  },
  {
    thought: 'the wire of the glide path that nobody recorded is none',
    change: [
      { configuration: { links: base.configuration.links.filter((each) => each.fromPort !== 'VERT') } },
      unstated('links'),
    ],
    flight: ils,
    ready: 'cannot-tell',
    because: 'vertical-indicator',
  },
  {
    thought: 'nothing repeats a navigator out of view, as no joint is recorded',
    change: [unit('gps1', { place: 'copilot-panel' }), unstated('links')],
    flight: lpv,
    ready: 'cannot-tell',
    because: 'integrity-annunciation',
  },
  {
    thought: 'something repeats a navigator out of view, though the joints are all',
    change: [unit('gps1', { place: 'copilot-panel' })],
    flight: lpv,
    ready: 'no',
    because: 'integrity-annunciation',
  },
];

const handHeld = unitOf({ id: 'hand', functions: ['com', 'portable-display'] });
const portable: readonly Wrong[] = [
  {
    thought: 'a portable radio stands in for the fitted one',
    change: [{ configuration: { units: [...placed('nav1', deactivated(true, true)), handHeld] } }],
    flight: ifr,
    ready: 'no',
  },
  {
    thought: 'a portable radio beside the fitted one takes something away',
    change: [{ configuration: { units: [...base.configuration.units, handHeld] } }],
    flight: classC,
    ready: 'yes',
  },
];

const groups = {
  annunciators,
  joints,
  'what is portable': portable,
  data,
  correspondence: correspondences,
  errands: errandsOfFlights,
  time,
  hours,
  inspections,
  'what is fed': fedUnits,
  altitude,
  readings,
  'after work': afterWork,
  'kinds of work': kinds,
  'what is fitted': fitted,
};

describe.each(Object.entries(groups))('wrong ways to think of %s', (_group, cases) => {
  it.each(cases.map((each) => [each.thought, each] as const))('%s', (_thought, each) => {
    const dossier = each.dossier ?? trainer(...(each.change ?? []));
    const hours = each.hours ?? 0;
    const instant = each.at ?? goodDay;
    const to = instantOf(minutesOf(instant) + Math.ceil(hours * 60));
    const moment = { instant, to, hoursAhead: Math.round(hours * 100) };
    const verdict = assess(dossier, catalogue, moment, each.flight).operations['flight'];
    expect(verdict?.ready).toBe(each.ready);
    if (each.because) expect(verdict?.because.map((key) => key.split('|')[0])).toContain(each.because);
  });
});

const weighed = base.configuration.mass;
if (weighed === null) throw new Error('The trainer has no empty-weight record.');
/** The trainer with another envelope, or with changes of weight. */
const massOf = (part: Partial<typeof weighed>): Part<Dossier> => ({ configuration: { mass: { ...weighed, ...part } } });
const refitted = (...ids: readonly string[]): Part<Dossier> => ({
  configuration: {
    units: base.configuration.units.map((each) =>
      ids.includes(each.id) ? { ...each, fitted: { date: '2025-06-01', at: null } } : each,
    ),
  },
});
const note = { what: 'Navigator', weightLb: 0.5, armIn: 40, on: '2025-06-01', listed: true };
const removed = apply(base, {
  kind: 'unit.remove',
  version: 1,
  unitId: 'cdi2',
  performed: { date: '2025-06-01', at: null },
  reason: 'Sold',
  touched: ['nothing'],
  mass: null,
});
/** What is open at a release: weights stop no flight by the record, but the work that left them unknown. */
const weights: readonly (Pick<Wrong, 'thought' | 'change' | 'dossier'> & {
  readonly rule: string;
  readonly outcome: 'not-met' | 'cannot-tell';
})[] = [
  {
    thought: 'limits hold on the way between two full stations where they hold at both',
    change: [
      massOf({
        emptyWeightLb: 2000,
        emptyArmIn: 37.5,
        envelope: {
          points: [
            { weightLb: 2000, forwardIn: 36, aftIn: 46 },
            { weightLb: 2200, forwardIn: 39, aftIn: 46 },
            { weightLb: 2400, forwardIn: 39, aftIn: 46 },
          ],
          stations: [{ name: 'Fuel', armIn: 48, leastLb: 0, mostLb: 400 }],
          leadingEdgeIn: null,
          document: { title: 'Flight manual, section 6', revision: '4', date: null },
        },
      }),
    ],
    rule: 'loaded-extremes',
    outcome: 'not-met',
  },
  {
    thought: 'a unit that nobody weighed weighs nothing',
    change: [refitted('gps1')],
    rule: 'loaded-extremes',
    outcome: 'cannot-tell',
  },
  {
    thought: 'one change of a day speaks of all that went in on it',
    change: [refitted('gps1', 'cdi1'), massOf({ changesSince: [note] })],
    rule: 'loaded-extremes',
    outcome: 'cannot-tell',
  },
  {
    thought: 'one small change of a day speaks of all that went in on it',
    change: [refitted('gps1', 'cdi1'), massOf({ changesSince: [note] })],
    rule: 'empty-weight-record',
    outcome: 'cannot-tell',
  },
  {
    thought: 'one listed change of a day lists all that went in on it',
    change: [refitted('gps1', 'cdi1'), massOf({ changesSince: [note] })],
    rule: 'equipment-list-current',
    outcome: 'not-met',
  },
  {
    thought: 'a unit that nobody weighed when it was taken out weighed nothing',
    dossier: removed,
    rule: 'loaded-extremes',
    outcome: 'cannot-tell',
  },
  {
    thought: 'what was taken out without a word of its weight changes no weight',
    dossier: removed,
    rule: 'empty-weight-record',
    outcome: 'cannot-tell',
  },
  {
    thought: 'what was taken out without a change on the list has left the list',
    dossier: removed,
    rule: 'equipment-list-current',
    outcome: 'cannot-tell',
  },
  {
    thought: 'work of a later day shows that nothing was taken out before it',
    dossier: apply(removed, {
      kind: 'work.done',
      version: 1,
      unitId: null,
      performed: { date: '2025-08-01', at: null },
      touched: ['nothing'],
      what: 'Seats taken out and put back',
    }),
    rule: 'empty-weight-record',
    outcome: 'cannot-tell',
  },
];

describe('wrong ways to think of weights', () => {
  const openOf = (dossier: Dossier, rule: string) =>
    openAtRelease(dossier, trainerCatalogue, goodDay).find((each) => each.ruleId === rule)?.outcome;

  it.each(weights.map((each) => [each.thought, each] as const))(
    '%s',
    (_thought, { change, dossier, rule, outcome }) => {
      expect(openOf(dossier ?? trainer(...(change ?? [])), rule)).toBe(outcome);
      expect(openOf(base, rule)).toBeUndefined();
    },
  );
});

it('the well-kept trainer flies all of these flights, so that each answer above comes from its one change', () => {
  for (const flight of [vfr, ifr, classC, lesson, vor, ils, lpv])
    expect(assess(base, trainerCatalogue, { instant: goodDay }, flight).operations['flight']?.ready).toBe('yes');
});

it('an answer names the zone data it was made with: two that differ may rest on other midnights', () => {
  expect(assess(base, trainerCatalogue, { instant: goodDay }, vfr).of.zones).toBe(zoneDataVersion);
});
