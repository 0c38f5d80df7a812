import { inspector, mechanic, recordOf, timeInService, totalTime } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { RecordHead } from '../../dossier/status.js';
import { progressiveInspection } from './progressive-inspection.js';

type Program = NonNullable<Dossier['configuration']['aircraft']['program']>;
const manual: Program['document'] = { title: 'Inspection procedures', revision: '4', date: '2023-01-09' };
const of = (part: Partial<RecordHead> | null, program: Program | null = { kind: 'progressive', document: manual }) =>
  dossierOf(
    { configuration: { aircraft: { certificate: 'standard', program: program as never } } },
    {
      status: {
        records:
          part === null
            ? []
            : [
                recordOf({
                  kind: 'progressive-complete',
                  on: '2025-01-31',
                  outcome: 'approved',
                  agency: inspector,
                  meters: totalTime,
                  ...part,
                }),
              ],
      },
      meters: timeInService,
    },
  );

// 14 CFR 91.409(d): the whole aircraft within each 12 calendar months. Chicago's 31 January ends at 06:00 UTC.
testRule(progressiveInspection, [
  {
    name: 'last minute',
    dossier: of({}),
    at: '2026-02-01T05:59Z',
    expect: 'met',
    message: 'current',
    data: { lastGood: '2026-01-31' },
  },
  {
    name: 'total time in service not entered',
    dossier: of({ meters: [] }),
    at: '2025-06-01T12:00Z',
    expect: 'cannot-tell',
  },
  { name: 'the minute after', dossier: of({}), at: '2026-02-01T06:00Z', expect: 'not-met', message: 'lapsed' },
  {
    name: 'signed by a mechanic without inspection authorization',
    dossier: of({ agency: mechanic }),
    at: '2025-06-01T12:00Z',
    expect: 'not-met',
  },
  { name: 'signer not recorded', dossier: of({ agency: null }), at: '2025-06-01T12:00Z', expect: 'cannot-tell' },
  {
    name: 'procedures manual not named',
    dossier: of({}, { kind: 'progressive', document: null }),
    at: '2025-06-01T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'passed', dossier: of({ outcome: 'passed' }), at: '2025-06-01T12:00Z', expect: 'met' },
  { name: 'no complete inspection recorded', dossier: of(null), at: '2025-06-01T12:00Z', expect: 'cannot-tell' },
  {
    name: 'no program',
    dossier: of({}, null),
    at: '2026-06-01T12:00Z',
    expect: 'not-applicable',
    message: 'not-asked',
  },
  {
    name: 'selected program: another rule',
    dossier: of({}, { kind: 'selected-program', document: manual }),
    at: '2026-06-01T12:00Z',
    expect: 'not-applicable',
  },
]);
