import { mechanic, pilot, readingsOf, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { dualVorCheck, vorCheck as checkOf } from '../../../testing/sample-readings.js';
import type { Policy } from '../../catalogue/policy.js';
import type { VorReadings } from '../../dossier/readings.js';
import type { RecordHead } from '../../dossier/status.js';
import { vorCheck } from './vor-check.js';

const units = [
  unitOf({ id: 'nav1', functions: ['vor-receiver', 'loc-receiver', 'gs-receiver'] }),
  unitOf({ id: 'nav2', functions: ['vor-receiver'] }),
  unitOf({ id: 'com1', functions: ['com'] }),
];
const check = (vor: VorReadings | null, part: Partial<RecordHead> = {}) =>
  recordOf({
    kind: 'vor-check',
    subjects: ['nav1'],
    on: '2026-01-31',
    place: 'Field',
    agency: pilot,
    readings: vor === null ? null : readingsOf({ vor }),
    ...part,
  });
const of = (...records: readonly RecordHead[]) => dossierOf({ configuration: { units } }, { status: { records } });
const ground = (error: number, part: Partial<VorReadings> = {}) => ({ ...checkOf('test-signal', 0, error), ...part });
const good = ground(2);
const soon = '2026-02-05T12:00Z';
const ifr = { rules: 'ifr' } as const;
const earlierFrom = (from: string): Policy => ({ kind: 'day-count', version: 1, from, body: { count: 'earlier' } });
const usualFrom = (from: string): Policy => ({ kind: 'day-count', version: 2, from, body: { count: 'usual' } });
const procedure = (part: Partial<RecordHead> = {}) =>
  check(null, {
    outcome: 'approved',
    agency: mechanic,
    document: { title: 'VOR maintenance procedure', revision: '2', date: '2024-05-01' },
    expires: '2026-06-30',
    ...part,
  });

// 14 CFR 91.171(a)(2): within the preceding 30 days. Checked 31 Jan 2026: last good day 2 Mar 2026 (reading: day D+30 is inside).
// Chicago's 2 March ends at 06:00 UTC on 3 March.
testRule(vorCheck, [
  {
    name: 'day 30, last minute',
    dossier: of(check(good)),
    at: '2026-03-03T05:59Z',
    flight: ifr,
    expect: 'met',
    message: 'current',
    data: { lastGood: '2026-03-02' },
  },
  {
    name: 'day 31',
    dossier: of(check(good)),
    at: '2026-03-03T06:00Z',
    flight: ifr,
    expect: 'not-met',
    message: 'lapsed',
  },
  {
    name: 'leap year: checked 1 Feb 2028, good on 2 Mar 2028',
    dossier: of(check(good, { done: { date: '2028-02-01', at: null } })),
    at: '2028-03-03T05:59Z',
    flight: ifr,
    expect: 'met',
    data: { lastGood: '2028-03-02' },
  },
  // A house may count a day less (regulatory facts, open question 2: whether D+30 is inside is a reading). From 2 Mar, Chicago's
  // days begin at 06:00 UTC: good through 1 March then, though the usual count reaches through the 2nd.
  {
    name: 'the house counts a day less: day 29, last minute',
    dossier: of(check(good)),
    policies: [earlierFrom('2026-02-01')],
    at: '2026-03-02T05:59Z',
    flight: ifr,
    expect: 'met',
    data: { lastGood: '2026-03-01' },
  },
  {
    name: 'the house counts a day less: day 30',
    dossier: of(check(good)),
    policies: [earlierFrom('2026-02-01')],
    at: '2026-03-02T06:00Z',
    flight: ifr,
    expect: 'not-met',
    message: 'lapsed',
  },
  {
    name: 'the house counts a day less only from the day after day 30: day 30, last minute',
    dossier: of(check(good)),
    policies: [earlierFrom('2026-03-03')],
    at: '2026-03-03T05:59Z',
    flight: ifr,
    expect: 'met',
    data: { lastGood: '2026-03-02' },
  },
  {
    name: 'no policy reaches past day 30',
    dossier: of(check(good)),
    policies: [earlierFrom('2026-02-01'), usualFrom('2026-03-02')],
    at: '2026-03-03T06:00Z',
    flight: ifr,
    expect: 'not-met',
  },
  {
    name: 'the house went back to the usual count: day 30',
    dossier: of(check(good)),
    policies: [earlierFrom('2026-02-01'), usualFrom('2026-03-02')],
    at: '2026-03-02T06:00Z',
    flight: ifr,
    expect: 'met',
    data: { lastGood: '2026-03-02' },
  },
  {
    name: 'lapsed, under VFR',
    dossier: of(check(good)),
    at: '2026-03-03T06:00Z',
    flight: { rules: 'vfr' },
    expect: 'not-applicable',
    message: 'not-asked',
  },

  // 91.171(b): 4 degrees on the ground, 6 in the air and only where nothing on the ground is available.
  { name: 'test signal, 4 degrees', dossier: of(check(ground(4))), at: soon, flight: ifr, expect: 'met' },
  { name: 'test signal, 4.1 degrees', dossier: of(check(ground(4.1))), at: soon, flight: ifr, expect: 'not-met' },
  {
    name: 'test signal on a bearing of 90 degrees',
    dossier: of(check(checkOf('test-signal', 90, 90))),
    at: soon,
    flight: ifr,
    expect: 'not-met',
  },
  { name: 'across north: 358 is 2 degrees off', dossier: of(check(ground(358))), at: soon, flight: ifr, expect: 'met' },
  {
    name: 'airborne, 6 degrees',
    dossier: of(check(checkOf('airborne-checkpoint', 90, 96))),
    at: soon,
    flight: ifr,
    expect: 'met',
  },
  {
    name: 'airborne although a signal was available',
    dossier: of(check({ ...checkOf('airborne-checkpoint', 90, 92), earlierMethodsUnavailable: false })),
    at: soon,
    flight: ifr,
    expect: 'not-met',
  },
  {
    name: 'signal of a repair station without its own entry',
    dossier: of(check({ ...checkOf('repair-station-signal', 0, 1), stationEntryMade: false })),
    at: soon,
    flight: ifr,
    expect: 'not-met',
  },
  {
    name: 'signal of a repair station, its entry not recorded',
    dossier: of(check({ ...checkOf('repair-station-signal', 0, 1), stationEntryMade: null })),
    at: soon,
    flight: ifr,
    expect: 'cannot-tell',
  },
  {
    name: 'a newer check out of limits supersedes an older good one',
    dossier: of(check(good), check(ground(5), { done: { date: '2026-02-03', at: null }, id: 'later' })),
    at: soon,
    flight: ifr,
    expect: 'not-met',
  },

  // 91.171(c): two independent receivers of the aircraft, 4 degrees, each of them checked by it.
  {
    name: 'dual, 118 and 122: the first receiver',
    dossier: of(check(dualVorCheck(118, 122), { subjects: ['nav1', 'nav2'] })),
    at: soon,
    flight: ifr,
    expect: 'met',
  },
  {
    name: 'dual, 118 and 122: the second receiver',
    dossier: of(check(dualVorCheck(118, 122), { subjects: ['nav1', 'nav2'] })),
    at: soon,
    flight: ifr,
    subject: 'nav2',
    expect: 'met',
  },
  {
    name: 'dual, 118 and 123',
    dossier: of(check(dualVorCheck(118, 123), { subjects: ['nav1', 'nav2'] })),
    at: soon,
    flight: ifr,
    expect: 'not-met',
  },
  {
    name: 'dual, units not independent',
    dossier: of(check({ ...dualVorCheck(118, 119), independentUnits: false }, { subjects: ['nav1', 'nav2'] })),
    at: soon,
    flight: ifr,
    expect: 'not-met',
  },
  {
    name: 'dual, other receiver not recorded',
    dossier: of(check(dualVorCheck(118, 119))),
    at: soon,
    flight: ifr,
    expect: 'cannot-tell',
  },
  {
    name: 'dual, the other unit is no receiver',
    dossier: of(check(dualVorCheck(118, 119), { subjects: ['nav1', 'com1'] })),
    at: soon,
    flight: ifr,
    expect: 'not-met',
  },
  {
    name: 'dual, the other subject is the aircraft itself',
    dossier: of(check(dualVorCheck(118, 119), { subjects: ['nav1', 'aircraft'] })),
    at: soon,
    flight: ifr,
    subject: 'nav1',
    expect: 'not-met',
  },
  {
    name: 'dual, entered about the navigator too',
    dossier: of(check(dualVorCheck(118, 119), { subjects: ['nav1', 'com1', 'nav2'] })),
    at: soon,
    flight: ifr,
    subject: 'nav1',
    expect: 'met',
  },
  {
    name: 'dual, the other receiver was taken out since',
    dossier: of(check(dualVorCheck(118, 119), { subjects: ['nav1', 'nav9'] })),
    at: soon,
    flight: ifr,
    expect: 'met',
  },
  {
    name: 'one receiver checked says nothing of the other',
    dossier: of(check(good)),
    at: soon,
    flight: ifr,
    subject: 'nav2',
    expect: 'cannot-tell',
  },

  // 91.171(d): date, place, bearing error, signature.
  {
    name: 'place missing',
    dossier: of(check(good, { place: null })),
    at: soon,
    flight: ifr,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'signature missing',
    dossier: of(check(good, { agency: null })),
    at: soon,
    flight: ifr,
    expect: 'cannot-tell',
  },
  { name: 'bearing error missing', dossier: of(check(null)), at: soon, flight: ifr, expect: 'cannot-tell' },
  {
    name: 'method missing',
    dossier: of(check(ground(1, { method: null }))),
    at: soon,
    flight: ifr,
    expect: 'cannot-tell',
  },
  {
    name: 'told, entry not seen',
    dossier: of(check(good, { evidence: 'reported' })),
    at: soon,
    flight: ifr,
    expect: 'not-met',
  },

  // 91.171(a)(1): the alternative.
  {
    name: 'approved procedure, its last day',
    dossier: of(procedure()),
    at: '2026-07-01T04:59Z',
    flight: ifr,
    expect: 'met',
    data: { lastGood: '2026-06-30' },
  },
  {
    name: 'approved procedure, the day after',
    dossier: of(procedure()),
    at: '2026-07-01T05:00Z',
    flight: ifr,
    expect: 'not-met',
  },
  {
    name: 'procedure not named',
    dossier: of(procedure({ document: null })),
    at: soon,
    flight: ifr,
    expect: 'cannot-tell',
  },
  {
    name: 'interval of the procedure not recorded',
    dossier: of(procedure({ expires: null })),
    at: soon,
    flight: ifr,
    expect: 'cannot-tell',
  },
  {
    name: 'procedure signed by a pilot',
    dossier: of(procedure({ agency: pilot })),
    at: soon,
    flight: ifr,
    expect: 'not-met',
  },
  {
    name: 'procedure signed by nobody recorded',
    dossier: of(procedure({ agency: null })),
    at: soon,
    flight: ifr,
    expect: 'cannot-tell',
  },
  {
    name: 'procedure lapsed, check in date',
    dossier: of(procedure({ expires: '2026-01-15', id: 'older', done: { date: '2025-06-30', at: null } }), check(good)),
    at: soon,
    flight: ifr,
    expect: 'met',
  },
  {
    name: 'receiver deactivated',
    dossier: dossierOf({
      configuration: {
        units: [
          unitOf({
            id: 'nav1',
            functions: ['vor-receiver'],
            deactivated: { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true },
          }),
        ],
      },
    }),
    at: soon,
    flight: ifr,
    expect: 'not-applicable',
  },
]);
