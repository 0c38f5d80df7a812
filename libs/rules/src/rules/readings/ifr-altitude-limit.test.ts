import { expect, it } from 'vitest';
import { radioStation, readingsOf, recordOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { statements } from '../../../testing/rule-case.js';
import { testRule } from '../../../testing/rule-tester.js';
import { perfectAltimeter } from '../../../testing/sample-readings.js';
import type { RecordHead } from '../../dossier/status.js';
import { ifrAltitudeLimit } from './ifr-altitude-limit.js';

const bench = (on: string, testedToFt: number | null, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'altimeter-test', subjects: ['alt1'], on, agency: radioStation, testedToFt, ...part });
const of = (...records: readonly RecordHead[]) =>
  dossierOf({ configuration: { units: [unitOf({ id: 'alt1', functions: ['altimeter'] })] } }, { status: { records } });
const at = '2025-06-01T12:00Z';
const ifr = (topFt: number) => ({ rules: 'ifr', airspace: ['controlled'], topFt }) as const;
/** An entry that carries no readings stands by its own statement. */
const carried = ['status.records.0.readings', 'status.records.0.readings.altimeter'];
const encoding = (own: number | null) =>
  dossierOf(
    { configuration: { units: [unitOf({ id: 'alt1', functions: ['altimeter', 'altitude-reporting'] })] } },
    {
      status: {
        records: [
          bench('2025-02-10', 20_000),
          recordOf({
            kind: 'altitude-reporting-test',
            subjects: ['alt1'],
            on: '2025-02-10',
            agency: radioStation,
            testedToFt: own,
          }),
        ],
      },
    },
  );

// 14 CFR 91.411(d): not above the altitude tested; the altitude itself is allowed.
testRule(ifrAltitudeLimit, [
  { name: 'one foot below', dossier: of(bench('2025-02-10', 20_000)), at, flight: ifr(19_999), expect: 'met' },
  {
    name: 'at the tested altitude',
    dossier: of(bench('2025-02-10', 20_000)),
    at,
    flight: ifr(20_000),
    expect: 'met',
    message: 'below',
    topFt: 20_000,
    data: { topFt: 20_000 },
  },
  {
    name: 'one foot above',
    dossier: of(bench('2025-02-10', 20_000)),
    at,
    flight: ifr(20_001),
    expect: 'not-met',
    message: 'above',
  },
  {
    name: 'the entry says 20,000 ft, its readings stop at 10,000: at 10,000',
    dossier: of(bench('2025-02-10', 20_000, { readings: readingsOf({ altimeter: perfectAltimeter(10_000) }) })),
    at,
    flight: ifr(10_000),
    expect: 'met',
    topFt: 10_000,
    data: { topFt: 10_000 },
  },
  {
    name: 'the entry says 20,000 ft, its readings stop at 10,000: one foot above',
    dossier: of(bench('2025-02-10', 20_000, { readings: readingsOf({ altimeter: perfectAltimeter(10_000) }) })),
    at,
    flight: ifr(10_001),
    states: carried,
    expect: 'not-met',
  },
  {
    name: 'readings that go higher than the entry says',
    dossier: of(bench('2025-02-10', 10_000, { readings: readingsOf({ altimeter: perfectAltimeter(20_000) }) })),
    at,
    flight: ifr(10_001),
    expect: 'not-met',
  },
  {
    name: 'readings that do not say how high they go',
    dossier: of(
      bench('2025-02-10', 20_000, {
        readings: readingsOf({ altimeter: { ...perfectAltimeter(10_000), testedToFt: null } }),
      }),
    ),
    at,
    flight: ifr(3000),
    states: carried,
    expect: 'cannot-tell',
  },
  {
    name: 'above, under VFR',
    dossier: of(bench('2025-02-10', 20_000)),
    at,
    flight: { rules: 'vfr', topFt: 24_000 },
    expect: 'not-applicable',
    message: 'not-asked',
  },
  {
    name: 'tested altitude not recorded',
    dossier: of(bench('2025-02-10', null)),
    at,
    flight: ifr(3000),
    expect: 'cannot-tell',
    message: 'unrecorded',
    data: { topFt: null },
  },
  {
    name: 'tested altitude not recorded, though its readings go to 10,000',
    dossier: of(bench('2025-02-10', null, { readings: readingsOf({ altimeter: perfectAltimeter(10_000) }) })),
    at,
    flight: ifr(3000),
    expect: 'cannot-tell',
    data: { topFt: null },
  },
  { name: 'no test recorded', dossier: of(), at, flight: ifr(3000), expect: 'cannot-tell' },
  {
    name: 'current by its manufacture date: the altitude it was tested to is not known',
    dossier: dossierOf({
      configuration: { units: [unitOf({ id: 'alt1', typeId: 'a10', manufactured: '2025-01-10' })] },
    }),
    types: [typeOf({ id: 'a10', functions: ['altimeter'], authorisations: [{ tso: 'C10b', class: null }] })],
    at,
    flight: ifr(3000),
    expect: 'cannot-tell',
  },
  {
    name: 'the newer test says how high, though the older went higher',
    dossier: of(bench('2024-02-10', 25_000), bench('2025-02-10', 10_000)),
    at,
    flight: ifr(10_001),
    expect: 'not-met',
  },
  {
    name: 'a newer one that was not seen says nothing',
    dossier: of(bench('2024-02-10', 25_000), bench('2025-02-10', 10_000, { evidence: 'reported' })),
    at,
    flight: ifr(10_001),
    expect: 'met',
    topFt: 25_000,
  },
  {
    name: 'a newer one that may count: the lower of both holds',
    dossier: of(bench('2024-02-10', 25_000), bench('2025-02-10', 10_000, { agency: null })),
    at,
    flight: ifr(10_001),
    expect: 'not-met',
  },
  {
    name: 'the only one may count: it holds as it stands',
    dossier: of(bench('2025-02-10', 10_000, { agency: null })),
    at,
    flight: ifr(10_001),
    expect: 'not-met',
    data: { topFt: 10_000 },
  },
  {
    name: 'a reporter that is no altimeter',
    dossier: dossierOf(
      { configuration: { units: [unitOf({ id: 'enc1', functions: ['altitude-reporting'] })] } },
      {
        status: {
          records: [bench('2025-02-10', 12_000, { kind: 'altitude-reporting-test', subjects: ['enc1'] })],
        },
      },
    ),
    at,
    flight: ifr(12_001),
    expect: 'not-met',
    data: { topFt: 12_000 },
  },
  {
    name: 'encoding altimeter: the lower of altimeter and reporter',
    dossier: encoding(12_000),
    at,
    flight: ifr(12_001),
    expect: 'not-met',
    data: { topFt: 12_000 },
  },
  {
    name: 'encoding altimeter, reporter unrecorded',
    dossier: encoding(null),
    at,
    flight: ifr(3000),
    expect: 'cannot-tell',
  },
  {
    name: 'deactivated altimeter',
    dossier: dossierOf({
      configuration: {
        units: [
          unitOf({
            id: 'alt1',
            functions: ['altimeter'],
            deactivated: { since: { date: '2024-03-01', at: null }, placarded: true, recorded: true },
          }),
        ],
      },
    }),
    at,
    flight: ifr(3000),
    expect: 'not-applicable',
  },
]);

it.each([
  [12_000, 12_000],
  [null, undefined],
])('the verdict carries an altitude only where all are recorded: altimeter 20,000 ft, reporter %s', (own, carried) => {
  const [draft] = statements(ifrAltitudeLimit, { name: '', dossier: encoding(own), at, expect: 'met' });
  expect(draft?.topFt).toBe(carried);
});
