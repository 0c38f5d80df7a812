import { expect, it } from 'vitest';
import { mechanic, recordOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Recurrence } from '../calculations/recurrence.js';
import { factsOf } from '../graph/facts.js';
import { met, unknown } from '../verdict/build.js';
import { cfr } from './cite.js';
import { recurring } from './recurring.js';

const both: Recurrence = {
  parts: [
    { kind: 'hours', meter: 'tach', count: 10_000 },
    { kind: 'days', count: 30 },
  ],
  combine: 'first',
  countFrom: 'done',
  toleranceFor: 'none',
};
const record = recordOf({
  kind: 'own-item',
  subjects: ['item'],
  on: '2026-01-01',
  agency: mechanic,
  meters: [{ meter: 'tach', value: 405_000 }],
});
const asked = { what: 'Item', label: 'within-interval', source: cfr('91.409(b)'), none: unknown('none', []) };
const found = (recurrence: Recurrence) =>
  recurring(factsOf(dossierOf(), catalogueOf()), [{ record, clause: met('entry-counts') }], recurrence, asked);

it.each([
  ['hours first', both],
  ['days first', { ...both, parts: [...both.parts].reverse() }],
] as const)('names both the day and the hours, %s', (_, recurrence) => {
  expect(found(recurrence)).toMatchObject({ lastGood: '2026-01-31', at: 415_000 });
});
