import { mechanic, pilot, radioStation, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { Obligation, RecordHead, RecordKind } from '../../dossier/status.js';
import { testsAfterChange } from './tests-after-change.js';

const owed = (what: Obligation['what'], subject: string, at: string | null = null): Obligation => ({
  id: `${what}:${subject}`,
  what,
  subject,
  since: { date: '2026-03-02', at },
  becauseOf: 'unit.install',
  touched: null,
  closedBy: null,
});
const entry = (kind: RecordKind, subject: string, on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind, subjects: [subject], on, agency: radioStation, ...part });
const of = (obligation: Obligation, ...records: readonly RecordHead[]) =>
  dossierOf(
    {
      configuration: {
        units: [
          unitOf({ id: 'nav1', functions: ['com', 'gnss'] }),
          unitOf({ id: 'xp1', functions: ['transponder'] }),
          unitOf({ id: 'old1', functions: ['other'] }),
        ],
      },
    },
    { status: { obligations: [obligation], records } },
  );
const at = '2026-03-20T12:00Z';
const vfr = { rules: 'vfr' } as const;
const leak = owed('static-leak-test', 'static1');
const correspondence = owed('altitude-correspondence-test', 'aircraft');
const released = (unit: string, part: Partial<RecordHead> = {}) =>
  of(owed('release-entry', unit), entry('release-entry', unit, '2026-03-03', { outcome: 'approved', ...part }));
const certified = (certificate: Dossier['configuration']['aircraft']['certificate'], dossier: Dossier) =>
  dossierOf(dossier, { configuration: { aircraft: { certificate } } });

