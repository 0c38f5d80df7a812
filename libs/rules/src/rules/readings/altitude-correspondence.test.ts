import { approvalOf, linkOf, pilot, radioStation, readingsOf, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import type { RuleCase } from '../../../testing/rule-tester.js';
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
const by = { asOf: '2025-01-10', by: 'R. Tamsin' };
/** Transponder and reporter accepted as found; undefined: by nobody, null: not accepted. */
const found = (...acceptedBy: readonly (typeof by | null | undefined)[]) =>
  dossierOf(of(), {
    configuration: {
      units: of().configuration.units.map((each, index) => ({
        ...each,
        approval:
          acceptedBy[index] === null ? null : approvalOf({ basis: 'as-found', acceptedBy: acceptedBy[index] ?? null }),
      })),
    },
  });
const at = '2025-06-01T12:00Z';
const vfr = { rules: 'vfr' } as const;

// Part 43 appendix E(c): 125 ft. Altimeter 9,980: reported 10,100 is 120 off, 10,200 is 220 off.
const cases: readonly RuleCase[] = [
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
  {
    name: 'entry without readings stands by its own statement',
    dossier: of(test(null)),
    at,
    expect: 'met',
    message: 'stands',
  },
  {
    name: 'that of the reporter, which appendix E makes part of its periodic test',
    dossier: of(test(null, { kind: 'altitude-reporting-test', subjects: ['enc1'] })),
    at,
    expect: 'met',
    message: 'stands',
  },
  {
    name: 'that of the reporter, with readings of something else',
    dossier: of(test(null, { kind: 'altitude-reporting-test', subjects: ['enc1'], readings: readingsOf({}) })),
    at,
    expect: 'met',
    message: 'stands',
  },
  { name: 'never recorded', dossier: of(), at, flight: vfr, expect: 'cannot-tell', message: 'never' },
  {
    name: 'never recorded, IFR in controlled airspace',
    dossier: of(),
    at,
    subject: 'xp1:ifr',
    expect: 'cannot-tell',
  },
  {
    name: 'never recorded, what 91.411 says under VFR',
    dossier: of(),
    at,
    flight: vfr,
    subject: 'xp1:ifr',
    expect: 'not-applicable',
    message: 'none',
  },
  {
    name: 'only reported, entry not seen',
    dossier: of(test(null, { evidence: 'reported' })),
    at,
    expect: 'cannot-tell',
    message: 'never',
  },
  {
    name: 'signed by a pilot',
    dossier: of(test(null, { agency: pilot })),
    at,
    expect: 'cannot-tell',
    message: 'never',
  },
  { name: 'never recorded, both accepted as found', dossier: found(by, by), at, expect: 'met', message: 'stands' },
  { name: 'never recorded, one of the two accepted as found', dossier: found(by, null), at, expect: 'cannot-tell' },
  { name: 'accepted as found by nobody', dossier: found(by, undefined), at, expect: 'cannot-tell' },
  {
    name: 'a transponder that nothing gives an altitude',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'xp1', functions: ['transponder'] })] } }),
    at,
    expect: 'not-applicable',
    message: 'none',
  },
  {
    name: 'a transponder beside a reporter that is joined to nothing',
    dossier: dossierOf(of(), { configuration: { links: [] } }),
    at,
    expect: 'not-applicable',
  },
  {
    name: 'two transponders, each with its reporter: 220 ft off is a matter of the other',
    dossier: dossierOf(of(test([[9980, 10_200]], { subjects: ['enc2'] }), test(null, { id: 'b' })), {
      configuration: {
        units: [
          ...of().configuration.units,
          unitOf({ id: 'xp2', functions: ['transponder'] }),
          unitOf({ id: 'enc2', functions: ['altitude-reporting'] }),
        ],
        links: [...of().configuration.links, linkOf('enc2', 'altitude-serial', 'xp2', 'altitude-serial')],
      },
    }),
    at,
    subject: 'xp1',
    expect: 'met',
    message: 'stands',
  },
  {
    name: 'a transponder that reports its own altitude, never tested',
    dossier: dossierOf({
      configuration: { units: [unitOf({ id: 'xp1', functions: ['transponder', 'altitude-reporting'] })] },
    }),
    at,
    expect: 'cannot-tell',
  },
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
];

/** An entry without readings stands by its own statement: taking readings away makes another entry of it. */
const states = [0, 1].flatMap((n) => ['', '.correspondence'].map((of) => `status.records.${n}.readings${of}`));
testRule(
  altitudeCorrespondence,
  cases.map((each) => ({ ...each, states })),
);
