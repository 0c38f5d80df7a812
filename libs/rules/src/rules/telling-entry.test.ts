import { expect, it } from 'vitest';
import { pilot, radioStation, readingsOf, recordOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { JudgedOutcome } from '../calculations/judged.js';
import type { RecordHead } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { tellingEntry } from './telling-entry.js';
import { tasks } from './who-may.js';

const unrated = { ...radioStation, ratings: null };
const entry = (id: string, on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'transponder-test', id, subjects: ['xp1'], on, agency: radioStation, ...part });
/** An entry with readings that come to this. */
const read = (id: string, on: string, comesTo: JudgedOutcome, part: Partial<RecordHead> = {}) =>
  entry(id, on, { readings: readingsOf({}), place: comesTo, ...part });

function told(...records: readonly RecordHead[]) {
  const telling = tellingEntry(
    factsOf(dossierOf({ status: { records } }), catalogueOf()),
    { kinds: ['transponder-test'], subjects: ['xp1'], by: tasks.transponderTest },
    (_, { place }) => ({ outcome: place as JudgedOutcome, points: [] }),
  );
  return {
    says: telling.says,
    by: telling.record?.id ?? null,
    ...('label' in telling ? { label: telling.label } : {}),
    ...('missing' in telling ? { missing: telling.missing } : {}),
  };
}
const agencyOf = (id: string, part = '') => [`status.records.${id}.agency${part}`];

it.each<[string, readonly RecordHead[], object]>([
  ['nothing on record', [], { says: 'none', by: null, label: 'no-readings-recorded' }],
  ['readings in limits', [read('a', '2026-01-10', 'met')], { says: 'read', by: 'a' }],
  [
    'readings out of limits, by somebody who may not test',
    [read('a', '2026-01-10', 'not-met', { agency: pilot })],
    { says: 'read', by: 'a' },
  ],
  [
    'readings out of limits, though nobody entered a result',
    [read('a', '2026-01-10', 'not-met', { outcome: null })],
    { says: 'read', by: 'a' },
  ],
  [
    'readings in limits, by somebody who may not test',
    [read('a', '2026-01-10', 'met', { agency: pilot })],
    { says: 'none', by: null },
  ],
  ['entered as failed', [entry('a', '2026-01-10', { outcome: 'failed' })], { says: 'failed', by: 'a' }],
  ['entered as disapproved', [entry('a', '2026-01-10', { outcome: 'disapproved' })], { says: 'failed', by: 'a' }],
  [
    'only said to have failed',
    [entry('a', '2026-01-10', { outcome: 'failed', evidence: 'reported' })],
    { says: 'none' },
  ],
  [
    'in limits, and nobody entered a result',
    [read('a', '2026-01-10', 'met', { outcome: null })],
    { says: 'doubt', label: 'outcome-recorded', missing: ['status.records.a.outcome'] },
  ],
  [
    'incomplete, and nobody entered a result',
    [read('a', '2026-01-10', 'cannot-tell', { outcome: null })],
    { says: 'read', by: 'a' },
  ],
  // A newer one that may not count takes the place of nothing.
  [
    'the only one, by a station of unrecorded ratings',
    [read('a', '2026-01-10', 'met', { agency: unrated })],
    { says: 'read', by: 'a' },
  ],
  [
    'out of limits, then in limits by a station of unrecorded ratings',
    [read('a', '2026-01-10', 'not-met'), read('b', '2026-02-10', 'met', { agency: unrated })],
    { says: 'doubt', by: 'b', label: 'newer-entry-counts', missing: agencyOf('b', '.ratings') },
  ],
  [
    'out of limits, then in limits by nobody named',
    [read('a', '2026-01-10', 'not-met'), read('b', '2026-02-10', 'met', { agency: null })],
    { says: 'doubt', by: 'b', label: 'newer-entry-counts', missing: agencyOf('b') },
  ],
  [
    'out of limits, then in limits twice in a day, once by who may',
    [
      read('a', '2026-01-10', 'not-met'),
      read('b', '2026-02-10', 'met', { agency: unrated }),
      read('c', '2026-02-10', 'met'),
    ],
    { says: 'read' },
  ],
  [
    'passed without readings, then in limits by a station of unrecorded ratings',
    [entry('a', '2026-01-10'), read('b', '2026-02-10', 'met', { agency: unrated })],
    { says: 'none', label: 'no-readings-recorded' },
  ],
  [
    'in limits, then again by a station of unrecorded ratings',
    [read('a', '2026-01-10', 'met'), read('b', '2026-02-10', 'met', { agency: unrated })],
    { says: 'read', by: 'b' },
  ],
  // Two of one day without times.
  [
    'in and out of limits on one day',
    [read('a', '2026-01-10', 'met'), read('b', '2026-01-10', 'not-met')],
    { says: 'doubt', label: 'order-of-tests-known', missing: ['status.records.b.done.at', 'status.records.a.done.at'] },
  ],
  [
    'in limits, and without readings, on one day',
    [read('a', '2026-01-10', 'met'), entry('b', '2026-01-10')],
    { says: 'none', label: 'a-test-of-that-day-has-no-readings', by: 'a' },
  ],
  [
    'incomplete, and without readings, on one day',
    [read('a', '2026-01-10', 'cannot-tell'), entry('b', '2026-01-10')],
    { says: 'read', by: 'a' },
  ],
  [
    'neither of two of one day can be told: their order makes no difference',
    [read('a', '2026-01-10', 'cannot-tell'), read('b', '2026-01-10', 'met', { outcome: null })],
    { says: 'doubt', label: 'outcome-recorded', by: 'b' },
  ],
])('%s', (_, records, expected) => {
  expect(told(...records)).toMatchObject(expected);
});