testRule(testsAfterChange, [
  // Left open, it may be anything: nobody knows that nothing is owed.
  {
    name: 'what the work touched was not said',
    dossier: of(owed('what-was-touched', 'nav1')),
    at,
    flight: vfr,
    expect: 'cannot-tell',
    message: 'unsaid',
    data: { subject: 'nav1', since: '2026-03-02' },
  },
  {
    name: 'what the work touched was not said, though its release was entered',
    dossier: of(
      owed('what-was-touched', 'nav1'),
      entry('release-entry', 'nav1', '2026-03-03', { outcome: 'approved' }),
    ),
    at,
    flight: vfr,
    expect: 'cannot-tell',
    message: 'unsaid',
  },
  // 91.411(a)(2): the leak test is later than the opening, whoever closes it that day.
  {
    name: 'leak test the day after',
    dossier: of(leak, entry('static-leak-test', 'static1', '2026-03-03')),
    at,
    expect: 'met',
    message: 'done',
    data: { what: 'static-leak-test', subject: 'static1', since: '2026-03-02' },
  },
  {
    name: 'leak test the day before the work',
    dossier: of(leak, entry('static-leak-test', 'static1', '2026-03-01')),
    at,
    expect: 'not-met',
    message: 'owed',
  },
  {
    name: 'leak test on the day of the work, no times',
    dossier: of(leak, entry('static-leak-test', 'static1', '2026-03-02')),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'leak test on the day of the work, a minute later',
    dossier: of(
      owed('static-leak-test', 'static1', '2026-03-02T15:00Z'),
      entry('static-leak-test', 'static1', '2026-03-02', { done: { date: '2026-03-02', at: '2026-03-02T15:01Z' } }),
    ),
    at,
    expect: 'met',
  },
  {
    name: 'leak test on the day of the work, in the same minute',
    dossier: of(
      owed('static-leak-test', 'static1', '2026-03-02T15:00Z'),
      entry('static-leak-test', 'static1', '2026-03-02', { done: { date: '2026-03-02', at: '2026-03-02T15:00Z' } }),
    ),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'leak test on the day of the work, a minute earlier',
    dossier: of(
      owed('static-leak-test', 'static1', '2026-03-02T15:00Z'),
      entry('static-leak-test', 'static1', '2026-03-02', { done: { date: '2026-03-02', at: '2026-03-02T14:59Z' } }),
    ),
    at,
    expect: 'not-met',
  },
  {
    name: 'leak test on another static system',
    dossier: of(leak, entry('static-leak-test', 'static2', '2026-03-03')),
    at,
    expect: 'not-met',
  },
  {
    name: 'leak test by a mechanic with an airframe rating',
    dossier: of(leak, entry('static-leak-test', 'static1', '2026-03-03', { agency: mechanic })),
    at,
    expect: 'met',
  },
  {
    name: 'leak test by a pilot',
    dossier: of(leak, entry('static-leak-test', 'static1', '2026-03-03', { agency: pilot })),
    at,
    expect: 'not-met',
  },
  {
    name: 'leak test by somebody not recorded',
    dossier: of(leak, entry('static-leak-test', 'static1', '2026-03-03', { agency: null })),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'leak test reported, entry not seen',
    dossier: of(leak, entry('static-leak-test', 'static1', '2026-03-03', { evidence: 'reported' })),
    at,
    expect: 'not-met',
  },
  {
    name: 'leak test passed, then a later one failed',
    dossier: of(
      leak,
      entry('static-leak-test', 'static1', '2026-03-03'),
      entry('static-leak-test', 'static1', '2026-03-04', { outcome: 'failed' }),
    ),
    at,
    expect: 'not-met',
  },
  {
    name: 'closed by an entry that does not count: still owed',
    dossier: of(
      { ...leak, closedBy: 'static-leak-test-2026-03-03' },
      entry('static-leak-test', 'static1', '2026-03-03', { outcome: 'failed' }),
    ),
    at,
    expect: 'not-met',
  },
  {
    name: 'the full static test answers it',
    dossier: of(leak, entry('static-system-test', 'static1', '2026-03-03')),
    at,
    expect: 'met',
  },
  { name: 'leak test owed, VFR', dossier: of(leak), at, flight: vfr, expect: 'not-applicable', message: 'not-asked' },

  // 91.413(b) for any use, 91.411(a)(3) under IFR in controlled airspace: one test, two texts.
  {
    name: 'correspondence owed, VFR: use of the transponder',
    dossier: of(correspondence),
    at,
    flight: vfr,
    expect: 'not-met',
  },
  {
    name: 'correspondence owed, VFR: IFR has no say',
    dossier: of(correspondence),
    at,
    flight: vfr,
    subject: 'altitude-correspondence-test:aircraft:ifr',
    expect: 'not-applicable',
  },
  {
    name: 'correspondence owed, IFR',
    dossier: of(correspondence),
    at,
    subject: 'altitude-correspondence-test:aircraft:ifr',
    expect: 'not-met',
  },
  {
    name: 'correspondence by a radio class 3 station',
    dossier: of(
      correspondence,
      entry('altitude-correspondence-test', 'aircraft', '2026-03-03', {
        agency: { ...radioStation, ratings: ['radio-3'] },
      }),
    ),
    at,
    expect: 'met',
  },
  {
    name: 'correspondence by a mechanic',
    dossier: of(correspondence, entry('altitude-correspondence-test', 'aircraft', '2026-03-03', { agency: mechanic })),
    at,
    expect: 'not-met',
  },

  { name: 'navigator not checked', dossier: of(owed('gnss-function-check', 'nav1')), at, expect: 'not-met' },
  {
    name: 'navigator checked',
    dossier: of(owed('gnss-function-check', 'nav1'), entry('gnss-function-check', 'nav1', '2026-03-03')),
    at,
    expect: 'met',
  },
  {
    name: 'transmitters not tried against satellites',
    dossier: of(owed('vhf-interference-check', 'aircraft')),
    at,
    expect: 'not-met',
  },

  // No rule asks for the report: without it performance is unknown, with a bad one it is known.
  { name: 'no performance report', dossier: of(owed('ads-b-report', 'aircraft')), at, expect: 'cannot-tell' },
  {
    name: 'performance report failed',
    dossier: of(
      owed('ads-b-report', 'aircraft'),
      entry('ads-b-report', 'aircraft', '2026-03-04', { outcome: 'failed' }),
    ),
    at,
    expect: 'not-met',
  },
  {
    name: 'performance report passed, signed by nobody',
    dossier: of(owed('ads-b-report', 'aircraft'), entry('ads-b-report', 'aircraft', '2026-03-04', { agency: null })),
    at,
    expect: 'met',
  },

  { name: 'compass not swung', dossier: of(owed('compass-swing', 'aircraft')), at, expect: 'not-met' },

  // 91.407(b).
  {
    name: 'flight check owed, passengers',
    dossier: of(owed('pilot-flight-check', 'aircraft')),
    at,
    flight: { crewOnly: false },
    expect: 'not-met',
  },
  {
    name: 'flight check owed, crew only',
    dossier: of(owed('pilot-flight-check', 'aircraft')),
    at,
    flight: { crewOnly: true },
    expect: 'met',
  },
  {
    name: 'flight check by a private pilot',
    dossier: of(
      owed('pilot-flight-check', 'aircraft'),
      entry('pilot-flight-check', 'aircraft', '2026-03-03', { agency: pilot }),
    ),
    at,
    expect: 'met',
  },
  {
    name: 'flight check by a sport pilot',
    dossier: of(
      owed('pilot-flight-check', 'aircraft'),
      entry('pilot-flight-check', 'aircraft', '2026-03-03', { agency: { ...pilot, ratings: ['sport-pilot'] } }),
    ),
    at,
    expect: 'not-met',
  },

  // 91.407(a), 43.7; pilots: part 43 appendix A(c)(31).
  { name: 'work not released', dossier: of(owed('release-entry', 'nav1')), at, flight: vfr, expect: 'not-met' },
  { name: 'released by a mechanic', dossier: released('nav1', { agency: mechanic }), at, expect: 'met' },
  { name: 'released by a station', dossier: released('xp1'), at, expect: 'met' },
  {
    name: 'released by a station without any rating',
    dossier: released('xp1', { agency: { ...radioStation, ratings: [] } }),
    at,
    expect: 'not-met',
  },
  {
    name: 'released by a mechanic with a powerplant rating alone',
    dossier: released('nav1', { agency: { ...mechanic, ratings: ['powerplant'] } }),
    at,
    expect: 'not-met',
  },
  {
    name: 'navigator released by a pilot: tray-mounted or not is not recorded',
    dossier: released('nav1', { agency: pilot }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'transponder released by a pilot: never',
    dossier: released('xp1', { agency: pilot }),
    at,
    expect: 'not-met',
  },
  {
    name: 'released by a person with no pilot certificate',
    dossier: released('nav1', { agency: { ...pilot, ratings: [] } }),
    at,
    expect: 'not-met',
  },
  {
    name: 'removal released by a pilot: what was removed is not here any more',
    dossier: released('aircraft', { agency: pilot }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'standard aircraft released by a light-sport repairman',
    dossier: certified(
      'standard',
      released('nav1', { agency: { ...pilot, kind: 'repairman', ratings: ['light-sport-maintenance'] } }),
    ),
    at,
    expect: 'not-met',
  },
  {
    name: 'light-sport aircraft released by a light-sport repairman',
    dossier: certified(
      'light-sport',
      released('nav1', { agency: { ...pilot, kind: 'repairman', ratings: ['light-sport-maintenance'] } }),
    ),
    at,
    expect: 'met',
  },
  {
    name: 'certificate not recorded, released by a repairman',
    dossier: released('nav1', { agency: { ...pilot, kind: 'repairman', ratings: ['light-sport-maintenance'] } }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'the controls check has its own rule', dossier: of(owed('controls-check', 'aircraft')), at, expect: 'none' },
]);
