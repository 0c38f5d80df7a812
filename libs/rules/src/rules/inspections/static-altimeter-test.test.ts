import { linkOf, mechanic, radioStation, recordOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { RecordHead } from '../../dossier/status.js';
import { staticAltimeterTest } from './static-altimeter-test.js';

const system = { id: 'static1', name: 'Static system', lastOpened: null };
const altimeter = unitOf({ id: 'alt1', functions: ['altimeter'], fitted: { date: '2012-05-04', at: null } });
const encoder = unitOf({ id: 'enc1', functions: ['altitude-reporting'] });
const transponder = unitOf({ id: 'xp1', functions: ['transponder'] });
const joined = linkOf('enc1', 'altitude-gray', 'xp1', 'altitude-gray');
const whole = { units: [altimeter, encoder, transponder], links: [joined], staticSystems: [system] };

const test = (kind: RecordHead['kind'], subject: string, on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind, subjects: [subject], on, agency: radioStation, id: `${kind}-${subject}-${on}`, ...part });
const of = (records: readonly RecordHead[], configuration: Partial<Dossier['configuration']> = whole) =>
  dossierOf({ configuration }, { status: { records } });

const pressure = (on: string, part: Partial<RecordHead> = {}) => test('static-system-test', 'static1', on, part);
const bench = (on: string, part: Partial<RecordHead> = {}) => test('altimeter-test', 'alt1', on, part);
const reporting = [
  test('altitude-reporting-test', 'enc1', '2024-02-10'),
  test('transponder-test', 'xp1', '2024-02-10'),
];

// A TSO altimeter and one that its manual says nothing of.
const tso = typeOf({ id: 'a10', functions: ['altimeter'], authorisations: [{ tso: 'C10b', class: null }] });
const plain = typeOf({ id: 'a0', functions: ['altimeter'] });
const other = typeOf({ id: 'a1', functions: ['altimeter'], authorisations: [{ tso: 'C88', class: null }] });
const made = (
  typeId: string,
  manufactured: string | null,
  fitted: string | null = null,
  records: RecordHead[] = [],
) => ({
  dossier: of(records, {
    units: [unitOf({ id: 'alt1', typeId, manufactured, fitted: fitted === null ? null : { date: fitted, at: null } })],
  }),
  types: [tso, plain, other],
  subject: 'alt1',
});

const controlled = { rules: 'ifr', airspace: ['controlled'] } as const;

