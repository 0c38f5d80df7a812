import { expect, it } from 'vitest';
import { approvalOf, unitOf } from '../../testing/builders.js';
import { unitAcceptedAsFound } from './as-found.js';
import { timelessOutcome } from './entry-outcome.js';

const by = { asOf: '2025-01-10', by: 'R. Tamsin' };

it.each([
  ['by a named person', approvalOf({ basis: 'as-found', acceptedBy: by }), 'met'],
  ['by nobody named', approvalOf({ basis: 'as-found', acceptedBy: null }), 'cannot-tell'],
  ['which an approval of data is not', approvalOf({ basis: 'field-approval', acceptedBy: null }), 'not-met'],
  ['without any approval', null, 'not-met'],
] as const)('accepted as found %s: %s', (_, approval, outcome) => {
  const unit = unitOf({ id: 'u', approval });
  const clause = unitAcceptedAsFound({ id: 'u', unit, type: null, functions: new Set(), active: true });
  expect(timelessOutcome(clause)).toBe(outcome);
});
