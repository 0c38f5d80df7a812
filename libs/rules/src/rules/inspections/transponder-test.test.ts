import { inspector, radioStation, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { FunctionCode } from '../../catalogue/type.js';
import type { RecordHead } from '../../dossier/status.js';
import { transponderTest } from './transponder-test.js';

const of = (
  part: Partial<RecordHead> | null,
  functions: readonly FunctionCode[] = ['transponder'],
  deactivated = false,
) =>
  dossierOf(
    {
      configuration: {
        units: [
          unitOf({
            id: 'xp1',
            functions: [...functions],
            deactivated: deactivated
              ? { since: { date: '2026-03-05', at: null }, placarded: true, recorded: true }
              : null,
          }),
        ],
      },
    },
    {
      status: {
        records:
          part === null
            ? []
            : [
                recordOf({
                  kind: 'transponder-test',
                  subjects: ['xp1'],
                  on: '2024-02-10',
                  agency: radioStation,
                  ...part,
                }),
              ],
      },
    },
  );
const signedBy = (agency: RecordHead['agency']) => of({ agency });
const oneBox = ['transponder', 'ads-b-out-1090'] as const;
const collision = 'xp1:ads-b-out';
const current = '2025-06-01T12:00Z';
const vfr = { rules: 'vfr', airspace: [], topFt: 3000 } as const;

// 14 CFR 91.413(a): 24 calendar months, any rules. Chicago's 28 February 2026 ends at 06:00 UTC.
testRule(transponderTest, [
  {
    name: 'last minute',
    dossier: of({}),
    at: '2026-03-01T05:59Z',
    expect: 'met',
    message: 'current',
    data: { lastGood: '2026-02-28' },
  },
  { name: 'the minute after', dossier: of({}), at: '2026-03-01T06:00Z', expect: 'not-met', message: 'lapsed' },
  {
    name: 'the minute after, under VFR: use is forbidden all the same',
    dossier: of({}),
    at: '2026-03-01T06:00Z',
    flight: vfr,
    expect: 'not-met',
  },
  {
    name: 'lapsed and no ADS-B in the box: nothing else is said',
    dossier: of({}),
    at: '2026-03-01T06:00Z',
    flight: vfr,
    subject: collision,
    expect: 'none',
  },

  // 91.413(c).
  {
    name: 'by an inspector, who is a mechanic and not named',
    dossier: signedBy(inspector),
    at: current,
    expect: 'not-met',
  },
  {
    name: 'by a station with instrument and airframe ratings only',
    dossier: signedBy({ ...radioStation, ratings: ['instrument-1', 'station-airframe'] }),
    at: current,
    expect: 'not-met',
  },
  {
    name: 'by a station with a rating limited to the test',
    dossier: signedBy({ ...radioStation, ratings: ['limited-for-test'] }),
    at: current,
    expect: 'met',
  },
  {
    name: 'by a station with a limited radio rating: for which makes is not recorded',
    dossier: signedBy({ ...radioStation, ratings: ['radio-limited'] }),
    at: current,
    expect: 'cannot-tell',
  },
  {
    name: 'by a carrier under its program',
    dossier: signedBy({ ...radioStation, kind: 'carrier' }),
    at: current,
    expect: 'met',
  },
  {
    name: 'by a manufacturer: whether it installed the unit is not recorded',
    dossier: signedBy({ ...radioStation, kind: 'manufacturer' }),
    at: current,
    expect: 'cannot-tell',
  },
  { name: 'signer not recorded', dossier: signedBy(null), at: current, expect: 'cannot-tell', message: 'unclear' },
  {
    name: 'ratings not recorded',
    dossier: signedBy({ ...radioStation, ratings: null }),
    at: current,
    expect: 'cannot-tell',
  },
  { name: 'result not recorded', dossier: of({ outcome: null }), at: current, expect: 'cannot-tell' },
  { name: 'failed', dossier: of({ outcome: 'failed' }), at: current, expect: 'not-met' },
  { name: 'reported, entry not seen', dossier: of({ evidence: 'reported' }), at: current, expect: 'not-met' },
  { name: 'nothing recorded', dossier: of(null), at: current, expect: 'cannot-tell' },
  {
    name: 'deactivated: not used',
    dossier: of(null, ['transponder'], true),
    at: current,
    expect: 'not-applicable',
    message: 'not-used',
  },

  // 91.413(a) against 91.225(f), where one box does both.
  {
    name: 'one box, in date',
    dossier: of({}, oneBox),
    at: current,
    subject: collision,
    expect: 'met',
    message: 'together',
  },
  {
    name: 'one box, lapsed: the use',
    dossier: of({}, oneBox),
    at: '2026-03-01T06:00Z',
    flight: vfr,
    subject: 'xp1',
    expect: 'not-met',
  },
  {
    name: 'one box, lapsed: neither on nor off can be told to be right',
    dossier: of({}, oneBox),
    at: '2026-03-01T06:00Z',
    flight: vfr,
    subject: collision,
    expect: 'cannot-tell',
    message: 'collide',
  },
  {
    name: 'one box, lapsed, then deactivated',
    dossier: of({}, oneBox, true),
    at: '2026-03-05T06:00Z',
    flight: vfr,
    subject: collision,
    expect: 'not-applicable',
  },
  {
    name: 'ADS-B by a separate transmitter: no collision',
    dossier: dossierOf(of({}), {
      configuration: {
        units: [unitOf({ id: 'uat', functions: ['ads-b-out-uat'] }), unitOf({ id: 'xp1', functions: ['transponder'] })],
      },
    }),
    at: '2026-03-01T06:00Z',
    subject: collision,
    expect: 'none',
  },
]);
