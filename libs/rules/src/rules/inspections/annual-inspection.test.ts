import { inspector, mechanic, recordOf, timeInService, totalTime } from '../../../testing/builders.js';
import type { Part } from '../../../testing/dossiers.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import { annualInspection } from './annual-inspection.js';

const standard = { configuration: { aircraft: { certificate: 'standard' } }, meters: timeInService } as const;
const annual = (part: Partial<Parameters<typeof recordOf>[0]> = {}) =>
  ({
    status: {
      records: [
        recordOf({
          kind: 'annual-inspection',
          on: '2025-01-31',
          outcome: 'approved',
          agency: inspector,
          meters: totalTime,
          ...part,
        }),
      ],
    },
  }) as const;

const selected = (engine: 'reciprocating' | 'turboprop', engineCount: number | null): Part<Dossier> => ({
  configuration: { aircraft: { engine, engineCount, program: { kind: 'selected-program', document: null } } },
});

// 14 CFR 91.409(a); month ends as in the worked example "annual done 31 Jan 2025: last good 31 Jan 2026".
// The base lies in Chicago: its 31 January ends at 06:00 UTC on 1 February.
testRule(annualInspection, [
  {
    name: 'good on its last minute',
    dossier: dossierOf(standard, annual()),
    at: '2026-02-01T05:59Z',
    expect: 'met',
    message: 'current',
    data: { done: '2025-01-31', lastGood: '2026-01-31' },
  },
  // 43.11(a): total time in service. An entry that is not known to hold it is not known to be the one that 91.407(a)(2) waits for.
  {
    name: 'total time in service not entered',
    dossier: dossierOf(standard, annual({ meters: [] })),
    at: '2025-06-01T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'hours of a meter that does not stand for time in service',
    dossier: dossierOf(standard, annual({ meters: [{ meter: 'hobbs', value: 400_000 }] })),
    at: '2025-06-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'which meter stands for time in service is not stated',
    dossier: dossierOf(standard, annual(), { meters: { timeInService: null } }),
    at: '2025-06-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'inspected for the issue of an airworthiness certificate: no entry of 43.11',
    dossier: dossierOf(
      standard,
      annual({
        kind: 'airworthiness-certificate-inspection',
        meters: [],
        agency: { ...inspector, kind: 'manufacturer' },
      }),
    ),
    at: '2025-06-01T12:00Z',
    expect: 'met',
  },
  {
    name: 'lapsed with the next minute',
    dossier: dossierOf(standard, annual()),
    at: '2026-02-01T06:00Z',
    expect: 'not-met',
    message: 'lapsed',
  },
  // The base lies in Chicago: its 31 January begins at 06:00 UTC.
  {
    name: 'the minute before its day',
    dossier: dossierOf(standard, annual()),
    at: '2025-01-31T05:59Z',
    expect: 'not-met',
  },
  {
    name: 'the first minute of its day',
    dossier: dossierOf(standard, annual()),
    at: '2025-01-31T06:00Z',
    expect: 'met',
  },
  {
    name: 'disapproved: done, but it does not count',
    dossier: dossierOf(standard, annual({ outcome: 'disapproved' })),
    at: '2025-06-01T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'a disapproved one supersedes the older approved one',
    dossier: dossierOf(standard, {
      status: {
        records: [
          recordOf({ kind: 'annual-inspection', on: '2025-01-31', outcome: 'approved', agency: inspector }),
          recordOf({ kind: 'annual-inspection', on: '2025-03-02', outcome: 'disapproved', agency: inspector }),
        ],
      },
    }),
    at: '2025-06-01T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'reported, entry not seen',
    dossier: dossierOf(standard, annual({ evidence: 'reported' })),
    at: '2025-06-01T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'an older entry that was seen still counts beside a newer one that was not',
    dossier: dossierOf(standard, {
      status: {
        records: [
          ...annual().status.records,
          recordOf({
            kind: 'annual-inspection',
            on: '2026-01-15',
            outcome: 'approved',
            agency: inspector,
            evidence: 'reported',
          }),
        ],
      },
    }),
    at: '2026-01-20T12:00Z',
    expect: 'met',
  },
  {
    name: 'signed by a mechanic without inspection authorization',
    dossier: dossierOf(standard, annual({ agency: mechanic })),
    at: '2025-06-01T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'signer not recorded',
    dossier: dossierOf(standard, annual({ agency: null })),
    at: '2025-06-01T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'nothing recorded', dossier: dossierOf(standard), at: '2025-06-01T12:00Z', expect: 'cannot-tell' },
  {
    name: 'inspection for the airworthiness certificate',
    dossier: dossierOf(standard, annual({ kind: 'airworthiness-certificate-inspection' })),
    at: '2025-06-01T12:00Z',
    expect: 'met',
  },
  {
    name: 'the last complete inspection of a progressive program that was left',
    dossier: dossierOf(standard, annual({ kind: 'progressive-complete' })),
    at: '2025-06-01T12:00Z',
    expect: 'met',
  },
  {
    name: 'experimental',
    dossier: dossierOf({ configuration: { aircraft: { certificate: 'experimental' } } }),
    at: '2025-06-01T12:00Z',
    expect: 'not-applicable',
    message: 'excepted',
  },
  {
    name: 'progressive program',
    dossier: dossierOf(standard, { configuration: { aircraft: { program: { kind: 'progressive', document: null } } } }),
    at: '2025-06-01T12:00Z',
    expect: 'not-applicable',
  },
  // 91.409(e) names large airplanes, multiengine turbojets and turboprops, and turbine rotorcraft.
  {
    name: 'one reciprocating engine under a selected program',
    dossier: dossierOf(standard, selected('reciprocating', 1)),
    at: '2025-06-01T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'single-engine turboprop under a selected program, annual lapsed',
    dossier: dossierOf(standard, annual(), selected('turboprop', 1)),
    at: '2026-06-01T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'two turboprop engines under a selected program',
    dossier: dossierOf(standard, selected('turboprop', 2)),
    at: '2025-06-01T12:00Z',
    expect: 'not-applicable',
  },
  {
    name: 'selected program, number of turboprop engines not recorded, annual lapsed',
    dossier: dossierOf(standard, annual(), selected('turboprop', null)),
    at: '2026-06-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'one engine under an approved program of part 135: 91.409(c)',
    dossier: dossierOf(standard, {
      configuration: { aircraft: { engineCount: 1, program: { kind: 'approved-program', document: null } } },
    }),
    at: '2025-06-01T12:00Z',
    expect: 'not-applicable',
  },
  ...(['light-sport', 'provisional'] as const).map((certificate) => ({
    name: `${certificate}: 91.409(c)(1)`,
    dossier: dossierOf({ configuration: { aircraft: { certificate } } }, annual()),
    at: '2026-06-01T12:00Z',
    expect: 'not-applicable' as const,
  })),
  {
    name: 'certificate unknown, annual in date',
    dossier: dossierOf({ meters: timeInService }, annual()),
    at: '2025-06-01T12:00Z',
    expect: 'met',
  },
  {
    name: 'certificate unknown, annual lapsed',
    dossier: dossierOf(annual()),
    at: '2026-06-01T12:00Z',
    expect: 'cannot-tell',
  },
]);