// 14 CFR 91.411(a)(1): 24 calendar months. Tested 10 Feb 2024: last good 28 Feb 2026 (fact: 10 Feb 2022 gives 29 Feb 2024).
// The base lies in Chicago: its 28 February ends at 06:00 UTC on 1 March.
testRule(staticAltimeterTest, [
  {
    name: 'static system, last minute',
    dossier: of([pressure('2024-02-10')]),
    at: '2026-03-01T05:59Z',
    flight: controlled,
    subject: 'static1',
    expect: 'met',
    message: 'current',
    data: { lastGood: '2026-02-28' },
  },
  {
    name: 'static system, the minute after',
    dossier: of([pressure('2024-02-10')]),
    at: '2026-03-01T06:00Z',
    flight: controlled,
    subject: 'static1',
    expect: 'not-met',
    message: 'lapsed',
  },
  {
    name: 'leap year: tested 10 Feb 2022, good on 29 Feb 2024',
    dossier: of([pressure('2022-02-10')]),
    at: '2024-03-01T05:59Z',
    subject: 'static1',
    expect: 'met',
    data: { lastGood: '2024-02-29' },
  },
  {
    name: 'lapsed, VFR: nothing is asked',
    dossier: of([pressure('2024-02-10')]),
    at: '2026-06-01T12:00Z',
    flight: { rules: 'vfr' },
    subject: 'static1',
    expect: 'not-applicable',
    message: 'not-asked',
  },
  {
    name: 'lapsed, IFR in uncontrolled airspace: the rule is silent',
    dossier: of([pressure('2024-02-10')]),
    at: '2026-06-01T12:00Z',
    flight: { rules: 'ifr', airspace: [] },
    subject: 'static1',
    expect: 'not-applicable',
  },
  {
    name: 'lapsed, IFR in class C alone, which is controlled',
    dossier: of([pressure('2024-02-10')]),
    at: '2026-06-01T12:00Z',
    flight: { rules: 'ifr', airspace: ['class-b-c'] },
    subject: 'static1',
    expect: 'not-met',
  },
  {
    name: 'helicopter: bound',
    dossier: dossierOf(of([pressure('2024-02-10')]), { configuration: { aircraft: { kind: 'helicopter' } } }),
    at: '2026-06-01T12:00Z',
    subject: 'static1',
    expect: 'not-met',
  },
  {
    name: 'glider: not bound',
    dossier: dossierOf(of([pressure('2024-02-10')]), { configuration: { aircraft: { kind: 'glider' } } }),
    at: '2026-06-01T12:00Z',
    subject: 'static1',
    expect: 'not-applicable',
  },
  {
    name: 'static system by a mechanic with an airframe rating',
    dossier: of([pressure('2024-02-10', { agency: mechanic })]),
    at: '2025-02-10T12:00Z',
    subject: 'static1',
    expect: 'met',
  },
  {
    name: 'altimeter by a mechanic with an airframe rating',
    dossier: of([bench('2024-02-10', { agency: mechanic })]),
    at: '2025-02-10T12:00Z',
    subject: 'alt1',
    expect: 'not-met',
  },
  {
    name: 'altimeter by a station with a limited rating: for which makes is not recorded',
    dossier: of([bench('2024-02-10', { agency: { ...radioStation, ratings: ['instrument-limited'] } })]),
    at: '2025-02-10T12:00Z',
    subject: 'alt1',
    expect: 'cannot-tell',
  },
  {
    name: 'altimeter by a radio class 3 station',
    dossier: of([bench('2024-02-10', { agency: { ...radioStation, ratings: ['radio-3'] } })]),
    at: '2025-02-10T12:00Z',
    subject: 'alt1',
    expect: 'not-met',
  },
  {
    name: 'signer not recorded',
    dossier: of([bench('2024-02-10', { agency: null })]),
    at: '2025-02-10T12:00Z',
    subject: 'alt1',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'work reported, entry not seen',
    dossier: of([bench('2024-02-10', { evidence: 'reported' })]),
    at: '2026-03-10T12:00Z',
    subject: 'alt1',
    expect: 'not-met',
  },
  {
    name: 'static system never recorded as tested',
    dossier: of([]),
    at: '2025-02-10T12:00Z',
    subject: 'static1',
    expect: 'cannot-tell',
  },

  // 91.411(c): the clock of a TSO altimeter starts with its manufacture.
  {
    name: 'made 10 Feb 2024 under TSO, last minute',
    ...made('a10', '2024-02-10', '2024-12-01'),
    at: '2026-03-01T05:59Z',
    expect: 'met',
    data: { lastGood: '2026-02-28' },
  },
  {
    name: 'made under TSO: counted from manufacture, not from installation',
    ...made('a10', '2024-02-10', '2024-12-01', [bench('2024-12-01', { evidence: 'reported' })]),
    at: '2026-03-01T06:00Z',
    expect: 'not-met',
  },
  {
    name: 'made under TSO, then tested: the test carries on',
    ...made('a10', '2023-02-10', '2023-12-01', [bench('2024-12-01')]),
    at: '2026-03-01T06:00Z',
    expect: 'met',
    data: { lastGood: '2026-12-31' },
  },
  {
    name: 'made under TSO, failed a test since',
    ...made('a10', '2024-02-10', '2024-12-01', [bench('2024-12-01', { outcome: 'failed' })]),
    at: '2025-03-01T06:00Z',
    expect: 'not-met',
  },
  {
    name: 'made under TSO, a test since of which nobody recorded the outcome',
    ...made('a10', '2024-02-10', '2024-12-01', [bench('2024-12-01', { outcome: null })]),
    at: '2025-03-01T06:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'made under TSO, said to have failed a test that nobody saw',
    ...made('a10', '2024-02-10', '2024-12-01', [bench('2024-12-01', { outcome: 'failed', evidence: 'reported' })]),
    at: '2025-03-01T06:00Z',
    expect: 'met',
  },
  { name: 'new, manual silent on TSO', ...made('a0', '2024-02-10'), at: '2025-03-01T06:00Z', expect: 'cannot-tell' },
  {
    name: 'new, but under another TSO, and its test was not seen',
    ...made('a1', '2024-02-10', null, [bench('2024-12-01', { evidence: 'reported' })]),
    at: '2025-03-01T06:00Z',
    expect: 'not-met',
  },
  {
    name: 'new no more, no test recorded',
    ...made('a10', '2022-02-10'),
    at: '2025-03-01T06:00Z',
    expect: 'cannot-tell',
  },
  { name: 'manufacture not recorded', ...made('a10', null), at: '2025-03-01T06:00Z', expect: 'cannot-tell' },
  {
    name: 'manufacture not recorded, fitted within the interval',
    ...made('a10', null, '2024-02-10'),
    at: '2026-03-01T05:59Z',
    expect: 'cannot-tell',
  },
  {
    name: 'manufacture not recorded, fitted longer ago: it cannot be new',
    ...made('a10', null, '2024-02-10', [bench('2024-12-01', { evidence: 'reported' })]),
    at: '2026-03-01T06:00Z',
    expect: 'not-met',
  },

  // 91.411(a)(1) names appendices E and F: the transponder's test belongs to the reporting system.
  {
    name: 'reporter and its transponder tested',
    dossier: of(reporting),
    at: '2026-03-01T05:59Z',
    subject: 'enc1',
    expect: 'met',
  },
  {
    name: 'reporter tested, appendix F test of its transponder lapsed',
    dossier: of([test('altitude-reporting-test', 'enc1', '2024-02-10'), test('transponder-test', 'xp1', '2023-02-10')]),
    at: '2025-06-01T12:00Z',
    subject: 'enc1',
    expect: 'not-met',
  },
  {
    name: 'appendix F test signed by a mechanic',
    dossier: of([
      test('altitude-reporting-test', 'enc1', '2024-02-10'),
      test('transponder-test', 'xp1', '2024-02-10', { agency: mechanic }),
    ]),
    at: '2025-06-01T12:00Z',
    subject: 'enc1',
    expect: 'not-met',
  },
  {
    name: 'its transponder is deactivated: appendix F has nothing to test',
    dossier: of([test('altitude-reporting-test', 'enc1', '2024-02-10')], {
      ...whole,
      units: [
        encoder,
        { ...transponder, deactivated: { since: { date: '2024-03-01', at: null }, placarded: true, recorded: true } },
      ],
    }),
    at: '2025-06-01T12:00Z',
    subject: 'enc1',
    expect: 'met',
  },
  {
    name: 'what the reporter serves is not recorded',
    dossier: of(reporting, { ...whole, links: [] }),
    at: '2025-06-01T12:00Z',
    subject: 'enc1',
    expect: 'cannot-tell',
  },
  {
    name: 'links stated complete: it serves no transponder',
    dossier: dossierOf(of(reporting, { ...whole, links: [] }), {
      status: { completeness: [{ list: 'links', stated: { asOf: '2024-01-01', by: 'J. Orrell' } }] },
    }),
    at: '2025-06-01T12:00Z',
    subject: 'enc1',
    expect: 'met',
  },
  {
    name: 'transponder with its own reporter: both tests on one unit',
    dossier: of([test('altitude-reporting-test', 'xp2', '2024-02-10')], {
      units: [unitOf({ id: 'xp2', functions: ['transponder', 'altitude-reporting'] })],
    }),
    at: '2025-06-01T12:00Z',
    subject: 'xp2',
    expect: 'cannot-tell',
  },
  {
    name: 'an altimeter that sends its altitude to a transponder, not known to report it, is asked for its own test alone',
    dossier: of([bench('2024-02-10')], {
      units: [altimeter, transponder],
      links: [linkOf('alt1', 'altitude-serial', 'xp1', 'altitude-serial')],
      staticSystems: [system],
    }),
    at: '2025-06-01T12:00Z',
    subject: 'alt1',
    expect: 'met',
  },
  {
    name: 'deactivated altimeter: not in use',
    dossier: of([], {
      units: [
        { ...altimeter, deactivated: { since: { date: '2024-03-01', at: null }, placarded: true, recorded: true } },
      ],
    }),
    at: '2025-06-01T12:00Z',
    subject: 'alt1',
    expect: 'not-applicable',
  },

  // Nothing is met by emptiness.
  { name: 'all kinds of item recorded', dossier: of([]), at: '2025-06-01T12:00Z', expect: 'met', message: 'known' },
  {
    name: 'no static system recorded',
    dossier: of([], { ...whole, staticSystems: [] }),
    at: '2025-06-01T12:00Z',
    subject: 'aircraft',
    expect: 'cannot-tell',
    message: 'unknown',
  },
  {
    name: 'no altimeter recorded',
    dossier: of([], { ...whole, units: [encoder] }),
    at: '2025-06-01T12:00Z',
    subject: 'aircraft',
    expect: 'cannot-tell',
  },
  {
    name: 'no reporter recorded and the equipment not stated complete',
    dossier: of([], { ...whole, units: [altimeter] }),
    at: '2025-06-01T12:00Z',
    subject: 'aircraft',
    expect: 'cannot-tell',
  },
  {
    name: 'no reporter, equipment stated complete',
    dossier: dossierOf(of([], { ...whole, units: [altimeter] }), {
      status: { completeness: [{ list: 'equipment', stated: { asOf: '2024-01-01', by: 'J. Orrell' } }] },
    }),
    at: '2025-06-01T12:00Z',
    subject: 'aircraft',
    expect: 'met',
  },
]);
