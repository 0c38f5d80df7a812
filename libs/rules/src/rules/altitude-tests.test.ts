import { expect, it } from 'vitest';
import { radioStation, recordOf, typeOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { RecordHead } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { altimeterTested, reporterTested } from './altitude-tests.js';

const test = (on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'altimeter-test', on, subjects: ['u'], agency: radioStation, ...part });

/** Through which day it is good; null: it counts as tested on no day. */
function lastGood(
  tested: typeof altimeterTested,
  tsos: readonly string[],
  manufactured: string | null,
  ...records: readonly RecordHead[]
) {
  const type = typeOf({
    id: 'type',
    functions: ['altimeter', 'altitude-reporting'],
    authorisations: tsos.map((tso) => ({ tso, class: null })),
  });
  const units = [unitOf({ id: 'u', typeId: 'type', manufactured })];
  const facts = factsOf(dossierOf({ configuration: { units }, status: { records } }), catalogueOf(type));
  const unit = facts.units.get('u');
  return unit && tested(facts, unit).lastGood;
}

// 91.411(c): equipment under a TSO counts as tested on the day it was made; 24 calendar months.
it.each<[string, readonly string[], string | null, readonly RecordHead[], string | null]>([
  ['made under TSO-C10', ['C10b'], '2025-01-15', [], '2027-01-31'],
  ['under its first edition', ['C10'], '2025-01-15', [], '2027-01-31'],
  ['under TSO-C106, for air data computers', ['C106'], '2025-01-15', [], null],
  ['under TSO-C88, for reporters', ['C88b'], '2025-01-15', [], null],
  ['an encoding altimeter under both', ['C88b', 'C10b'], '2025-01-15', [], '2027-01-31'],
  ['not known when it was made', ['C10b'], null, [], null],
  ['tested since', ['C10b'], '2025-01-15', [test('2025-06-10')], '2027-06-30'],
  ['with an entry older than itself', ['C10b'], '2025-06-10', [test('2025-01-15')], '2027-06-30'],
  ['not under that TSO, tested', ['C106'], '2025-06-10', [test('2025-01-15')], '2027-01-31'],
  ['new, and then failed', ['C10b'], '2025-01-15', [test('2025-06-10', { outcome: 'failed' })], null],
  ['new, and then disapproved', ['C10b'], '2025-01-15', [test('2025-06-10', { outcome: 'disapproved' })], null],
  [
    'said to have failed',
    ['C10b'],
    '2025-01-15',
    [test('2025-06-10', { outcome: 'failed', evidence: 'reported' })],
    '2027-01-31',
  ],
])('an altimeter %s', (_, tsos, manufactured, records, expected) => {
  expect(lastGood(altimeterTested, tsos, manufactured, ...records)).toBe(expected);
});

it.each([
  ['C88b', '2027-01-31'],
  ['C88', '2027-01-31'],
  ['C10b', null],
])('a reporter made under TSO-%s: %s', (tso, expected) => {
  expect(lastGood(reporterTested, [tso], '2025-01-15')).toBe(expected);
});
