import { expect, it } from 'vitest';
import { approvalOf, unitOf } from '../../testing/builders.js';
import { fittedOn } from './fitted.js';

const on = (fitted: string | null, releasedOn: string | null) =>
  fittedOn({
    id: 'u',
    unit: unitOf({
      id: 'u',
      fitted: fitted === null ? null : { date: fitted, at: null },
      approval: approvalOf({ releasedOn }),
    }),
    type: null,
    functions: new Set(),
    active: true,
  });

it.each([
  ['2025-05-05', '2025-05-09', '2025-05-09'],
  ['2025-05-09', '2025-05-05', '2025-05-09'],
  ['2025-05-05', null, '2025-05-05'],
  [null, '2025-05-09', '2025-05-09'],
  [null, null, null],
])('work of %s, release of %s: %s', (fitted, released, day) => {
  expect(on(fitted, released)).toBe(day);
});

it('a unit without an approval goes by its work', () => {
  const unit = unitOf({ id: 'u', fitted: { date: '2025-05-05', at: null } });
  expect(fittedOn({ id: 'u', unit, type: null, functions: new Set(), active: true })).toBe('2025-05-05');
});
