import { linkOf, radioStation, readingsOf, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead } from '../../dossier/status.js';
import { altitudeCorrespondence } from './altitude-correspondence.js';

const test = (points: readonly (readonly [number, number])[] | null, part: Partial<RecordHead> = {}) =>
  recordOf({
    kind: 'altitude-correspondence-test',
    on: '2025-02-10',
    agency: radioStation,
    readings:
      points === null
        ? null
        : readingsOf({
            correspondence: { points: points.map(([altimeterFt, reportedFt]) => ({ altimeterFt, reportedFt })) },
          }),
    ...part,
  });
const of = (...records: readonly RecordHead[]) =>
  dossierOf(
    {
      configuration: {
        units: [
          unitOf({ id: 'xp1', functions: ['transponder'] }),
          unitOf({ id: 'enc1', functions: ['altitude-reporting'] }),
        ],
        links: [linkOf('enc1', 'altitude-gray', 'xp1', 'altitude-gray')],
      },
    },
    { status: { records } },
  );
const at = '2025-06-01T12:00Z';
const vfr = { rules: 'vfr' } as const;

// Part 43 appendix E(c): 125 ft. Altimeter 9,980: reported 10,100 is 120 off, 10,200 is 220 off.
testRule(altitudeCorrespondence, [
  { name: '120 ft', dossier: of(test([[9980, 10_100]])), at, expect: 'met', message: 'within' },
  { name: '125 ft', dossier: of(test([[9975, 10_100]])), at, expect: 'met' },
  {
    name: '126 ft, under VFR: 91.413(b) asks it for any use',
    dossier: of(test([[9974, 10_100]])),
    at,
    flight: vfr,
    expect: 'not-met',
    message: 'outside',
    data: { at: 9974, value: 126, limit: 125 },
  },
  {
    name: '220 ft, IFR in controlled airspace',
    dossier: of(test([[9980, 10_200]])),
    at,
    subject: 'xp1:ifr',
    expect: 'not-met',
  },
  {
    name: '220 ft, what 91.411 says under VFR',
    dossier: of(test([[9980, 10_200]])),
    at,
    flight: vfr,
    subject: 'xp1:ifr',
    expect: 'not-applicable',
  },
  {
    name: 'one point of two off',
    dossier: of(
      test([
        [1000, 1000],
        [9980, 10_200],
      ]),
    ),
    at,
    expect: 'not-met',
  },
  { name: 'no point read', dossier: of(test([])), at, expect: 'cannot-tell', message: 'incomplete' },
  { name: 'entry without readings', dossier: of(test(null)), at, expect: 'not-applicable', message: 'none' },
  {
    name: 'a newer one on the reporter supersedes an older one on the aircraft',
    dossier: of(
      test([[9980, 10_200]]),
      test([[9980, 10_000]], {
        id: 'b',
        kind: 'altitude-reporting-test',
        subjects: ['enc1'],
        done: { date: '2025-03-01', at: null },
      }),
    ),
    at,
    expect: 'met',
  },
  {
    name: 'entered as failed, without readings, under VFR',
    dossier: of(test(null, { outcome: 'failed' })),
    at,
    flight: vfr,
    expect: 'not-met',
    message: 'failed',
  },
  {
    name: '220 ft, then a test of the reporter that read no correspondence: it says nothing of it',
    dossier: of(
      test([[9980, 10_200]]),
      test(null, {
        id: 'b',
        kind: 'altitude-reporting-test',
        subjects: ['enc1'],
        done: { date: '2025-03-01', at: null },
      }),
    ),
    at,
    expect: 'not-met',
  },
]);
