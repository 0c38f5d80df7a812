import { mechanic, pilot, readingsOf, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead } from '../../dossier/status.js';
import { interferenceTestMHz } from '../../facts/vhf.js';
import { gnssChecks } from './gnss-checks.js';

const at = '2026-03-02T14:00Z';
const of = (...records: readonly RecordHead[]) =>
  dossierOf({ configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'] })] }, status: { records } });
const checked = (kind: 'gnss-function-check' | 'vhf-interference-check', part: Partial<RecordHead> = {}) =>
  recordOf({ kind, on: '2026-02-10', subjects: ['gps1'], agency: mechanic, ...part });
const interference = (lostOn: number | null, frequencies = interferenceTestMHz.value) =>
  readingsOf({
    interference: {
      points: frequencies.map((frequencyMHz) => ({
        transmitter: 'COM 1',
        frequencyMHz,
        navigationLost: frequencyMHz === lostOn,
      })),
    },
  });
const function_ = { at, subject: 'gps1:gnss-function-check' };
const vhf = { at, subject: 'gps1:vhf-interference-check' };
const later = { id: 'later', done: { date: '2026-02-12', at: null } } as const;

testRule(gnssChecks, [
  { ...function_, name: 'never checked', dossier: of(), expect: 'not-applicable', message: 'none' },
  {
    ...function_,
    name: 'passed: its own statement stands',
    dossier: of(checked('gnss-function-check')),
    expect: 'not-applicable',
  },
  {
    ...function_,
    name: 'failed',
    dossier: of(checked('gnss-function-check', { outcome: 'failed' })),
    expect: 'not-met',
    message: 'failed',
    data: { item: 'gps1', check: 'function check', done: '2026-02-10' },
  },
  {
    ...function_,
    name: 'failed, then passed by a pilot',
    dossier: of(
      checked('gnss-function-check', { outcome: 'failed' }),
      checked('gnss-function-check', { ...later, agency: pilot }),
    ),
    expect: 'not-met',
  },
  {
    ...function_,
    name: 'failed, then passed by a mechanic',
    dossier: of(checked('gnss-function-check', { outcome: 'failed' }), checked('gnss-function-check', later)),
    expect: 'not-applicable',
  },
  {
    ...function_,
    name: 'whether it passed is not recorded',
    dossier: of(checked('gnss-function-check', { outcome: null })),
    expect: 'cannot-tell',
    message: 'incomplete',
  },
  {
    ...function_,
    name: 'whether it passed is not recorded, and its readings are of interference',
    dossier: of(checked('gnss-function-check', { outcome: null, readings: interference(null) })),
    expect: 'cannot-tell',
  },
  {
    ...vhf,
    name: 'six frequencies, nothing lost',
    dossier: of(checked('vhf-interference-check', { readings: interference(null) })),
    expect: 'met',
    message: 'within',
  },
  {
    ...vhf,
    name: 'navigation lost on one',
    dossier: of(checked('vhf-interference-check', { readings: interference(121.175) })),
    expect: 'not-met',
    message: 'outside',
    data: { at: 'COM 1 121.175' },
  },
  {
    ...vhf,
    name: 'one frequency not tried',
    dossier: of(
      checked('vhf-interference-check', { readings: interference(null, interferenceTestMHz.value.slice(1)) }),
    ),
    expect: 'cannot-tell',
  },
  {
    ...function_,
    name: 'a portable unit is not installed',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss', 'portable-display'] })] } }),
    expect: 'none',
  },
]);
