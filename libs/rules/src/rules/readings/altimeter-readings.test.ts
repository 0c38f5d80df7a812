import { mechanic, radioStation, readingsOf, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { perfectAltimeter } from '../../../testing/sample-readings.js';
import type { AltimeterReadings } from '../../dossier/readings.js';
import type { RecordHead } from '../../dossier/status.js';
import { altimeterReadings } from './altimeter-readings.js';

const test = (altimeter: AltimeterReadings | null, part: Partial<RecordHead> = {}) =>
  recordOf({
    kind: 'altimeter-test',
    subjects: ['alt1'],
    on: '2025-02-10',
    agency: radioStation,
    readings: altimeter === null ? null : readingsOf({ altimeter }),
    ...part,
  });
const of = (...records: readonly RecordHead[]) =>
  dossierOf({ configuration: { units: [unitOf({ id: 'alt1', functions: ['altimeter'] })] } }, { status: { records } });
const later = { id: 'later', done: { date: '2025-02-12', at: null } } as const;
const small = perfectAltimeter(2000);
const at10 = (indicatedFt: number): AltimeterReadings => {
  const whole = perfectAltimeter(10_000);
  return {
    ...whole,
    scaleError: whole.scaleError.map((each) => (each.atFt === 10_000 ? { ...each, indicatedFt } : each)),
  };
};
const at = '2025-06-01T12:00Z';

// Part 43 appendix E, table I: 10,000 ft +/-80 ft; the limit itself passes.
testRule(altimeterReadings, [
  {
    name: '10,000 ft reads 10,080',
    dossier: of(test(at10(10_080))),
    at,
    expect: 'met',
    message: 'within',
    data: { done: '2025-02-10' },
  },
  {
    name: '10,000 ft reads 10,081',
    dossier: of(test(at10(10_081))),
    at,
    expect: 'not-met',
    message: 'outside',
    data: { what: 'scale-error', at: 10_000, value: 81, limit: 80, unit: 'ft' },
  },
  {
    name: '10,000 ft reads 10,081, under VFR',
    dossier: of(test(at10(10_081))),
    at,
    flight: { rules: 'vfr' },
    expect: 'not-applicable',
    message: 'none',
  },
  {
    name: 'a table point not read',
    dossier: of(test({ ...small, scaleError: small.scaleError.slice(1) })),
    at,
    expect: 'cannot-tell',
    message: 'incomplete',
  },
  { name: 'case leak not recorded', dossier: of(test({ ...small, caseLeakFt: null })), at, expect: 'cannot-tell' },
  { name: 'entry without readings: its own statement stands', dossier: of(test(null)), at, expect: 'not-applicable' },
  {
    name: 'readings of an entry that was not seen are no readings',
    dossier: of(test({ ...small, caseLeakFt: 101 }, { evidence: 'reported' })),
    at,
    expect: 'not-applicable',
  },
  {
    name: 'a newer test within limits supersedes one outside',
    dossier: of(test({ ...small, caseLeakFt: 101 }), test(small, { id: 'b', done: { date: '2025-02-12', at: null } })),
    at,
    expect: 'met',
  },
  {
    name: 'failed and passed on one day, by the clock in that order',
    dossier: of(
      test({ ...small, caseLeakFt: 101 }, { id: 'a', done: { date: '2025-02-10', at: '2025-02-10T15:00Z' } }),
      test(small, { id: 'b', done: { date: '2025-02-10', at: '2025-02-10T18:00Z' } }),
    ),
    at,
    expect: 'met',
  },
  {
    name: 'failed and passed on one day, one time not recorded',
    dossier: of(
      test({ ...small, caseLeakFt: 101 }, { id: 'a' }),
      test(small, { id: 'b', done: { date: '2025-02-10', at: '2025-02-10T18:00Z' } }),
    ),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'two tests of one day, one without readings',
    dossier: of(test(null, { id: 'a' }), test(small, { id: 'b' })),
    at,
    expect: 'not-applicable',
  },
  {
    name: 'entered as failed, without readings',
    dossier: of(test(null, { outcome: 'failed' })),
    at,
    expect: 'not-met',
    message: 'failed',
    data: { done: '2025-02-10' },
  },
  {
    name: 'outside, then an entry without readings by a mechanic: it is no test',
    dossier: of(test({ ...small, caseLeakFt: 101 }), test(null, { ...later, agency: mechanic })),
    at,
    expect: 'not-met',
    message: 'outside',
  },
  {
    name: 'outside, then an entry without readings by a rated station',
    dossier: of(test({ ...small, caseLeakFt: 101 }), test(null, later)),
    at,
    expect: 'not-applicable',
  },
  {
    name: 'outside, then an entry whose signer is not recorded',
    dossier: of(test({ ...small, caseLeakFt: 101 }), test(small, { ...later, agency: null })),
    at,
    expect: 'cannot-tell',
    message: 'incomplete',
  },
  {
    name: 'within, then an entry whose signer is not recorded',
    dossier: of(test(small), test(small, { ...later, agency: null })),
    at,
    expect: 'met',
  },
  {
    name: 'outside, then within with a test set out of calibration',
    dossier: of(
      test({ ...small, caseLeakFt: 101 }),
      test(small, { ...later, instrument: { serial: 'TS-7', calibratedUntil: '2025-02-11' } }),
    ),
    at,
    expect: 'not-met',
  },
  {
    name: 'within, and whether it passed not recorded',
    dossier: of(test(small, { outcome: null })),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'failed and passed on one day without times',
    dossier: of(test(null, { id: 'a', outcome: 'failed' }), test(small, { id: 'b' })),
    at,
    expect: 'cannot-tell',
  },
]);
