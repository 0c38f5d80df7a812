import { mechanic, pilot, readingsOf, recordOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { StaticLeakReadings } from '../../dossier/readings.js';
import type { RecordHead } from '../../dossier/status.js';
import { staticLeakReading } from './static-leak-reading.js';

const leak = (lossFt: number | null, part: Partial<StaticLeakReadings> = {}): StaticLeakReadings => ({
  pressurized: false,
  aboveFieldFt: 1000,
  differentialInHg: null,
  cabinEquivalentFt: null,
  lossFt,
  linesClear: true,
  portHeater: 'not-fitted',
  surroundsUnchanged: true,
  ...part,
});
const test = (staticLeak: StaticLeakReadings | null, part: Partial<RecordHead> = {}) =>
  recordOf({
    kind: 'static-leak-test',
    subjects: ['static1'],
    on: '2025-02-10',
    agency: mechanic,
    readings: staticLeak === null ? null : readingsOf({ staticLeak }),
    ...part,
  });
const of = (opened: { date: string; at: string | null } | null, ...records: readonly RecordHead[]) =>
  dossierOf(
    { configuration: { staticSystems: [{ id: 'static1', name: 'Static system', lastOpened: opened }] } },
    { status: { records } },
  );
const day = (date: string, at: string | null = null) => ({ date, at });
const at = '2025-06-01T12:00Z';
const opening = 'static1:opening';

// Old 23.1325(b)(2)(i): at most 100 ft in one minute from 1,000 ft above the field. 91.411(a)(2): after any opening.
testRule(staticLeakReading, [
  { name: '100 ft lost', dossier: of(null, test(leak(100))), at, expect: 'met', message: 'within' },
  {
    name: '101 ft lost',
    dossier: of(null, test(leak(101))),
    at,
    expect: 'not-met',
    message: 'outside',
    data: { what: 'loss', value: 101, limit: 100 },
  },
  {
    name: '101 ft lost, VFR',
    dossier: of(null, test(leak(101))),
    at,
    flight: { rules: 'vfr' },
    expect: 'not-applicable',
    message: 'none',
  },
  { name: 'loss not recorded', dossier: of(null, test(leak(null))), at, expect: 'cannot-tell', message: 'incomplete' },
  {
    name: 'pressurized or not: not recorded',
    dossier: of(null, test(leak(50, { pressurized: null }))),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a heater of the ports that does not work',
    dossier: of(null, test(leak(50, { portHeater: 'does-not-work' }))),
    at,
    expect: 'not-met',
    message: 'wrong',
    data: { what: 'port-heater-works' },
  },
  {
    name: 'heater that works',
    dossier: of(null, test(leak(50, { portHeater: 'works' }))),
    at,
    expect: 'met',
  },
  {
    name: 'heater: nobody said whether there is one',
    dossier: of(null, test(leak(50, { portHeater: null }))),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'water in the lines, whatever the leak',
    dossier: of(null, test(leak(0, { linesClear: false }))),
    at,
    expect: 'not-met',
    message: 'wrong',
    data: { what: 'lines-clear' },
  },
  {
    name: 'lines clear: not recorded',
    dossier: of(null, test(leak(50, { linesClear: null }))),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'the skin by the ports was dented',
    dossier: of(null, test(leak(50, { surroundsUnchanged: false }))),
    at,
    expect: 'not-met',
    data: { what: 'surrounds-unchanged' },
  },
  {
    name: 'the skin by the ports: not recorded',
    dossier: of(null, test(leak(50, { surroundsUnchanged: null }))),
    at,
    expect: 'cannot-tell',
  },
  { name: 'entry without readings', dossier: of(null, test(null)), at, expect: 'not-applicable' },
  { name: 'no opening recorded', dossier: of(null, test(leak(50))), at, subject: opening, expect: 'none' },
  {
    name: 'opened the day before the test',
    dossier: of(day('2025-02-09'), test(leak(50))),
    at,
    subject: opening,
    expect: 'met',
    message: 'closed',
  },
  {
    name: 'opened the day after the test: refitting the altimeter opens it again',
    dossier: of(day('2025-02-11'), test(leak(50))),
    at,
    subject: opening,
    expect: 'not-met',
    message: 'open',
    data: { opened: '2025-02-11' },
  },
  {
    name: 'opened on the day of the test, no times',
    dossier: of(day('2025-02-10'), test(leak(50))),
    at,
    subject: opening,
    expect: 'cannot-tell',
    message: 'order',
  },
  {
    name: 'opened on the day of the test, an hour before it',
    dossier: of(
      day('2025-02-10', '2025-02-10T15:00Z'),
      test(leak(50), { done: day('2025-02-10', '2025-02-10T16:00Z') }),
    ),
    at,
    subject: opening,
    expect: 'met',
  },
  {
    name: 'opened on the day of the test, an hour after it',
    dossier: of(
      day('2025-02-10', '2025-02-10T17:00Z'),
      test(leak(50), { done: day('2025-02-10', '2025-02-10T16:00Z') }),
    ),
    at,
    subject: opening,
    expect: 'not-met',
  },
  {
    name: 'test after the opening signed by a pilot',
    dossier: of(day('2025-02-09'), test(leak(50), { agency: pilot })),
    at,
    subject: opening,
    expect: 'not-met',
  },
  {
    name: 'the full static test after the opening',
    dossier: of(day('2025-02-09'), test(null, { kind: 'static-system-test' })),
    at,
    subject: opening,
    expect: 'met',
  },
  {
    name: 'entered as failed, without a reading',
    dossier: of(null, test(null, { outcome: 'failed' })),
    at,
    expect: 'not-met',
    message: 'failed',
  },
  {
    name: '300 ft lost, then an entry by a pilot',
    dossier: of(null, test(leak(300)), test(null, { id: 'b', agency: pilot, done: day('2025-02-11') })),
    at,
    expect: 'not-met',
  },
]);
