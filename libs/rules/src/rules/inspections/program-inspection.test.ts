import { mechanic, pilot, recordOf, timeInService, totalTime } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { RecordHead } from '../../dossier/status.js';
import { programInspection } from './program-inspection.js';

type Aircraft = Dossier['configuration']['aircraft'];
const document = { title: 'Selected program', revision: '1', date: '2022-03-01' };
const twin = { engine: 'turboprop', engineCount: 2 } as const;
const selected = { ...twin, program: { kind: 'selected-program', document } } as const;
const of = (aircraft: Partial<Aircraft>, part: Partial<RecordHead> | null = {}) =>
  dossierOf(
    { configuration: { aircraft: { certificate: 'standard', ...aircraft } as never } },
    {
      status: {
        records:
          part === null
            ? []
            : [
                recordOf({
                  kind: 'program-inspection',
                  on: '2025-09-10',
                  outcome: 'approved',
                  agency: mechanic,
                  meters: totalTime,
                  expires: '2026-01-31',
                  ...part,
                }),
              ],
      },
      meters: timeInService,
    },
  );
const at = '2025-12-01T12:00Z';

// 14 CFR 91.409(e), (f). Chicago's 31 January ends at 06:00 UTC.
testRule(programInspection, [
  {
    name: 'selected program, last minute of its day',
    dossier: of(selected),
    at: '2026-02-01T05:59Z',
    expect: 'met',
    message: 'current',
    data: { lastGood: '2026-01-31' },
  },
  { name: 'total time in service not entered', dossier: of(selected, { meters: [] }), at, expect: 'cannot-tell' },
  { name: 'the minute after', dossier: of(selected), at: '2026-02-01T06:00Z', expect: 'not-met', message: 'lapsed' },
  {
    name: 'through which day not recorded',
    dossier: of(selected, { expires: null }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'nothing recorded', dossier: of(selected, null), at, expect: 'cannot-tell' },
  {
    name: 'program not named',
    dossier: of({ ...twin, program: { kind: 'selected-program', document: null } }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'passed, as some programs say it', dossier: of(selected, { outcome: 'passed' }), at, expect: 'met' },
  {
    name: 'what falls due under a selected program',
    dossier: of(selected, { expires: '2026-02-28' }),
    at,
    expect: 'met',
    due: [{ what: 'program-inspection', lastGoodDay: '2026-02-28' }],
  },
  {
    name: 'no program any more, though inspected under one: nothing falls due by it',
    dossier: of({ ...twin, program: null }),
    at,
    expect: 'not-met',
    due: [],
  },
  { name: 'signed by a pilot', dossier: of(selected, { agency: pilot }), at, expect: 'not-met' },
  {
    name: 'multiengine turboprop without a program',
    dossier: of({ engine: 'turboprop', engineCount: 2 }, null),
    at,
    expect: 'not-met',
  },
  {
    name: 'single-engine turboprop: under 91.409(a)',
    dossier: of({ engine: 'turboprop', engineCount: 1 }, null),
    at,
    expect: 'not-applicable',
    message: 'not-asked',
  },
  {
    name: 'turboprop, number of engines not recorded',
    dossier: of({ engine: 'turboprop', engineCount: null }, null),
    at,
    expect: 'cannot-tell',
  },
  {
    name: '12,500 lb: small',
    dossier: of({ engine: 'reciprocating', engineCount: 2, maxWeightLb: 12_500 }, null),
    at,
    expect: 'not-applicable',
  },
  {
    name: '12,501 lb: large',
    dossier: of({ engine: 'reciprocating', engineCount: 2, maxWeightLb: 12_501 }, null),
    at,
    expect: 'not-met',
  },
  {
    name: 'several engines, weight not recorded',
    dossier: of({ engine: 'reciprocating', engineCount: 2, maxWeightLb: null }, null),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'one reciprocating engine, weight not recorded',
    dossier: of({ engine: 'reciprocating', engineCount: 1, maxWeightLb: null }, null),
    at,
    expect: 'not-applicable',
  },
  { name: 'engine not recorded', dossier: of({ engine: null }, null), at, expect: 'cannot-tell' },
  {
    name: 'experimental',
    dossier: of({ certificate: 'experimental', engine: 'turbojet', engineCount: 2 }, null),
    at,
    expect: 'not-applicable',
  },
  {
    name: 'one reciprocating engine under a selected program: 91.409(e) does not name it',
    dossier: of({ ...selected, engine: 'reciprocating', engineCount: 1 }),
    at,
    expect: 'not-applicable',
    message: 'not-asked',
  },
  {
    name: 'single-engine turboprop under a selected program',
    dossier: of({ ...selected, engineCount: 1 }),
    at,
    expect: 'not-applicable',
  },
  {
    name: 'selected program, engine not recorded',
    dossier: of({ ...selected, engine: null }),
    at: '2026-02-01T06:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'one reciprocating engine under an approved program of part 135, in its day',
    dossier: of({ engine: 'reciprocating', engineCount: 1, program: { kind: 'approved-program', document } }),
    at,
    expect: 'met',
  },
  {
    name: 'approved program, after its day',
    dossier: of({ engine: 'reciprocating', engineCount: 1, program: { kind: 'approved-program', document } }),
    at: '2026-02-01T06:00Z',
    expect: 'not-met',
  },
  {
    name: 'turbine helicopter that chose a program',
    dossier: of({ ...selected, kind: 'helicopter', engine: 'turboshaft' }),
    at: '2026-02-01T06:00Z',
    expect: 'not-met',
  },
  {
    name: 'helicopter with a reciprocating engine and a selected program',
    dossier: of({ ...selected, kind: 'helicopter', engine: 'reciprocating' }),
    at: '2026-02-01T06:00Z',
    expect: 'not-applicable',
  },
  {
    name: 'helicopter with a selected program, engine not recorded',
    dossier: of({ ...selected, kind: 'helicopter', engine: null }),
    at: '2026-02-01T06:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'turbine helicopter that chose no program',
    dossier: of({ kind: 'helicopter', engine: 'turboshaft', engineCount: 2 }, null),
    at,
    expect: 'not-applicable',
  },
  {
    name: 'one reciprocating engine under a selected program, inspected: nothing falls due by it',
    dossier: of({ ...selected, engine: 'reciprocating', engineCount: 1, maxWeightLb: 2300 }),
    at,
    expect: 'not-applicable',
    due: [],
  },
]);
