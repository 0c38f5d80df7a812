import { radioStation, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead } from '../../dossier/status.js';
import { testedAltitudeMarked } from './tested-altitude-marked.js';

const at = '2026-03-02T14:00Z';
const test = (part: Partial<RecordHead> = {}) =>
  recordOf({
    kind: 'altimeter-test',
    subjects: ['alt1'],
    on: '2026-02-10',
    agency: radioStation,
    testedToFt: 20_000,
    marked: true,
    ...part,
  });
const of = (...records: readonly RecordHead[]) =>
  dossierOf({ configuration: { units: [unitOf({ id: 'alt1', functions: ['altimeter'] })] } }, { status: { records } });

// Part 43 appendix E(d).
testRule(testedAltitudeMarked, [
  { name: 'marked and entered', dossier: of(test()), at, expect: 'met', message: 'marked', data: { topFt: 20_000 } },
  { name: 'not marked', dossier: of(test({ marked: false })), at, expect: 'not-met', message: 'unmarked' },
  {
    name: 'nobody looked for the mark',
    dossier: of(test({ marked: null })),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'whether it is marked' },
  },
  {
    name: 'altitude not entered',
    dossier: of(test({ testedToFt: null })),
    at,
    expect: 'cannot-tell',
    data: { unrecorded: 'altitude tested to (ft)' },
  },
  {
    name: 'the newest test speaks',
    dossier: of(test({ marked: false }), test({ id: 'newer', done: { date: '2026-02-20', at: null } })),
    at,
    expect: 'met',
  },
  { name: 'an entry that nobody saw', dossier: of(test({ evidence: 'reported' })), at, expect: 'none' },
]);
