import { inspector, recordOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead } from '../../dossier/status.js';
import { inspectionEntry } from './inspection-entry.js';

const entry = (part: Partial<RecordHead> & { on?: string } = {}) =>
  recordOf({
    kind: 'annual-inspection',
    on: '2026-02-10',
    outcome: 'approved',
    agency: inspector,
    meters: [{ meter: 'tach', value: 400_000 }],
    ...part,
  });
const of = (...records: readonly RecordHead[]) =>
  dossierOf({
    status: { records },
    meters: {
      definitions: [{ id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 }],
      timeInService: 'tach',
    },
  });
const at = '2026-03-01T12:00Z';

// 43.11(a) and (b).
testRule(inspectionEntry, [
  { name: 'all there', dossier: of(entry()), at, expect: 'met', message: 'whole' },
  {
    name: 'no total time',
    dossier: of(entry({ meters: [] })),
    at,
    expect: 'cannot-tell',
    message: 'lacking',
    data: { unrecorded: 'meter readings' },
  },
  {
    name: 'hours of another meter',
    dossier: of(entry({ meters: [{ meter: 'hobbs', value: 1 }] })),
    at,
    expect: 'cannot-tell',
  },
  { name: 'signer not recorded', dossier: of(entry({ agency: null })), at, expect: 'cannot-tell' },
  {
    name: 'certificate number not recorded',
    dossier: of(entry({ agency: { ...inspector, certificate: null } })),
    at,
    expect: 'cannot-tell',
  },
  { name: 'neither approved nor disapproved', dossier: of(entry({ outcome: null })), at, expect: 'cannot-tell' },
  { name: 'disapproved without a list', dossier: of(entry({ outcome: 'disapproved' })), at, expect: 'cannot-tell' },
  {
    name: 'failed without a list',
    dossier: of(entry({ outcome: 'failed' })),
    at,
    expect: 'cannot-tell',
    data: { unrecorded: 'note' },
  },
  {
    name: 'disapproved with a list',
    dossier: of(entry({ outcome: 'disapproved', note: 'Left brake worn; list given to the owner' })),
    at,
    expect: 'met',
  },
  { name: 'a test is entered by another text', dossier: of(entry({ kind: 'transponder-test' })), at, expect: 'none' },
  { name: 'not seen', dossier: of(entry({ evidence: 'reported' })), at, expect: 'none' },
]);
