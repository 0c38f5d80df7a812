import { approvalOf, linkOf, radioStation, readingsOf, recordOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { goodAtcrbs, goodModeS } from '../../../testing/sample-readings.js';
import type { TransponderReadings } from '../../dossier/readings.js';
import type { RecordHead } from '../../dossier/status.js';
import { transponderReadings } from './transponder-readings.js';

const of = (
  transponder: TransponderReadings | null,
  part: Partial<RecordHead> = {},
  served = false,
  typeId: string | null = null,
) =>
  dossierOf(
    {
      configuration: {
        units: [
          unitOf({
            id: 'xp1',
            typeId,
            functions: ['transponder', 'ads-b-out-1090'],
            approval: typeId === null ? approvalOf() : null,
          }),
          unitOf({ id: 'enc1', functions: ['altitude-reporting'] }),
        ],
        links: served ? [linkOf('enc1', 'altitude-gray', 'xp1', 'altitude-gray')] : [],
      },
    },
    {
      status: {
        records: [
          recordOf({
            kind: 'transponder-test',
            subjects: ['xp1'],
            on: '2025-02-10',
            agency: radioStation,
            readings: transponder === null ? null : readingsOf({ transponder }),
            ...part,
          }),
        ],
      },
    },
  );
const built = (id: string, ...tsos: readonly string[]) =>
  typeOf({ id, functions: ['transponder'], authorisations: tsos.map((tso) => ({ tso, class: null })) });
const types = [
  built('es', 'C112e'),
  built('ac', 'C74c'),
  built('es-first', 'C112'),
  built('ac-first', 'C74'),
  built('es-out', 'C166b', 'C112e'),
];
const at = '2025-06-01T12:00Z';
const vfr = { rules: 'vfr' } as const;

// Part 43 appendix F. ATCRBS reply frequency 1090 +/-3 MHz, sensitivity -73 +/-4 dBm, 1A at least 21.0 dBW and 125 W.
testRule(transponderReadings, [
  // 91.215(a): TSO-C74 for ATCRBS, the class of TSO-C112 for Mode S.
  {
    name: 'a unit under TSO-C112, read as ATCRBS',
    dossier: of(goodAtcrbs(), {}, false, 'es'),
    types,
    at,
    expect: 'cannot-tell',
    message: 'incomplete',
    data: { what: 'class-of-unit' },
  },
  {
    name: 'a unit under TSO-C112, read as Mode S',
    dossier: of(goodModeS(), {}, false, 'es'),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'a unit under TSO-C74, read as Mode S',
    dossier: of(goodModeS(), {}, false, 'ac'),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit under TSO-C74, read as ATCRBS',
    dossier: of(goodAtcrbs(), {}, false, 'ac'),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'a unit under TSO-C112, read as ATCRBS, out of its limits',
    dossier: of({ ...goodAtcrbs(), replyMHz: 1086.9 }, {}, false, 'es'),
    types,
    at,
    expect: 'not-met',
  },
  ...(
    [
      ['TSO-C112 of its first edition, read as Mode S', goodModeS(), 'es-first'],
      ['TSO-C74 of its first edition, read as ATCRBS', goodAtcrbs(), 'ac-first'],
      ['TSO-C166 and TSO-C112, read as Mode S', goodModeS(), 'es-out'],
    ] as const
  ).map(([name, readings, typeId]) => ({
    name: `a unit under ${name}`,
    dossier: of(readings, {}, false, typeId),
    types,
    at,
    expect: 'met' as const,
  })),
  {
    name: 'a unit that is not catalogued and was approved by nobody',
    dossier: of(goodModeS(), {}, false, 'unlisted'),
    at,
    expect: 'cannot-tell',
  },
  { name: 'Mode S in limits', dossier: of(goodModeS()), at, expect: 'met', message: 'within' },
  {
    name: 'reply frequency 1087.0',
    dossier: of({ ...goodAtcrbs(), replyMHz: 1087 }),
    at,
    expect: 'met',
  },
  {
    name: 'reply frequency 1086.9, under VFR',
    dossier: of({ ...goodAtcrbs(), replyMHz: 1086.9 }),
    at,
    flight: vfr,
    expect: 'not-met',
    message: 'outside',
    data: { what: 'reply-frequency', value: 1086.9, limit: 1087 },
  },
  {
    name: 'watts pass and dBW do not: 125.4 W fails',
    dossier: of({ ...goodAtcrbs(), peakPowerW: 125.4 }),
    at,
    expect: 'not-met',
  },
  {
    name: 'portable set, -68 dBm: only the doubtful 3 dB would save it',
    dossier: of({ ...goodAtcrbs(), testSet: 'portable', mtlModeADbm: -68, mtlModeCDbm: -68 }),
    at,
    expect: 'cannot-tell',
    message: 'incomplete',
  },
  // Appendix F(b)(2): 235 +/-5 a second with a radiated signal, unless a higher rate was approved at that place.
  {
    name: 'portable set, suppression at 240 a second',
    dossier: of({ ...goodModeS(), testSet: 'portable', suppressionRatePerS: 240 }),
    at,
    expect: 'met',
  },
  {
    name: 'portable set, suppression at 241 a second: only an approval would allow it',
    dossier: of({ ...goodModeS(), testSet: 'portable', suppressionRatePerS: 241 }),
    at,
    expect: 'cannot-tell',
    message: 'incomplete',
    data: { what: 'suppression-rate' },
  },
  {
    name: 'reply frequency not recorded',
    dossier: of({ ...goodAtcrbs(), replyMHz: null }),
    at,
    expect: 'cannot-tell',
    data: { what: 'reply-frequency', value: null, limit: 1093 },
  },
  { name: 'class not recorded', dossier: of({ ...goodModeS(), equipmentClass: null }), at, expect: 'cannot-tell' },
  { name: 'squitter not recorded', dossier: of({ ...goodModeS(), squitterCorrect: null }), at, expect: 'cannot-tell' },
  {
    name: 'combined all-call not read, test before 17 Oct 2023: asked by that edition',
    dossier: of(goodModeS(), { done: { date: '2023-10-16', at: null } }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'combined all-call not read, test of 17 Oct 2023: asked no more',
    dossier: of(goodModeS(), { done: { date: '2023-10-17', at: null } }),
    at,
    expect: 'met',
  },
  { name: 'entry without readings', dossier: of(null), at, expect: 'not-applicable', message: 'none' },
  {
    name: 'no altitude reporter served: IFR loses nothing by it',
    dossier: of({ ...goodModeS(), replyMHz: 1000 }),
    at,
    subject: 'xp1:ifr',
    expect: 'none',
  },
  {
    name: 'altitude reporter served, outside limits, IFR in controlled airspace',
    dossier: of({ ...goodModeS(), replyMHz: 1000 }, {}, true),
    at,
    subject: 'xp1:ifr',
    expect: 'not-met',
  },
  {
    name: 'one of two reporters served, outside limits, IFR in controlled airspace',
    dossier: dossierOf(of({ ...goodModeS(), replyMHz: 1000 }, {}, true), {
      configuration: {
        units: [...of(null).configuration.units, unitOf({ id: 'enc2', functions: ['altitude-reporting'] })],
      },
    }),
    at,
    subject: 'xp1:ifr',
    expect: 'not-met',
  },
  {
    name: 'the reporter serves another transponder: IFR loses nothing by this one',
    dossier: dossierOf(of({ ...goodModeS(), replyMHz: 1000 }), {
      configuration: {
        units: [...of(null).configuration.units, unitOf({ id: 'xp2', functions: ['transponder'] })],
        links: [linkOf('enc1', 'altitude-gray', 'xp2', 'altitude-gray')],
      },
    }),
    at,
    subject: 'xp1:ifr',
    expect: 'none',
  },
  {
    name: 'altitude reporter served, outside limits, VFR',
    dossier: of({ ...goodModeS(), replyMHz: 1000 }, {}, true),
    at,
    flight: vfr,
    subject: 'xp1:ifr',
    expect: 'not-applicable',
  },
  {
    name: 'entered as failed, without readings, under VFR',
    dossier: of(null, { outcome: 'failed' }),
    at,
    flight: vfr,
    expect: 'not-met',
    message: 'failed',
  },
]);
