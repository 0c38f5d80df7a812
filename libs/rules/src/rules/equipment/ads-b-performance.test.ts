import { mechanic, recordOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead } from '../../dossier/status.js';
import { adsBPerformance } from './ads-b-performance.js';

const types = [typeOf({ id: 'ms4', functions: ['transponder', 'ads-b-out-1090'] })];
const report = (on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'ads-b-report', on, agency: mechanic, ...part });
const of = (...records: readonly RecordHead[]) =>
  dossierOf({ configuration: { units: [unitOf({ id: 'xpdr1', typeId: 'ms4' })] }, status: { records } });
const at = '2026-03-01T12:00Z';

// 91.227(c) gives the figures; the report that compares them is common practice.
testRule(adsBPerformance, [
  { name: 'sound', dossier: of(report('2026-02-01')), types, at, expect: 'met', message: 'sound' },
  {
    name: 'a fault after a sound one',
    dossier: of(report('2026-02-01'), report('2026-02-02', { outcome: 'failed' })),
    types,
    at,
    expect: 'not-met',
    message: 'fault',
    data: { done: '2026-02-02' },
  },
  {
    name: 'sound again after the fault',
    dossier: of(report('2026-02-02', { outcome: 'failed' }), report('2026-02-03')),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'result not recorded',
    dossier: of(report('2026-02-01', { outcome: null })),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'reported, not seen',
    dossier: of(report('2026-02-01', { evidence: 'reported' })),
    types,
    at,
    expect: 'not-met',
  },
  { name: 'no report', dossier: of(), types, at, expect: 'cannot-tell', message: 'unclear' },
  {
    name: '978 MHz, no report',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'uat1', functions: ['ads-b-out-uat'] })] } }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'no ADS-B Out', dossier: dossierOf({}), types, at, expect: 'none' },
]);
