import { expect, it } from 'vitest';
import { mechanic, recordOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { RecordHead } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { temporaryRemoval } from './elt-removal.js';
import { asked } from './gaps.js';

const removal = (on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'elt-removal', on, agency: mechanic, note: 'Quillon el4 E-17 repair', ...part });
const inspected = (on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'elt-inspection', on, subjects: ['elt1'], agency: mechanic, ...part });
const of = (...records: readonly RecordHead[]) =>
  temporaryRemoval(factsOf(dossierOf({ status: { records } }), catalogueOf()));

// 91.207(f)(10): 90 days from the initial removal.
it.each<[string, readonly RecordHead[], string]>([
  ['one removal', [removal('2026-01-05')], '2026-01-05'],
  ['entered twice: the first counts', [removal('2026-01-05'), removal('2026-02-05')], '2026-01-05'],
  ['entered three times', [removal('2026-01-05'), removal('2026-02-05'), removal('2026-03-05')], '2026-01-05'],
  ['whatever their order on record', [removal('2026-02-05'), removal('2026-01-05')], '2026-01-05'],
  ['back between the two', [removal('2026-01-05'), inspected('2026-01-20'), removal('2026-02-05')], '2026-02-05'],
  [
    'inspected on the day of the first: before it',
    [removal('2026-01-05'), inspected('2026-01-05'), removal('2026-02-05')],
    '2026-01-05',
  ],
  [
    'inspected on the day of the second: it was back',
    [removal('2026-01-05'), inspected('2026-02-05'), removal('2026-02-05')],
    '2026-02-05',
  ],
  ['inspected after both', [removal('2026-01-05'), removal('2026-02-05'), inspected('2026-02-06')], '2026-01-05'],
  [
    'only said to be inspected',
    [removal('2026-01-05'), inspected('2026-01-20', { evidence: 'reported' }), removal('2026-02-05')],
    '2026-01-05',
  ],
  [
    'back after the first of three',
    [removal('2026-01-05'), inspected('2026-01-20'), removal('2026-02-05'), removal('2026-03-05')],
    '2026-02-05',
  ],
])('%s', (_, records, on) => {
  expect(of(...records).on).toBe(on);
});

// Make, model, serial number and reason: fewer than four words cannot tell them.
it.each([
  ['Quillon el4 E-17 repair', 'met'],
  ['  Quillon   el4 E-17  ', 'not-met'],
  ['Removed.', 'not-met'],
  [null, 'cannot-tell'],
])('an entry that says "%s": %s', (note, outcome) => {
  const leaf = asked(of(removal('2026-01-05', { note })).clause).find(({ label }) => label.startsWith('make-model'));
  expect(leaf?.inside).toBe(outcome);
});

it('nothing removed, no day', () => {
  expect(of(inspected('2026-01-20'))).toMatchObject({ on: null, lastDay: null });
});
